package org.spanroom.model;

import java.util.Optional;

/**
 * What recovering the rigid innerducts of one span's duct would give.
 *
 * @param boreAreaMm2 area of the bore
 * @param fillBeforeRatio area that innerducts (taken as solid) and loose cables close off now, over bore area
 * @param fillAfterRatio area of the cables that stay, over bore area
 * @param recoverableMm2 innerduct outside areas less the areas of the cables that stay
 * @param innerductsOut how many rigid innerducts come out
 * @param positionsBefore empty innerducts that can take the design cable now
 * @param sleeves whole sleeves that go in afterwards
 * @param newCables design cables that go in afterwards, in whole sleeves
 * @param bindingRule the rule that allows no further sleeve
 * @param exclusion why nothing is recovered here; empty where something is
 * @param crossSection the arrangements before and after; empty where the contents are unknown
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
        Optional<Exclusion> exclusion,
        Optional<CrossSection> crossSection) {
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
            String bindingRule,
            Optional<Exclusion> exclusion) {
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
                exclusion,
                Optional.empty());
    }

    /**
     * Returns this room as one that nothing is recovered from: no sleeve goes in and no rule binds. The cross-section
     * still shows what would go in, unless nobody knows what lies there.
     */
    public Room excluded(Exclusion reason) {
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
                Optional.of(reason),
                reason == Exclusion.CONTENTS_UNKNOWN ? Optional.empty() : crossSection);
    }

    /** Returns this room with its counts as they are and a reason why it is not worth recovering. */
    public Room withExclusion(Exclusion reason) {
        return new Room(
                boreAreaMm2,
                fillBeforeRatio,
                fillAfterRatio,
                recoverableMm2,
                innerductsOut,
                positionsBefore,
                sleeves,
                newCables,
                bindingRule,
                Optional.of(reason),
                crossSection);
    }

    /** Returns the share of the bore that is free once all rigid innerducts are out. */
    public double freeAfterRatio() {
        return 1 - fillAfterRatio;
    }

    /** Returns why the records of the contents cannot be true; empty where they can, or where nothing is recorded. */
    public Optional<String> findContradiction() {
        return crossSection.flatMap(CrossSection::contradiction);
    }

    /** Returns how many more cables there is a place for than before; never negative. */
    public int cablesGained() {
        return Math.max(0, newCables - positionsBefore);
    }
}
