package org.spanroom.sample;

import java.util.List;

/**
 * A set of innerducts of unlike sizes.
 *
 * @param neededIn diameter of the smallest round bore that takes it; sums for two, else recomputed by a solver and
 *     checked against Descartes' circle theorem where that applies
 */
record UnlikeSet(double neededIn, List<InnerductSize> innerducts) {
    private static final List<UnlikeSet> ALL = List.of(
            new UnlikeSet(2.975, List.of(InnerductSize.ONE_AND_QUARTER, InnerductSize.ONE)),
            new UnlikeSet(3.215, List.of(InnerductSize.ONE_AND_HALF_11, InnerductSize.ONE_11)),
            new UnlikeSet(
                    3.584059,
                    List.of(
                            InnerductSize.ONE_AND_QUARTER,
                            InnerductSize.ONE_AND_QUARTER,
                            InnerductSize.ONE,
                            InnerductSize.ONE)),
            new UnlikeSet(
                    3.813385,
                    List.of(
                            InnerductSize.ONE_AND_QUARTER_11,
                            InnerductSize.ONE_AND_QUARTER_11,
                            InnerductSize.ONE_AND_QUARTER_11,
                            InnerductSize.ONE_11)),
            new UnlikeSet(
                    3.861953,
                    List.of(
                            InnerductSize.ONE_AND_HALF,
                            InnerductSize.ONE_AND_HALF,
                            InnerductSize.ONE,
                            InnerductSize.ONE)),
            new UnlikeSet(
                    3.936778,
                    List.of(InnerductSize.ONE_AND_HALF, InnerductSize.ONE_AND_HALF, InnerductSize.ONE_AND_QUARTER)));

    UnlikeSet {
        innerducts = List.copyOf(innerducts);
    }

    /** Draws one of the sets that a bore takes; none where it takes none. */
    static List<InnerductSize> draw(Bore bore, Chance chance) {
        if (bore.isSquare()) {
            // Four of the larger size go in, so these do.
            boolean four = bore.roomFor(InnerductSize.ONE_AND_QUARTER.outsideIn()) == 4;
            return four ? ALL.get(2).innerducts() : List.of();
        }
        List<UnlikeSet> fitting =
                ALL.stream().filter(set -> bore.takes(set.neededIn())).toList();
        return fitting.isEmpty() ? List.of() : chance.pick(fitting).innerducts();
    }
}
