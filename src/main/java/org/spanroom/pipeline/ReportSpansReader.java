package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import org.spanroom.config.RunConfig;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.Line;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.SectionKey;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.report.PayloadTable;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.UsColumns;
import org.spanroom.rank.Ranking;

/** Reads the spans of a run for the page: the rows that it shows, and sums over all. */
final class ReportSpansReader {
    private static final Set<String> SHOWN = Set.of(
            "rank",
            "span_id",
            "score_points",
            "exclusion",
            "cautions",
            "owner",
            "length",
            "positions_now",
            "positions_gained",
            "pull_outcome",
            "feasible_chance_pct",
            "recovery_likely_money",
            "saving_likely_money");

    private final RecordedSpans spans;
    private final RecordedLines lines;
    private final SpanCells cells;
    private final ReportValues values;
    private final ReportTotals totals;
    private final PayloadTable<RecordedSpans.Row> table;
    private final long shown;
    private final List<Optional<Line>> lonLat = new ArrayList<>();
    private final List<SectionKey> sections = new ArrayList<>();
    private final Map<String, Integer> rowById = new HashMap<>();
    private final SortedMap<String, SortedSet<String>> keys = new TreeMap<>();

    private ReportSpansReader(RecordedRun run, RunConfig config, UnitSystem units, ReportLimits limits) {
        Path folder = run.file().resolveSibling("");
        this.spans = RecordedScores.open(run);
        this.lines = RecordedLines.of(folder, spans);
        this.cells = new SpanCells(spans.columns());
        this.values = new ReportValues(config, spans.columns());
        this.shown = limits.shown(run.spans());
        List<String> fields = keptColumns();
        this.totals = new ReportTotals(cells, fields.isEmpty() ? "owner" : fields.get(0));
        Table<RecordedSpans.Row> typed = UsColumns.in(table(config), units);
        this.table = new PayloadTable<>(typed, config.rates().currency(), name -> isShown(name, units));
    }

    /**
     * What was read.
     *
     * @param table the rows that the page shows
     * @param lonLat their lines
     * @param sections the sections that they belong to
     * @param rowById their rows by their names
     * @param keys the distinct keys in columns of keys, by column
     */
    record Read(
            PayloadTable<RecordedSpans.Row> table,
            List<Optional<Line>> lonLat,
            List<SectionKey> sections,
            Map<String, Integer> rowById,
            ReportTotals totals,
            ReportValues values,
            SortedMap<String, SortedSet<String>> keys) {}

    /** Reads all spans of a run. */
    static Read read(RecordedRun run, RunConfig config, UnitSystem units, ReportLimits limits) {
        return new ReportSpansReader(run, config, units, limits).read();
    }

    private Read read() {
        spans.read(RecordedScores.types(), true, this::add);
        return new Read(table, lonLat, sections, rowById, totals, values, keys);
    }

    private void add(RecordedSpans.Row row) {
        keep("exclusion", cells.text(row, "exclusion"));
        keep("exclusion", cells.items(row, "reasons"));
        int number = table.rows() < shown ? table.rows() : -1;
        totals.add(row, number);
        if (number < 0) {
            return;
        }
        keep("caution", cells.items(row, "cautions"));
        keep("pull_outcome", cells.text(row, "pull_outcome"));
        keep("binding_rule", cells.text(row, "binding_rule"));
        table.add(row);
        values.add(row);
        String id = cells.text(row, "span_id");
        lonLat.add(lines.of(id, row));
        rowById.put(id, number);
        sections.add(SectionKey.of(
                cells.text(row, SpanColumns.BANK.name()),
                cells.text(row, SpanColumns.DUCT.name()),
                cells.text(row, SpanColumns.VAULT_A.name()),
                cells.text(row, SpanColumns.VAULT_B.name())));
    }

    private void keep(String column, String key) {
        if (!key.isEmpty()) {
            keys.computeIfAbsent(column, none -> new TreeSet<>()).add(key);
        }
    }

    private void keep(String column, List<String> items) {
        items.forEach(key -> keep(column, key));
    }

    private List<String> keptColumns() {
        return spans.columns().stream().filter(name -> name.startsWith("src_")).toList();
    }

    /** The columns that the run wrote, in their order, without what only the program's own commands read. */
    private Table<RecordedSpans.Row> table(RunConfig config) {
        var layout = new SpanLayout(
                Ranking.criteria(), false, config.inputs().routes().keep(), ColumnGroup.all());
        var byName = new HashMap<String, Column<?>>();
        SpanColumns.all(layout).columns().forEach(column -> byName.put(column.name(), column));
        byName.put(StandingColumns.REASONS.name(), StandingColumns.REASONS);
        var columns = new ArrayList<Column<RecordedSpans.Row>>();
        for (int place = 0; place < spans.columns().size(); place++) {
            Column<?> column = byName.get(spans.columns().get(place));
            if (column != null) {
                columns.add(column.with(cell(place)));
            }
        }
        return new Table<>(SpanColumns.NAME, "Spans.", GeometryKind.NONE, false, row -> Shape.EMPTY, columns);
    }

    private static Function<RecordedSpans.Row, Object> cell(int place) {
        return row -> Optional.ofNullable(row.values().get(place));
    }

    private static boolean isShown(String name, UnitSystem units) {
        return SHOWN.contains(name) || name.equals("length_" + units.unit("m"));
    }

    /** Returns the rows of each section, the best first. */
    static Map<String, List<Integer>> rowsBySection(List<SectionKey> sections) {
        var rows = new HashMap<String, List<Integer>>();
        for (int row = 0; row < sections.size(); row++) {
            rows.computeIfAbsent(sections.get(row).id(), none -> new ArrayList<>())
                    .add(row);
        }
        return rows;
    }
}
