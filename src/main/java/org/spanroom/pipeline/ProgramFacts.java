package org.spanroom.pipeline;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import org.spanroom.config.NearestWord;
import org.spanroom.config.ProgramConfig;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.rank.GateEffect;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.FieldCheckColumns;
import org.spanroom.output.columns.PermitColumns;
import org.spanroom.output.columns.SpanColumns;

/** Reads what a program needs to know of the spans of a run. */
final class ProgramFacts {
    private static final int MOST_SHOWN = 3;

    private final RecordedRun run;
    private final RecordedSpans spans;
    private final RecordedLines lines;
    private final SpanCells cells;
    private final ProgramConfig config;
    private final List<String> issuedByCrew;
    private final Map<String, List<String>> checks = new HashMap<>();

    private ProgramFacts(RecordedRun run, ProgramConfig config, List<String> issuedByCrew) {
        this.run = run;
        this.config = config;
        this.issuedByCrew = issuedByCrew;
        this.spans = RecordedScores.open(run);
        this.lines = RecordedLines.of(run.file().resolveSibling(""), spans);
        this.cells = new SpanCells(spans.columns());
    }

    /**
     * Reads all spans, by their names, in the order of the ranking.
     *
     * @param issuedByCrew keys of permits that are not applied for, by the config of the run
     * @throws InputException if the config names a column that the run did not write, or the run cannot be read
     */
    static Map<String, SpanFacts> read(RecordedRun run, ProgramConfig config, List<String> issuedByCrew) {
        return new ProgramFacts(run, config, issuedByCrew).read();
    }

    private Map<String, SpanFacts> read() {
        demandColumn("district", config.district());
        config.totalsBy().forEach(column -> demandColumn("totals_by", column));
        RecordedRows.read(
                run.file().resolveSibling(""),
                FieldCheckColumns.TABLE.name(),
                List.of("span_id", "unknown"),
                row -> checks.computeIfAbsent(row.get(0), none -> new ArrayList<>())
                        .add(row.get(1)));
        var facts = new LinkedHashMap<String, SpanFacts>();
        spans.read(RecordedScores.types(), true, row -> {
            SpanFacts span = facts(row);
            facts.put(span.spanId(), span);
        });
        return facts;
    }

    private void demandColumn(String key, String column) {
        if (!column.isEmpty() && !cells.has(column)) {
            throw new InputException(
                    run.file(),
                    "the run has no column '" + column + "', which " + key + " of the program's config names",
                    "Name a column of run_spans; the nearest names are "
                            + String.join(", ", NearestWord.nearest(column, spans.columns(), MOST_SHOWN)) + ".");
        }
    }

    private SpanFacts facts(RecordedSpans.Row row) {
        String spanId = cells.text(row, "span_id");
        double rank = cells.number(row, "rank");
        double circuits = cells.number(row, "circuits_at_risk");
        var groups = new LinkedHashMap<String, String>();
        config.totalsBy().forEach(column -> groups.put(column, cells.text(row, column)));
        return new SpanFacts(
                spanId,
                Double.isNaN(rank) ? OptionalInt.empty() : OptionalInt.of((int) rank),
                cells.items(row, "reasons").stream().filter(GateEffect::isGate).toList(),
                cells.text(row, SpanColumns.VAULT_A.name()),
                cells.text(row, SpanColumns.VAULT_B.name()),
                cells.number(row, SpanColumns.LENGTH.name()),
                (int) cells.numberOr0(row, SpanColumns.POSITIONS_GAINED.name()),
                cells.numberOr0(row, "nights") > 0,
                cells.numberOr0(row, "shared_a_hours"),
                cells.numberOr0(row, "shared_b_hours"),
                cells.numberOr0(row, "site_hour_money"),
                cells.numberOr0(row, "saving_money"),
                cells.numberOr0(row, "innerduct_out_kg"),
                cells.numberOr0(row, "trench_avoided_m"),
                cells.numberOr0(row, "bore_avoided_m"),
                cells.numberOr0(row, "co2e_ice_kg"),
                cells.numberOr0(row, "co2e_dig_kg"),
                Double.isNaN(circuits) ? OptionalInt.empty() : OptionalInt.of((int) circuits),
                permits(row, key -> !issuedByCrew.contains(key)),
                permits(row, issuedByCrew::contains),
                cells.items(row, "zone_kinds"),
                zoneDays(cells.text(row, PermitColumns.ZONE_DATES.name())),
                groups,
                config.district().isEmpty() ? "" : cells.text(row, config.district()),
                String.join(";", new LinkedHashSet<>(checks.getOrDefault(spanId, List.of()))),
                lines.of(spanId, row));
    }

    private List<String> permits(RecordedSpans.Row row, Predicate<String> wanted) {
        return cells.items(row, "recovery_needs").stream().filter(wanted).toList();
    }

    /** Reads what {@link PermitColumns#ZONE_DATES} writes. */
    static List<SpanFacts.ZoneDays> zoneDays(String text) {
        return text.isEmpty()
                ? List.of()
                : Arrays.stream(text.split(";")).map(ProgramFacts::zone).toList();
    }

    private static SpanFacts.ZoneDays zone(String text) {
        int space = text.lastIndexOf(' ');
        int slash = text.indexOf('/', space);
        String first = text.substring(space + 1, slash);
        String last = text.substring(slash + 1);
        LocalDate from = first.equals(PermitColumns.OPEN_END) ? LocalDate.MIN : LocalDate.parse(first);
        LocalDate until = last.equals(PermitColumns.OPEN_END) ? LocalDate.MAX : LocalDate.parse(last);
        String kind = text.substring(0, space);
        return new SpanFacts.ZoneDays(kind, new Closure(kind + " zone", from, until));
    }

    /**
     * Demands that the run has spans of these names.
     *
     * @throws InputException naming the first that it lacks, and the nearest names
     */
    static void demandSpans(RecordedRun run, Set<String> known, String key, Iterable<String> named) {
        for (String span : named) {
            if (!known.contains(span)) {
                throw new InputException(
                        run.file(),
                        "the run has no span '" + span + "', which " + key + " names",
                        "Name spans as in the column span_id; the nearest names are "
                                + String.join(", ", NearestWord.nearest(span, List.copyOf(known), MOST_SHOWN)) + ".");
            }
        }
    }
}
