package org.spanroom.model.bore;

import org.spanroom.model.Check;

/**
 * A circle of a cross-section at its place.
 *
 * @param xMm to the right of the middle of the bore
 * @param yMm upwards from the middle of the bore
 * @param outsideDiameterMm width that it takes up
 * @param insideDiameterMm bore of an innerduct; the cable's own diameter within the fabric of a cell; 0 for a bare cable
 * @param within place in the arrangement of the innerduct that it is in, or -1 where it is in the bore itself
 * @param sleeve number of the sleeve that a cell belongs to, from 1; 0 for what is in none
 */
public record PlacedCircle(
        Kind kind, double xMm, double yMm, double outsideDiameterMm, double insideDiameterMm, int within, int sleeve) {
    /** What a circle represents. */
    public enum Kind {
        INNERDUCT,
        CABLE,
        DEAD_CABLE,
        NEW_CABLE,
        /** The place of a cable that is to come into a cell which is promised. */
        RESERVED
    }

    public PlacedCircle {
        Check.finite("xMm", xMm);
        Check.finite("yMm", yMm);
        Check.positive("outsideDiameterMm", outsideDiameterMm);
        Check.within("insideDiameterMm", insideDiameterMm, 0, outsideDiameterMm);
    }

    /** Returns the distance between the outsides of two circles; less than 0 where they overlap. */
    double gapMm(PlacedCircle other) {
        return Math.hypot(xMm - other.xMm, yMm - other.yMm) - (outsideDiameterMm + other.outsideDiameterMm) / 2;
    }

    /** Returns the distance from this circle to the inside of an innerduct round it; less than 0 where it cuts it. */
    double gapWithinMm(PlacedCircle innerduct) {
        double apartMm = Math.hypot(xMm - innerduct.xMm, yMm - innerduct.yMm);
        return (innerduct.insideDiameterMm - outsideDiameterMm) / 2 - apartMm;
    }
}
