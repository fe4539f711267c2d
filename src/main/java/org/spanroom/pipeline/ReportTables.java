package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import org.spanroom.model.UnitSystem;
import org.spanroom.output.CopiedTable;
import org.spanroom.output.ResultTables;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.report.PayloadTable;
import org.spanroom.output.report.ReportLayer;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.UsColumns;

/** Tables of a run, read back for the page. One that the run did not write has neither columns nor rows. */
final class ReportTables {
    /** A GeoPackage's own. */
    private static final String ROW_NUMBER = "fid";

    private static final CopiedTable NONE = new CopiedTable(List.of(), List.of());

    private final Path run;
    private final String currency;
    private final UnitSystem units;

    ReportTables(Path run, String currency, UnitSystem units) {
        this.run = run;
        this.currency = currency;
        this.units = units;
    }

    /** Returns a table as the run wrote it. */
    CopiedTable copied(String name) {
        return RecordedTables.find(run, name).orElse(NONE);
    }

    /** Returns a table of rows that were read. */
    PayloadTable<CopiedTable.Row> table(String name, CopiedTable copied, List<CopiedTable.Row> rows) {
        return PayloadTable.of(UsColumns.in(typed(name, copied), units), currency, rows);
    }

    /** Returns so many findings as a layer, those that are more than a note before the others. */
    ReportLayer findings(int mostRows) {
        return layer(
                "findings",
                ReportLayer.Kind.POINTS,
                RecordedTables.find(run, "findings", mostRows, ReportTables::isGrave)
                        .orElse(NONE));
    }

    private static Predicate<CopiedTable.Row> isGrave(List<String> columns) {
        int severity = columns.indexOf("severity");
        return row -> severity >= 0 && !"note".equals(row.values().get(severity));
    }

    /** Returns a table as a layer. */
    ReportLayer layer(String name, ReportLayer.Kind kind) {
        return layer(name, kind, copied(name));
    }

    /** Shapes that the run did not write are found in columns, where these have them. */
    private ReportLayer layer(String name, ReportLayer.Kind kind, CopiedTable copied) {
        int lon = copied.columns().indexOf("lon_deg");
        int lat = copied.columns().indexOf("lat_deg");
        List<Shape> shapes = copied.rows().stream()
                .map(row -> row.shape().isEmpty() && lon >= 0 && lat >= 0 ? point(row, lon, lat) : row.shape())
                .toList();
        return new ReportLayer(table(name, copied, copied.rows()), kind, shapes);
    }

    private static Shape point(CopiedTable.Row row, int lon, int lat) {
        return row.values().get(lon) instanceof Number lonDeg && row.values().get(lat) instanceof Number latDeg
                ? Shape.point(lonDeg.doubleValue(), latDeg.doubleValue())
                : Shape.EMPTY;
    }

    /** Returns the columns of a table with their types; of one that this version does not know, the types that its values have. */
    private static Table<CopiedTable.Row> typed(String name, CopiedTable copied) {
        Map<String, Column<?>> known = new HashMap<>();
        ResultTables.ALL.stream()
                .filter(entry -> entry.name().equals(name))
                .flatMap(entry -> entry.layout().apply(SpanLayout.PLAIN).columns().stream())
                .forEach(column -> known.put(column.name(), column));
        var columns = new ArrayList<Column<CopiedTable.Row>>();
        for (int place = 0; place < copied.columns().size(); place++) {
            String column = copied.columns().get(place);
            int here = place;
            if (column.equals(ROW_NUMBER)) {
                continue;
            }
            columns.add(Optional.ofNullable(known.get(column))
                    .<Column<?>>map(found -> found)
                    .orElseGet(() -> guessed(column, here, copied))
                    .with(row -> Optional.ofNullable(row.values().get(here))));
        }
        return Table.plain(name, "A table of the run.", columns);
    }

    private static Column<CopiedTable.Row> guessed(String name, int place, CopiedTable copied) {
        Object first = copied.rows().stream()
                .map(row -> row.values().get(place))
                .filter(Objects::nonNull)
                .findFirst()
                .orElse("");
        String shortName = "c" + place;
        if (first instanceof Long) {
            return Column.integer(name, shortName, "", row -> null);
        }
        if (first instanceof Number) {
            return Column.real(name, shortName, 3, "", row -> null);
        }
        return first instanceof Boolean
                ? Column.flag(name, shortName, "", row -> null)
                : Column.text(name, shortName, "", row -> null);
    }
}
