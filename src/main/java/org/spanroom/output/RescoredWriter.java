package org.spanroom.output;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.effort.Cents;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.ContentsCounts;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.output.columns.KeptColumns;
import org.spanroom.output.columns.MoneyColumns;
import org.spanroom.output.columns.ScorePartRow;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/**
 * Writes a run under another scoring: the spans in their new order, and every table that no scoring changes as the earlier run wrote it.
 * Holds the spans and one more table at a time.
 */
public final class RescoredWriter {
    private final Rescored rescored;
    private final RescoredCells cells;
    private final ResultFiles files;
    private final List<String> notes = new ArrayList<>();
    private FindingTally findings = FindingTally.of(List.of());

    private RescoredWriter(Rescored rescored, ResultFiles files) {
        this.rescored = rescored;
        this.cells = new RescoredCells(rescored.columns());
        this.files = files;
    }

    /**
     * What is written.
     *
     * @param criteria those that have a weight now
     * @param columns the names of the columns that the earlier run wrote of its spans
     * @param spans the best first
     * @param sections those that are written, the best first; empty where the earlier run did not write what they are made of
     * @param tables finds any other table of the earlier run by its name
     * @param currency of all money
     * @param fields the owner's own fields of the routes that the earlier run kept
     * @param filter what the spans that are written were asked to be; empty where all are
     * @param kept the spans that are written
     * @param typical the counts that were used where none is recorded
     * @param sharedBuildMoney cost of new build where the ranked spans of a section share a trench or bore; empty where that is not known
     * @param deciders what decides most of the ranked spans
     */
    public record Rescored(
            List<CriterionInfo> criteria,
            List<String> columns,
            List<RescoredSpan> spans,
            Optional<List<RankedSection>> sections,
            Function<String, Optional<CopiedTable>> tables,
            String currency,
            List<String> fields,
            Map<String, String> filter,
            List<RescoredSpan> kept,
            ContentsScenario typical,
            OptionalDouble sharedBuildMoney,
            List<String> deciders) {
        public Rescored {
            criteria = List.copyOf(criteria);
            columns = List.copyOf(columns);
            spans = List.copyOf(spans);
            fields = List.copyOf(fields);
            kept = List.copyOf(kept);
            deciders = List.copyOf(deciders);
        }
    }

    /**
     * Where it comes from.
     *
     * @param folder of the earlier run
     * @param lengths of the earlier run, which cut the same spans
     * @param outputCrs name of the reference system of the layers, which a GeoPackage may know by another
     * @param run what went in: the earlier run's inputs, and its config with the other scoring
     */
    public record Origin(Path folder, NetworkLengths lengths, String outputCrs, RunRecord run) {}

    /**
     * Writes the results into a folder that was begun for them, and puts it in its place.
     *
     * @throws OutputException if they cannot be written
     */
    public static WrittenResults write(Rescored rescored, Origin origin, OutputSettings settings, OutputFolder folder) {
        int spans = rescored.kept().size();
        ContentsAccount contents = ContentsAccount.of(contents(rescored), rescored.typical(), rescored.deciders());
        String about = AboutFile.of(origin.run(), rescored.filter(), contents, origin.outputCrs());
        try (var files = new ResultFiles(folder.path(), settings, origin.run().startedAt(), spans, about)) {
            var writer = new RescoredWriter(rescored, files);
            writer.writeForLater();
            ResultTables.ALL.stream()
                    .filter(entry -> entry.isAmong(settings.groups()))
                    .forEach(writer::write);
            files.finish();
            writer.notes.addAll(files.notes());
            return ResultWriter.commit(
                    new RunAccount(
                            origin.run(),
                            Optional.of(origin.folder().toString().replace('\\', '/')),
                            rescored.filter(),
                            rescored.fields(),
                            files.rows(),
                            writer.totals(),
                            writer.money(),
                            contents,
                            origin.lengths(),
                            writer.findings,
                            origin.outputCrs(),
                            settings.crs(),
                            writer.notes),
                    settings,
                    folder);
        }
    }

    private void writeForLater() {
        Table<RescoredSpan> table =
                RescoredColumns.of(SpanColumns.forLater(layout()), rescored.criteria(), rescored.columns());
        files.beginForLater(table, rescored.filter().isEmpty()).write(rescored.spans());
    }

    private void write(ResultTable<?> entry) {
        if (entry.equals(ResultTables.SPANS)) {
            files.begin(entry, RescoredColumns.of(SpanColumns.table(layout()), rescored.criteria(), rescored.columns()))
                    .write(rescored.kept());
        } else if (entry.equals(ResultTables.SCORE_PARTS)) {
            files.begin(entry, ResultTables.SCORE_PARTS.table(layout()))
                    .write(rescored.kept().stream()
                            .flatMap(span -> ScorePartRow.of(span).stream())
                            .toList());
        } else if (entry.equals(ResultTables.SECTIONS)) {
            writeSections(rescored.sections());
        } else if (entry.ofItsScoring()) {
            notes.add(entry.name()
                    + " is left out: it applies to the earlier scoring only. Run rank on the inputs with the "
                    + "new scoring to get it.");
        } else {
            rescored.tables()
                    .apply(entry.name())
                    .ifPresentOrElse(
                            table -> copy(entry, table),
                            () -> notes.add(entry.name() + " is left out: the earlier run did not write it."
                                    + entry.group()
                                            .map(group -> " Make that run with --columns " + group.key() + ".")
                                            .orElse("")));
        }
    }

    private void writeSections(Optional<List<RankedSection>> sections) {
        sections.ifPresentOrElse(
                rows -> files.begin(ResultTables.SECTIONS, ResultTables.SECTIONS.table(layout()))
                        .write(rows),
                () -> notes.add(ResultTables.SECTIONS.name()
                        + " is left out: the earlier run did not write what it is made of."));
    }

    private SpanLayout layout() {
        boolean hasElevations = rescored.spans().stream()
                .flatMap(span -> span.lonLat().stream())
                .anyMatch(Line::hasZ);
        return new SpanLayout(rescored.criteria(), hasElevations, rescored.fields(), files.groups());
    }

    private void copy(ResultTable<?> entry, CopiedTable table) {
        if (entry.equals(ResultTables.FINDINGS)) {
            findings = FindingTally.of(table);
        }
        List<CopiedTable.Row> rows =
                entry.source() instanceof RowSource.OfSpans<?> ? inOrderOfSpans(table) : table.rows();
        files.begin(entry, table.as(entry.table(layout()))).write(rows);
    }

    /** Rows of one span stay in their order. */
    private List<CopiedTable.Row> inOrderOfSpans(CopiedTable table) {
        Map<String, Integer> places = new HashMap<>();
        rescored.kept().forEach(span -> places.putIfAbsent(span.spanId(), places.size()));
        int id = table.place(StandingColumns.SPAN_ID);
        var rows = new ArrayList<>(table.rows());
        if (!rescored.filter().isEmpty()) {
            rows.removeIf(row -> !places.containsKey(CopiedTable.text(row, id)));
        }
        rows.sort(Comparator.comparingInt(row -> places.getOrDefault(CopiedTable.text(row, id), Integer.MAX_VALUE)));
        return rows;
    }

    /** Lengths are added up as the earlier run wrote them, to the millimeter. */
    private RankTotals totals() {
        List<String> kept =
                KeptColumns.all(rescored.fields()).stream().map(Column::name).toList();
        var tally = new SpanTally();
        for (RescoredSpan span : rescored.spans()) {
            tally.add(
                    span,
                    (long) Math.max(0, cells.number(span, SpanColumns.POSITIONS_GAINED)),
                    cells.number(span, SpanColumns.LENGTH),
                    cells.number(span, SpanColumns.DRAWN_LENGTH),
                    kept.stream().map(field -> cells.text(span, field)).toList());
        }
        return tally.take();
    }

    private static ContentsCounts contents(Rescored rescored) {
        var cells = new RescoredCells(rescored.columns());
        ContentsCounts counts = ContentsCounts.NONE;
        for (RescoredSpan span : rescored.spans()) {
            String word = cells.text(span, SpanColumns.CONTENTS_SOURCE);
            for (ContentsSource source : ContentsSource.values()) {
                if (source.key().equals(word)) {
                    boolean innerducts = List.of(
                                    cells.text(span, SpanColumns.ASSUMED).split(";", -1))
                            .contains(Term.INNERDUCT_COUNT.key());
                    counts = counts.plus(source, span.rank().isPresent(), innerducts);
                }
            }
        }
        return counts;
    }

    /** Sums with all rates at their values only: the run kept no total of each drawing, and other spans may be ranked now. */
    private MoneyTotals money() {
        return new MoneyTotals(
                rescored.currency(),
                sumOfRanked(MoneyColumns.RECOVERY_MONEY.name()),
                sumOfRanked(MoneyColumns.NEW_BUILD_MONEY.name()),
                rescored.sharedBuildMoney(),
                Optional.empty());
    }

    private double sumOfRanked(String column) {
        return Cents.money(rescored.spans().stream()
                .filter(span -> span.rank().isPresent())
                .mapToDouble(span -> Cents.of(cells.number(span, column)))
                .sum());
    }
}
