package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.spanroom.finding.InputException;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.CopiedCsv;
import org.spanroom.output.CopiedTable;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.columns.AnnualColumns;
import org.spanroom.output.columns.AnnualFigureColumns;
import org.spanroom.output.columns.AnnualNetworkColumns;
import org.spanroom.output.columns.ReserveColumns;
import org.spanroom.output.report.PayloadTable;
import org.spanroom.output.report.ReportProgram;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.UsColumns;

/** Reads an annual program for the page, and checks that it was made of the same run. */
final class ReportProgramReader {
    private final Path folder;
    private final ReportSpansReader.Read spans;
    private final RecordedRun run;
    private final String currency;
    private final UnitSystem units;

    /** @param folder of the program */
    ReportProgramReader(Path folder, ReportSpansReader.Read spans, RecordedRun run, String currency, UnitSystem units) {
        this.folder = folder;
        this.spans = spans;
        this.run = run;
        this.currency = currency;
        this.units = units;
    }

    /**
     * Reads the program.
     *
     * @throws InputException if the folder holds none, or one of another run
     */
    ReportProgram read() {
        ProgramOfRun.demand(folder, run);
        CopiedTable items = copied(AnnualColumns.PROGRAM);
        CopiedTable reserve = copied(ReserveColumns.RESERVE);
        List<Integer> itemRows = rows(items);
        List<Integer> reserveRows = rows(reserve);
        var years = new TreeSet<Integer>();
        int year = items.columns().indexOf(AnnualColumns.YEAR);
        items.rows().forEach(row -> years.add(number(row, year)));
        CopiedTable totals = copied(AnnualFigureColumns.TOTALS);
        return new ReportProgram(
                List.copyOf(years),
                table(AnnualColumns.PROGRAM, items),
                itemRows,
                table(AnnualFigureColumns.TOTALS, totals),
                table(AnnualFigureColumns.CURVE, copied(AnnualFigureColumns.CURVE)),
                table(AnnualNetworkColumns.CONNECTIONS, copied(AnnualNetworkColumns.CONNECTIONS)),
                table(ReserveColumns.RESERVE, reserve),
                reserveRows);
    }

    private CopiedTable copied(Table<?> table) {
        return CopiedCsv.find(folder, table)
                .orElseThrow(() -> new InputException(
                        folder.resolve(table.name() + ".csv"),
                        "it is missing",
                        "Make the program again with this version."));
    }

    private PayloadTable<CopiedTable.Row> table(Table<?> table, CopiedTable copied) {
        return PayloadTable.of(UsColumns.in(copied.as(table), units), currency, copied.rows());
    }

    private static int number(CopiedTable.Row row, int place) {
        return place >= 0 && row.values().get(place) instanceof Number number ? number.intValue() : 0;
    }

    /** Returns the rows of the page that its spans are in, -1 for a span that the page does not show. */
    private List<Integer> rows(CopiedTable copied) {
        int id = copied.columns().indexOf(AnnualColumns.SPAN_ID);
        Map<String, Integer> rowById = spans.rowById();
        return copied.rows().stream()
                .map(row -> rowById.getOrDefault(String.valueOf(row.values().get(id)), -1))
                .toList();
    }
}
