package org.spanroom.sample;

import java.util.List;

/**
 * One duct of a bank as it should be drawn and recorded, before a fault is put into it.
 *
 * @param legsM lengths of its spans, in the order in which it is drawn
 * @param trace from the first vault to the last, heights included
 * @param other a vault of the district that is neither the first nor the last
 * @param cornered true where sharp turns leave no room for a fault of the line
 */
record Draft(
        District district,
        Street.Rank rank,
        Bank bank,
        Node from,
        Node to,
        Node other,
        List<Double> legsM,
        boolean cornered,
        DrawnLine trace,
        Attributes attributes,
        Filling filling) {
    private static final double FT_PER_M = 1 / 0.3048;

    /** Returns whether lines here are drawn with heights. */
    boolean hasHeights() {
        return district.kind().isDrawnWithHeights() && rank != Street.Rank.LINK;
    }

    String duct() {
        return attributes.text(RouteField.DUCT_ID);
    }

    RouteFeature feature(Attributes recorded, List<DrawnLine> parts) {
        return new RouteFeature(
                district.number(),
                rank == Street.Rank.LINK,
                recorded,
                parts.stream().map(part -> part.lonLat(hasHeights())).toList());
    }

    static double feet(DrawnLine trace) {
        return trace.groundLengthM() * FT_PER_M;
    }

    /** Returns a place along the line well inside one of its spans. */
    double placeInsideASpan(Chance chance) {
        int leg = chance.below(legsM.size());
        double beforeM = 0;
        for (int i = 0; i < leg; i++) {
            beforeM += legsM.get(i);
        }
        return beforeM + legsM.get(leg) * chance.between(0.35, 0.65);
    }
}
