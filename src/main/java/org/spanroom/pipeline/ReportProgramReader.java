package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.spanroom.finding.InputException;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.AnnualWriter;
import org.spanroom.output.CopiedCsv;
import org.spanroom.output.CopiedTable;
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
    private final boolean showsAll;
    private final String currency;
    private final UnitSystem units;

    /** @param showsAll whether the page shows all spans of the run */
    ReportProgramReader(
            Path folder, ReportSpansReader.Read spans, boolean showsAll, String currency, UnitSystem units) {
        this.folder = folder;
        this.spans = spans;
        this.showsAll = showsAll;
        this.currency = currency;
        this.units = units;
    }

    /**
     * Reads the program.
     *
     * @throws InputException if the folder holds none, or one of another run
     */
    ReportProgram read() {
        if (!Files.isRegularFile(folder.resolve(AnnualWriter.MARKER))) {
            throw new InputException(
                    folder,
                    "the folder holds no program (no " + AnnualWriter.MARKER + ")",
                    "Name the folder of a program with --program.");
        }
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

    /** A program does not name its run: it belongs to one that has all its spans, at the same ranks. */
    private List<Integer> rows(CopiedTable copied) {
        int id = copied.columns().indexOf(AnnualColumns.SPAN_ID);
        int rank = copied.columns().indexOf("rank");
        int ranks = spans.table().place("rank");
        Map<String, Integer> rowById = spans.rowById();
        var rows = new ArrayList<Integer>();
        for (CopiedTable.Row row : copied.rows()) {
            String span = id < 0 ? "" : String.valueOf(row.values().get(id));
            Integer here = rowById.get(span);
            if (here == null && showsAll) {
                throw anotherRun("has the span '" + span + "', which the run has not");
            }
            if (here != null && rank >= 0 && number(row, rank) != rankOf(here, ranks)) {
                throw anotherRun("has the span '" + span + "' at rank " + number(row, rank) + ", the run at "
                        + rankOf(here, ranks));
            }
            rows.add(here == null ? -1 : here);
        }
        return rows;
    }

    private int rankOf(int row, int column) {
        double rank = spans.table().number(row, column);
        return Double.isNaN(rank) ? 0 : (int) rank;
    }

    private InputException anotherRun(String why) {
        return new InputException(
                folder, "the program was made of another run: it " + why, "Name the program of this run.");
    }
}
