package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.program.Corridor;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.output.columns.CorridorColumns;
import org.spanroom.output.columns.CorridorColumns.CorridorRow;
import org.spanroom.output.report.PayloadTable;
import org.spanroom.output.table.UsColumns;
import org.spanroom.program.Corridors;

/**
 * The corridors of a run for one cable, as the command {@code corridors} finds them.
 *
 * @param sections rows of the sections of each, in their order; those that the page does not show are left out
 */
record ReportCorridors(PayloadTable<CorridorRow> table, List<List<Integer>> sections) {
    private static final int CABLES = 1;

    static ReportCorridors of(
            DuctNetwork network, Map<String, Integer> rowBySection, String currency, UnitSystem units) {
        var rows = new ArrayList<CorridorRow>();
        var sections = new ArrayList<List<Integer>>();
        for (Corridor corridor : new Corridors(network, CABLES).ranked()) {
            rows.add(new CorridorRow(rows.size() + 1, corridor, network));
            sections.add(corridor.way().steps().stream()
                    .map(step -> rowBySection.get(step.section().id()))
                    .filter(row -> row != null)
                    .toList());
        }
        return new ReportCorridors(
                PayloadTable.of(UsColumns.in(CorridorColumns.CORRIDORS, units), currency, rows), sections);
    }
}
