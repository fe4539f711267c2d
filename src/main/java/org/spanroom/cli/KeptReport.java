package org.spanroom.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.KeptTotals;
import org.spanroom.output.WrittenResults;

/** Sums by the owner's own fields, of each the values with most to gain. */
final class KeptReport {
    private static final int SHOWN = 5;
    private static final int LONGEST = 60;

    private KeptReport() {}

    static List<String> lines(WrittenResults written, UnitSystem units) {
        List<String> lines = new ArrayList<>();
        List<KeptTotals> totals = written.totals().kept();
        for (int field = 0; field < totals.size(); field++) {
            var values = totals.get(field).mostGainedFirst();
            lines.add("");
            lines.add(String.format(
                    Locale.ROOT,
                    "Ranked spans by %s, the %d of %,d%s values with most to gain (run.json has more):",
                    written.kept().get(field),
                    Math.min(SHOWN, values.size()),
                    values.size(),
                    totals.get(field).others().ranked() > 0 ? " or more" : ""));
            lines.add("   spans  positions        " + units.unit("km") + "  value");
            values.stream().limit(SHOWN).forEach(entry -> lines.add(line(entry.getKey(), entry.getValue(), units)));
        }
        return lines;
    }

    private static String line(String value, KeptTotals.Sum sum, UnitSystem units) {
        String shown = value.length() <= LONGEST ? value : value.substring(0, LONGEST - 3) + "...";
        return String.format(
                Locale.ROOT,
                "%,8d  %,9d  %,8.1f  %s",
                sum.ranked(),
                sum.positionsGained(),
                units.value(sum.lengthM() / 1000, "km"),
                value.isEmpty() ? "(not recorded)" : Printable.line(shown));
    }
}
