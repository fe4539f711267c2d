package org.spanroom.model.bore;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import org.spanroom.model.Check;
import org.spanroom.model.network.Unrecoverable;

/**
 * The room of one span's duct: what it can take today, and what recovering rigid innerducts would add.
 *
 * <p>Of unknown contents nothing is known: every figure but the bore's area is then empty, not 0.
 *
 * @param boreAreaMm2 area of the bore
 * @param crossSection the arrangements and all choices; empty where the contents are unknown, or too many to calculate
 * @param proposal the choice proposed for recovery, all innerducts out until {@link #propose}; empty where nothing can come out
 * @param reason why the proposal leaves innerducts in; empty where it leaves none
 */
public record Room(
        double boreAreaMm2,
        Optional<CrossSection> crossSection,
        Optional<PullChoice> proposal,
        Optional<ProposalReason> reason) {
    /** Binding rule: the number of sleeves that an emptied duct of this size takes. */
    public static final String SLEEVES_PER_DUCT = "sleeves_per_duct";

    /** Binding rule: the number of sleeves that the free part of the bore takes, beside innerducts left in. */
    public static final String FREE_BORE = "free_bore";

    /** Binding rule: the share of the bore that cables may fill. */
    public static final String BORE_FILL = "bore_fill";

    /** Binding rule: the cables do not go into the bore side by side. */
    public static final String PACKING = "packing";

    /** Binding rule: the owner demands cells for cables that may not be moved into any. */
    public static final String OLD_CABLES_MAY_NOT_MOVE = "old_cables_may_not_move";

    /** Binding rule: the owner lets nothing be placed beside rigid innerducts. */
    public static final String BESIDE_FORBIDDEN = "beside_forbidden";

    /** Binding rule: the bore is collapsed or blocked, so that nothing goes in until it is cleared. */
    public static final String BORE_CLOSED = "bore_closed";

    /** Binding rule: no duct surrounds the innerduct. */
    public static final String NO_OUTER_DUCT = "no_outer_duct";

    public Room {
        Check.positive("boreAreaMm2", boreAreaMm2);
    }

    /** Returns the room of a duct of unknown contents. */
    public static Room unknown(double boreAreaMm2) {
        return new Room(boreAreaMm2, Optional.empty(), Optional.empty(), Optional.empty());
    }

    /** Returns this room where innerducts cannot come out, for a reason other than unknown contents. */
    public Room unrecovered(Unrecoverable why) {
        Room unproposed = new Room(boreAreaMm2, crossSection, Optional.empty(), Optional.empty());
        return why == Unrecoverable.NO_OUTER_DUCT
                ? unproposed.closed(NO_OUTER_DUCT).leavingAllIn()
                : unproposed;
    }

    private Room leavingAllIn() {
        return withChoices(choices().subList(0, Math.min(1, choices().size())));
    }

    /** Returns this room where nothing goes into the bore or its sleeves today, for a reason that replaces the binding rule. */
    public Room closed(String rule) {
        return crossSection
                .map(section -> section.now().closed(rule, section.before()))
                .map(now -> withChoices(choices().stream()
                        .map(choice -> choice.isRecovery() ? choice.withNow(now.positionsNow()) : now)
                        .toList()))
                .orElse(this);
    }

    /** Returns this room where this many positions are reserved: they are left out of every count. */
    public Room reserving(int reserved) {
        if (reserved == 0 || crossSection.isEmpty()) {
            return this;
        }
        Positions now = crossSection.get().now().positions().withReserved(reserved);
        return withChoices(choices().stream()
                .map(choice -> choice.withReserved(reserved, now.free()))
                .toList());
    }

    /** Returns this room with other choices of the same pulls; that proposed stays proposed. */
    private Room withChoices(List<PullChoice> others) {
        return new Room(
                boreAreaMm2,
                crossSection.map(section -> section.withChoices(others)),
                proposal.flatMap(one ->
                        others.stream().filter(other -> isSame(one, other)).findFirst()),
                reason);
    }

    /**
     * Returns this room with the proposal of the choice that gains the most positions per hour; of equal ones that with more positions, then
     * with fewer pulls, then with fewer dead cables. A duct from which nothing can be recovered stays as it is.
     *
     * @param hoursOf the work that a choice takes, more than 0
     */
    public Room propose(ToDoubleFunction<PullChoice> hoursOf) {
        if (proposal.isEmpty()) {
            return this;
        }
        List<PullChoice> choices = choices();
        double[] hours = new double[choices.size()];
        int best = -1;
        for (int i = 0; i < hours.length; i++) {
            PullChoice choice = choices.get(i);
            if (choice.allowed() && choice.isRecovery()) {
                hours[i] = hoursOf.applyAsDouble(choice);
                Check.positive("hours", hours[i]);
                best = best < 0 || isBetter(choice, hours[i], choices.get(best), hours[best]) ? i : best;
            }
        }
        return best < 0
                ? this
                : new Room(boreAreaMm2, crossSection, Optional.of(choices.get(best)), reason(choices, hours, best));
    }

    private static boolean isBetter(PullChoice one, double oneHours, PullChoice other, double otherHours) {
        int compared = Double.compare(gainedPerHour(one, oneHours), gainedPerHour(other, otherHours));
        compared = compared != 0 ? compared : Integer.compare(one.positionsAfter(), other.positionsAfter());
        compared = compared != 0 ? compared : Integer.compare(other.innerductsOut(), one.innerductsOut());
        compared = compared != 0 ? compared : Integer.compare(other.deadCablesOut(), one.deadCablesOut());
        return compared > 0;
    }

    private static double gainedPerHour(PullChoice choice, double hours) {
        return Math.max(0, choice.positionsGained()) / hours;
    }

    /** Finds why a choice that leaves innerducts in beats pulling all of them. */
    private static Optional<ProposalReason> reason(List<PullChoice> choices, double[] hours, int best) {
        PullChoice chosen = choices.get(best);
        if (chosen.innerductsLeft() == 0 || chosen.positionsGained() <= 0) {
            return Optional.empty();
        }
        int all = -1;
        for (int i = 0; i < hours.length; i++) {
            PullChoice choice = choices.get(i);
            // Only a recovery has hours; the choice that leaves everything in cannot take all innerducts out.
            if (choice.allowed() && choice.isRecovery() && choice.innerductsLeft() == 0) {
                boolean more = all < 0 || gainedPerHour(choice, hours[i]) > gainedPerHour(choices.get(all), hours[all]);
                all = more ? i : all;
            }
        }
        return all < 0
                ? Optional.empty()
                : Optional.of(new ProposalReason(chosen, hours[best], choices.get(all), hours[all]));
    }

    /** Returns why the proposal leaves innerducts in, in one phrase; empty where it leaves none. */
    public String proposalReason() {
        return reason.map(ProposalReason::words).orElse("");
    }

    /** A duct has one choice of this many pulls and this many dead cables. */
    private static boolean isSame(PullChoice one, PullChoice other) {
        return one.innerductsOut() == other.innerductsOut() && one.deadCablesOut() == other.deadCablesOut();
    }

    /** Returns all choices, the one that leaves everything in first; none where the contents are unknown. */
    public List<PullChoice> choices() {
        return crossSection.map(CrossSection::choices).orElse(List.of());
    }

    /** Returns the choice that leaves everything in; empty where the contents are unknown. */
    public Optional<PullChoice> now() {
        return crossSection.map(CrossSection::now);
    }

    /** Returns the proposal; where nothing can come out, what is there now; empty where the contents are unknown. */
    public Optional<PullChoice> then() {
        return proposal.isPresent() ? proposal : now();
    }

    /** Returns the share of the bore that is closed off now, innerducts taken as solid. */
    public OptionalDouble fillNowRatio() {
        return ratio(now(), PullChoice::fillRatio);
    }

    /** Returns the share of the bore that innerducts left and the cables that stay close off. */
    public OptionalDouble fillAfterRemovalRatio() {
        return ratio(then(), PullChoice::fillRatio);
    }

    /** Returns the same share with a design cable in every cell that is a position. */
    public OptionalDouble fillWithNewRatio() {
        return ratio(then(), PullChoice::fillWithNewRatio);
    }

    /** Returns how many innerducts come out; 0 where none can. */
    public int innerductsOut() {
        return proposal.map(PullChoice::innerductsOut).orElse(0);
    }

    /** Returns how many new sleeves go in once innerducts are out; 0 where none come out. */
    public int sleeves() {
        return proposal.map(PullChoice::sleeves).orElse(0);
    }

    /** Returns how many design cables go into these sleeves. */
    public int newCables() {
        return proposal.map(PullChoice::newCables).orElse(0);
    }

    /** Returns the rule that allows no further sleeve; empty where the contents are unknown. */
    public String bindingRule() {
        return then().map(PullChoice::bindingRule).orElse("");
    }

    /** Returns how many design cables the duct can take today with everything left in; empty where that is unknown. */
    public OptionalInt positionsNow() {
        return number(now(), PullChoice::positionsAfter);
    }

    /** Returns how many it can take after recovery, all positions together; as now where nothing can come out. */
    public OptionalInt positionsAfter() {
        return number(then(), PullChoice::positionsAfter);
    }

    /** Returns how many positions recovery adds, and it alone; 0 where nothing can come out. */
    public OptionalInt positionsGained() {
        return number(then(), PullChoice::positionsGained);
    }

    /** Returns whether recovery adds any position. */
    public boolean gains() {
        return positionsGained().orElse(0) > 0;
    }

    private static OptionalInt number(Optional<PullChoice> choice, ToIntFunction<PullChoice> of) {
        return choice.isPresent() ? OptionalInt.of(of.applyAsInt(choice.get())) : OptionalInt.empty();
    }

    private static OptionalDouble ratio(Optional<PullChoice> choice, ToDoubleFunction<PullChoice> of) {
        return choice.isPresent() ? OptionalDouble.of(of.applyAsDouble(choice.get())) : OptionalDouble.empty();
    }

    /** Returns why the records of the contents cannot be true; empty where they can, or where nothing is recorded. */
    public Optional<String> findContradiction() {
        return crossSection.flatMap(CrossSection::contradiction);
    }
}
