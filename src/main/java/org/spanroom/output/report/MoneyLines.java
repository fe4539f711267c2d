package org.spanroom.output.report;

import java.util.List;
import java.util.Map;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.report.SpanDetail.MoneyLine;

/** The lines of the account of a span that are money, in words. What a rate's quantity is counted in, its name says. */
final class MoneyLines {
    /** The last words of a rate's name, and the unit of what it is multiplied by. */
    private static final Map<String, String> UNIT_BY_WORDS = Map.of(
            "_per_hour", "h",
            "_per_m", "m",
            "_per_m2", "m2",
            "_per_m3", "m3",
            "_per_kg", "kg",
            "_per_liter", "l");

    private final UnitSystem units;
    private final String currency;

    private MoneyLines(UnitSystem units, String currency) {
        this.units = units;
        this.currency = currency;
    }

    /** Returns the lines of the cost of recovery, then those of the new build. */
    static List<MoneyLine> of(SpanExplanation explained, UnitSystem units) {
        var lines = new MoneyLines(units, explained.currency());
        return explained.effortLines().stream()
                .filter(line -> line.part().kind() == EffortPart.Kind.COST
                        || line.part().kind() == EffortPart.Kind.NEW_BUILD)
                .map(lines::line)
                .toList();
    }

    private MoneyLine line(EffortLine line) {
        String part = line.part().key().replace('_', ' ');
        String unit = unit(line.rate().key());
        return new MoneyLine(
                line.part().kind() == EffortPart.Kind.NEW_BUILD ? "new build: " + part : part,
                line.place(),
                quantity(line, unit),
                rate(line, unit),
                line.amountInUnit(),
                line.range().source() + " (" + line.range().date() + ")");
    }

    /** Returns the unit of the quantity; empty for things that are counted. */
    private String unit(String rate) {
        if (rate.endsWith("_ratio")) {
            return currency;
        }
        return UNIT_BY_WORDS.getOrDefault(rate.substring(Math.max(0, rate.lastIndexOf("_per_"))), "");
    }

    private String quantity(EffortLine line, String unit) {
        return unit.isEmpty()
                ? Counted.fixed(line.quantityInUnit(), 0)
                : units.words(line.quantityInUnit(), unit.equals(currency) ? 2 : 1, unit);
    }

    private String rate(EffortLine line, String unit) {
        String factor = line.factorRatio() == 1 ? "" : " x " + plain(line.factorRatio(), 2);
        if (unit.equals(currency)) {
            return plain(100 * line.rateInUnit(), 2) + " %" + factor;
        }
        double perUnit = units.perUnit(line.rateInUnit(), unit);
        String each = unit.isEmpty() ? " each" : "/" + units.unit(unit);
        return plain(perUnit, 3) + " " + currency + each + factor;
    }

    /** Returns a number without zeros at its end. */
    private static String plain(double value, int decimals) {
        String fixed = Counted.fixed(value, decimals);
        return fixed.contains(".") ? fixed.replaceAll("\\.?0+$", "") : fixed;
    }
}
