package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.learn.Reported;
import org.spanroom.model.learn.TotalsRow;

/** What was done to date, as a table on the screen: a line for each figure, a column for each year. */
final class LearnTotals {
    private static final int MOST_YEARS = 4;

    private final StringBuilder text = new StringBuilder();
    private final List<TotalsRow> rows;
    private final UnitSystem units;

    private LearnTotals(List<TotalsRow> rows, UnitSystem units) {
        this.rows = rows.subList(Math.max(0, rows.size() - MOST_YEARS - 1), rows.size());
        this.units = units;
    }

    /** Returns the table; "" where no work is done. */
    static String text(List<TotalsRow> rows, UnitSystem units, String currency) {
        return rows.isEmpty() ? "" : new LearnTotals(rows, units).table(currency);
    }

    private String table(String currency) {
        line("");
        line("Done to date; in parentheses how many spans did not report it, or are not in the run:");
        cells("", TotalsRow::year);
        cells("spans", row -> Integer.toString(row.spans()));
        figure("length", "m", 0, TotalsRow::lengthM);
        figure("positions planned", "", 0, TotalsRow::positionsPlanned);
        figure("sleeve cells placed", "", 0, TotalsRow::cellsPlaced);
        figure("innerduct out", "kg", 0, TotalsRow::innerductKg);
        figure("of it recycled", "kg", 0, TotalsRow::recycledKg);
        figure("bags", "", 0, TotalsRow::bags);
        figure("loads", "", 0, TotalsRow::loads);
        figure("trench avoided", "m", 0, TotalsRow::trenchAvoidedM);
        figure("boring avoided", "m", 0, TotalsRow::boreAvoidedM);
        figure("CO2e, ICE", "kg", 0, TotalsRow::co2eIceKg);
        figure("CO2e, WARM", "kg", 0, TotalsRow::co2eWarmKg);
        figure("cost " + currency, "", 0, TotalsRow::costMoney);
        figure("  planned", "", 0, TotalsRow::costPlannedMoney);
        figure("hours of steps", "", 1, TotalsRow::hours);
        figure("  planned", "", 1, TotalsRow::hoursPlanned);
        return text.toString();
    }

    private void figure(String name, String unit, int decimals, Function<TotalsRow, Reported> sum) {
        String label = unit.isEmpty() ? name : name + " " + units.unit(unit);
        cells(label, row -> {
            Reported found = sum.apply(row);
            String shown = found.sumInUnit().isPresent()
                    ? units.number(found.sumInUnit().getAsDouble(), decimals, unit)
                    : "-";
            return shown + (found.missing() > 0 ? " (" + found.missing() + ")" : "");
        });
    }

    private void cells(String label, Function<TotalsRow, String> cell) {
        var line = new StringBuilder(String.format(Locale.ROOT, "%-22s", label));
        rows.forEach(row -> line.append(String.format(Locale.ROOT, " %18s", cell.apply(row))));
        line(line.toString());
    }

    private void line(String words) {
        text.append(words).append(System.lineSeparator());
    }
}
