package org.spanroom.model.bore;

import java.util.Comparator;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.Check;
import org.spanroom.model.network.Unrecoverable;

/**
 * What recovering rigid innerducts of one span's duct would give: all of them, until a choice is proposed.
 *
 * @param boreAreaMm2 area of the bore
 * @param fillBeforeRatio area that innerducts (taken as solid) and loose cables close off now, over bore area
 * @param fillAfterRatio area that innerducts left and the cables that stay close off, over bore area
 * @param recoverableMm2 outside areas of the innerducts that come out less the areas of the cables in them that stay
 * @param innerductsOut how many rigid innerducts come out
 * @param positionsBefore empty innerducts that can take the design cable now
 * @param sleeves whole sleeves that go in afterwards
 * @param newCables design cables that go in afterwards, in whole sleeves
 * @param bindingRule the rule that allows no further sleeve
 * @param crossSection the arrangements before and after; empty where the contents are unknown
 * @param proposal the choice that these figures are of; empty where nothing is recovered
 */
public record Room(
        double boreAreaMm2,
        double fillBeforeRatio,
        double fillAfterRatio,
        double recoverableMm2,
        int innerductsOut,
        int positionsBefore,
        int sleeves,
        int newCables,
        String bindingRule,
        Optional<CrossSection> crossSection,
        Optional<PullChoice> proposal) {
    /** Binding rule: the number of sleeves that a duct of this size takes. */
    public static final String SLEEVES_PER_DUCT = "sleeves_per_duct";

    /** Binding rule: the share of the bore that cables may fill. */
    public static final String BORE_FILL = "bore_fill";

    /** Binding rule: the cables do not go into the bore side by side. */
    public static final String PACKING = "packing";

    /** Binding rule: the owner demands cells for cables that may not be moved into any. */
    public static final String OLD_CABLES_MAY_NOT_MOVE = "old_cables_may_not_move";

    public Room {
        Check.positive("boreAreaMm2", boreAreaMm2);
        Check.notNegative("fillBeforeRatio", fillBeforeRatio);
        Check.notNegative("fillAfterRatio", fillAfterRatio);
        Check.notNegative("positionsBefore", positionsBefore);
        Check.notNegative("sleeves", sleeves);
        Check.notNegative("newCables", newCables);
    }

    /** A room of which no cross-section is known. */
    public Room(
            double boreAreaMm2,
            double fillBeforeRatio,
            double fillAfterRatio,
            double recoverableMm2,
            int innerductsOut,
            int positionsBefore,
            int sleeves,
            int newCables,
            String bindingRule) {
        this(
                boreAreaMm2,
                fillBeforeRatio,
                fillAfterRatio,
                recoverableMm2,
                innerductsOut,
                positionsBefore,
                sleeves,
                newCables,
                bindingRule,
                Optional.empty(),
                Optional.empty());
    }

    /**
     * Returns this room where nothing can come out of the duct: no sleeve goes in and no rule binds. The cross-section still shows
     * what would go in, unless the contents are unknown.
     */
    public Room unrecovered(Unrecoverable why) {
        return new Room(
                boreAreaMm2,
                fillBeforeRatio,
                fillAfterRatio,
                recoverableMm2,
                0,
                positionsBefore,
                0,
                0,
                "",
                why == Unrecoverable.CONTENTS_UNKNOWN ? Optional.empty() : crossSection,
                Optional.empty());
    }

    /**
     * Returns this room with the figures of the choice that gains most cables an hour; of equal ones that with more cable
     * places, then with fewer pulls, then with fewer dead cables. The other choices stay in the cross-section. A duct from
     * which nothing can be recovered stays as it is.
     *
     * @param hoursOf the work that a choice takes, more than 0
     */
    public Room propose(ToDoubleFunction<PullChoice> hoursOf) {
        if (proposal.isEmpty() || crossSection.isEmpty()) {
            return this;
        }
        var best = Comparator.<PullChoice>comparingDouble(choice -> gainedPerHour(choice, hoursOf))
                .thenComparingInt(PullChoice::positionsAfter)
                .thenComparing(
                        Comparator.comparingInt(PullChoice::innerductsOut).reversed())
                .thenComparing(
                        Comparator.comparingInt(PullChoice::deadCablesOut).reversed());
        return crossSection.get().choices().stream()
                .filter(PullChoice::allowed)
                .max(best)
                .filter(choice -> !isProposed(choice))
                .map(this::as)
                .orElse(this);
    }

    private static double gainedPerHour(PullChoice choice, ToDoubleFunction<PullChoice> hoursOf) {
        double hours = hoursOf.applyAsDouble(choice);
        Check.positive("hours", hours);
        return choice.cablesGained() / hours;
    }

    /** A duct has one choice of so many pulls and so many dead cables. */
    private boolean isProposed(PullChoice choice) {
        return proposal.filter(one -> one.innerductsOut() == choice.innerductsOut())
                .filter(one -> one.deadCablesOut() == choice.deadCablesOut())
                .isPresent();
    }

    private Room as(PullChoice choice) {
        return new Room(
                boreAreaMm2,
                fillBeforeRatio,
                choice.fillAfterRatio(),
                choice.recoverableMm2(),
                choice.innerductsOut(),
                positionsBefore,
                choice.sleeves(),
                choice.newCables(),
                choice.bindingRule(),
                crossSection.map(section -> section.after(choice)),
                Optional.of(choice));
    }

    /** Returns the share of the bore that is free once the innerducts are out. */
    public double freeAfterRatio() {
        return 1 - fillAfterRatio;
    }

    /** Returns why the records of the contents cannot be true; empty where they can, or where nothing is recorded. */
    public Optional<String> findContradiction() {
        return crossSection.flatMap(CrossSection::contradiction);
    }

    /** Returns how many design cables there is a place for afterwards: new places, and empty innerducts that stay. */
    public int positionsAfter() {
        return proposal.map(PullChoice::positionsAfter).orElse(positionsBefore);
    }

    /** Returns how many more cables there is a place for than before; never negative. */
    public int cablesGained() {
        return proposal.map(PullChoice::cablesGained).orElse(Math.max(0, newCables - positionsBefore));
    }
}
