package org.spanroom.input.fields;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** Numbers of fields in the unit that is kept, and what to say of those that are not plausible. */
public final class TermNumbers {
    /** Units in the order in which they are thought of when one does not fit. */
    public static final List<Unit> BY_HABIT = List.of(
            Unit.IN,
            Unit.MM,
            Unit.CM,
            Unit.FT,
            Unit.M,
            Unit.LB_PER_1000_FT,
            Unit.KG_PER_KM,
            Unit.KG_PER_M,
            Unit.LB_PER_FT,
            Unit.M3,
            Unit.FT3);

    private TermNumbers() {}

    /** Returns a number in the unit that is kept for the term: mm, m, kg/m, m3, or as it is. */
    public static double kept(Term term, double inUnit, Optional<Unit> unit) {
        if (unit.isEmpty()) {
            return inUnit;
        }
        return term.kind() == Term.Kind.DIAMETER
                ? unit.get().toMm(inUnit)
                : unit.get().toSi(inUnit);
    }

    static String implausible(Term term, double inUnit, Optional<Unit> unit, PlausibleRanges ranges) {
        var likely = new ArrayList<String>();
        for (Unit other : BY_HABIT) {
            if (unit.isPresent()
                    && other.dimension() == unit.get().dimension()
                    && other != unit.get()
                    && ranges.contains(term, kept(term, inUnit, Optional.of(other)))) {
                likely.add(other == Unit.IN ? "inches" : other.symbol());
            }
        }
        String wrongUnit = likely.isEmpty() ? "" : "; it would be plausible in " + String.join(" or ", likely);
        return written(inUnit, unit) + " is outside the plausible range of " + term.key() + " (" + range(term, ranges)
                + ")" + wrongUnit;
    }

    /** Returns a number as it was recorded, with its unit. */
    static String written(double inUnit, Optional<Unit> unit) {
        return SourceNumber.brief(inUnit)
                + unit.map(found -> " " + found.symbol()).orElse("");
    }

    private static String range(Term term, PlausibleRanges ranges) {
        Double least = ranges.least().get(term);
        Double most = ranges.most().get(term);
        return (least == null ? "any" : SourceNumber.canonical(least)) + " to "
                + (most == null ? "any" : shown(term, most));
    }

    /** Returns a kept number with its unit, for messages. */
    static String shown(Term term, double kept) {
        String number =
                String.format(Locale.ROOT, "%.4f", kept).replaceAll("0+$", "").replaceAll("\\.$", "");
        return switch (term.kind()) {
            case DIAMETER -> number + " mm";
            case LENGTH -> number + " m";
            case MASS_PER_LENGTH -> number + " kg/m";
            case VOLUME -> number + " m3";
            default -> number;
        };
    }
}
