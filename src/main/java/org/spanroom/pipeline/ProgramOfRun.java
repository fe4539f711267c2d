package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.spanroom.finding.InputException;
import org.spanroom.output.AnnualWriter;
import org.spanroom.output.CopiedCsv;
import org.spanroom.output.CopiedTable;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.columns.AnnualColumns;
import org.spanroom.output.columns.ReserveColumns;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Table;

/**
 * Checks that an annual program was made of a run, for crews must not get the weeks of another plant. A program does not name its run: it
 * belongs to one that has all its spans, at the same ranks.
 */
final class ProgramOfRun {
    private static final String MAKE_AGAIN = "Make the program again with this version.";

    private ProgramOfRun() {}

    /**
     * Demands that a program was made of a run.
     *
     * @param program its folder
     * @throws InputException if it was made of another run, or the folder holds no program that can be read
     */
    static void demand(Path program, RecordedRun run) {
        if (!Files.isRegularFile(program.resolve(AnnualWriter.MARKER))) {
            throw new InputException(
                    program,
                    "the folder holds no program (no " + AnnualWriter.MARKER + ")",
                    "Name the folder of a program with --program.");
        }
        Map<String, Integer> planned = new LinkedHashMap<>();
        addRanks(program, AnnualColumns.PROGRAM, planned);
        addRanks(program, ReserveColumns.RESERVE, planned);
        Map<String, Integer> ranks = RecordedStandings.ranks(run, planned.keySet());
        planned.forEach((span, rank) -> {
            Integer here = ranks.get(span);
            if (here == null) {
                throw anotherRun(program, "has the span '" + span + "', which is not in the run");
            }
            if (!here.equals(rank)) {
                throw anotherRun(program, "has the span '" + span + "' at rank " + rank + ", the run at " + here);
            }
        });
    }

    private static void addRanks(Path program, Table<?> table, Map<String, Integer> planned) {
        Path file = program.resolve(table.name() + ".csv");
        CopiedTable rows =
                CopiedCsv.find(program, table).orElseThrow(() -> new InputException(file, "it is missing", MAKE_AGAIN));
        int id = place(file, rows, AnnualColumns.SPAN_ID);
        int rank = place(file, rows, StandingColumns.RANK.name());
        for (CopiedTable.Row row : rows.rows()) {
            planned.put(
                    String.valueOf(row.values().get(id)),
                    row.values().get(rank) instanceof Number number ? number.intValue() : 0);
        }
    }

    private static int place(Path file, CopiedTable rows, String column) {
        int place = rows.columns().indexOf(column);
        if (place < 0) {
            throw new InputException(file, "it has no column " + column, MAKE_AGAIN);
        }
        return place;
    }

    private static InputException anotherRun(Path program, String why) {
        return new InputException(
                program, "the program was made of another run: it " + why, "Name the program of this run.");
    }
}
