package org.spanroom.model.bend;

import org.spanroom.model.Angle;
import org.spanroom.model.Check;

/**
 * A change of direction inside a span, all to one side.
 *
 * @param deflection size of the turn, more than 0
 * @param startM distance along the span's drawn line where the turn begins
 * @param arcLengthM length along the line over which it turns; radius times deflection, but more for a compound curve,
 *     whose radius is its smallest
 * @param radiusM radius of the center line: measured from the drawn arc, or the configured sweep where none is drawn,
 *     or less than that where the drawn line has no room for it
 * @param radiusAssumed true where the configured sweep radius is used because the line does not show one
 */
public record Bend(
        Angle deflection, Turn turn, double startM, double arcLengthM, double radiusM, boolean radiusAssumed) {
    /** The side to which a bend turns, seen from the span's first vault. */
    public enum Turn {
        LEFT,
        RIGHT
    }

    public Bend {
        Check.positive("deflection", deflection.rad());
        Check.notNegative("startM", startM);
        Check.notNegative("arcLengthM", arcLengthM);
        Check.positive("radiusM", radiusM);
    }

    public double middleM() {
        return startM + arcLengthM / 2;
    }
}
