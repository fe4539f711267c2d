package org.spanroom.model.pull;

import java.util.Locale;
import org.spanroom.model.Check;
import org.spanroom.model.UnitSystem;

/**
 * How far one limit is used up, and where.
 *
 * @param foundSi the calculated value, in the limit's unit
 * @param allowedSi the value allowed
 * @param atM distance along the span from end A: where a failing limit is passed first, else where it is used most
 */
public record LimitUse(LimitKind kind, double foundSi, double allowedSi, double atM) {
    public LimitUse {
        Check.notNegative("foundSi", foundSi);
        Check.notNegative("allowedSi", allowedSi);
        Check.notNegative("atM", atM);
    }

    /** Returns found over allowed, or allowed over found for a limit that is a minimum; see {@link LimitKind#ratio}. */
    public double utilizationRatio() {
        return kind.ratio(foundSi, allowedSi);
    }

    public double utilizationPercent() {
        return 100 * utilizationRatio();
    }

    public boolean fails() {
        return utilizationRatio() > 1;
    }

    /** Returns one phrase for tables and reports, in metric units. */
    public String summary() {
        return summary(UnitSystem.METRIC);
    }

    /** Returns one phrase for people who read such units. */
    public String summary(UnitSystem units) {
        String at = units.words(atM, 1, "m");
        if (kind == LimitKind.CABLE_SLACK && foundSi == 0) {
            return "no " + kind.meaning() + " at " + at + "; " + units.words(allowedSi, 2, "m") + " needed";
        }
        boolean angle = kind == LimitKind.TOTAL_BENDS;
        double found = angle ? Math.toDegrees(foundSi) : foundSi;
        double allowed = angle ? Math.toDegrees(allowedSi) : allowedSi;
        String unit = angle ? "degrees" : kind.unit();
        int decimals = unit.equals("m") ? 2 : 0;
        return String.format(
                Locale.ROOT,
                "%s %s %s limit %s (%.0f %%) at %s",
                kind.meaning(),
                units.words(found, decimals, unit),
                relation(),
                units.words(allowed, decimals, unit),
                utilizationPercent(),
                at);
    }

    /** Returns how the value and its limit compare; of a limit that is a minimum, more is better. */
    private String relation() {
        if (fails()) {
            return kind.isMinimum() ? "<" : ">";
        }
        return kind.isMinimum() ? ">=" : "<=";
    }
}
