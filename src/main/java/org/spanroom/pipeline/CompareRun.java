package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import org.spanroom.config.ConfigReader;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.input.RecordedLayer;
import org.spanroom.input.RecordedRow;
import org.spanroom.model.Line;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.model.rank.Standing;
import org.spanroom.output.ComparisonWriter;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.ResultTables;
import org.spanroom.output.RunRecord;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.rank.Comparison;

/** Two runs side by side: which spans moved, and why. */
public final class CompareRun {
    /** So many spans get their differing values listed, those that moved farthest; enough for anyone to read. */
    private static final int MOST_DETAILED = 50_000;

    private static final List<String> STANDING = List.of(
            StandingColumns.SPAN_ID.name(),
            StandingColumns.RANK.name(),
            StandingColumns.SCORE.name(),
            StandingColumns.EXCLUSION.name());

    /** The key that a GeoPackage gives to rows, which says nothing of a span. */
    private static final String ROW_KEY = "fid";

    private final Path first;
    private final Path second;
    private final Progress progress;

    public CompareRun(Path first, Path second, Progress progress) {
        this.first = first;
        this.second = second;
        this.progress = progress;
    }

    /**
     * What a comparison found.
     *
     * @param moves by cause, the farthest moved first
     * @param unmoved how many spans stand as they stood
     * @param differences what else differs between the runs: version, files, config; one line each
     */
    public record CompareSummary(List<SpanMove> moves, long unmoved, List<String> differences, List<Path> files) {
        public CompareSummary {
            moves = List.copyOf(moves);
            differences = List.copyOf(differences);
            files = List.copyOf(files);
        }
    }

    /**
     * Compares and writes.
     *
     * @throws org.spanroom.finding.InputException if one of the folders holds no run with a GeoPackage
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public CompareSummary run(Path folder, boolean overwrite, Instant writtenAt) {
        ComparisonWriter.check(folder, overwrite);
        List<String> differences = differences(RecordedRun.read(first), RecordedRun.read(second));
        try (var before = spans(first);
                var after = spans(second)) {
            progress.begin("compare spans", -1);
            var comparison = new Comparison();
            standings(before, comparison::before);
            long spans = standings(after, comparison::after);
            List<SpanMove> moves = detailed(comparison.moves(), before, after);
            long unmoved = spans
                    - moves.stream().filter(move -> move.after().isPresent()).count();
            progress.end(String.format(Locale.ROOT, "%,d spans stand elsewhere, %,d as before", moves.size(), unmoved));
            var options = new LayerOptions(after.crs().orElseGet(ReferenceSystem::crs84), writtenAt);
            return new CompareSummary(
                    moves, unmoved, differences, ComparisonWriter.write(moves, folder, overwrite, options));
        }
    }

    private static RecordedLayer spans(Path run) {
        return RecordedLayer.open(RecordedRun.geoPackage(run), ResultTables.SPANS.name());
    }

    private static long standings(RecordedLayer layer, BiConsumer<String, Standing> sink) {
        List<String> criteria = StandingColumns.criteria(layer.columns());
        var columns = new ArrayList<>(STANDING);
        criteria.forEach(criterion -> columns.add(StandingColumns.pointsOf(criterion)));
        return layer.read(columns, row -> {
            var partPoints = new TreeMap<String, Double>();
            for (int i = 0; i < criteria.size(); i++) {
                double points = row.number(STANDING.size() + i);
                if (!Double.isNaN(points)) {
                    partPoints.put(criteria.get(i), points);
                }
            }
            double rank = row.number(1);
            sink.accept(
                    row.text(0),
                    new Standing(
                            Double.isNaN(rank) ? OptionalInt.empty() : OptionalInt.of((int) rank),
                            row.number(2),
                            row.text(3),
                            partPoints));
        });
    }

    /** Reads both runs once more for the lines and the values of the spans that moved. */
    private static List<SpanMove> detailed(List<SpanMove> moves, RecordedLayer before, RecordedLayer after) {
        List<String> values = before.columns().stream()
                .filter(after.columns()::contains)
                .filter(column ->
                        !STANDING.contains(column) && !column.equals(ROW_KEY) && !StandingColumns.isPoints(column))
                .toList();
        var columns = new ArrayList<>(List.of(StandingColumns.SPAN_ID.name()));
        columns.addAll(values);
        var ids = new HashSet<String>();
        moves.forEach(move -> ids.add(move.spanId()));
        Set<String> detailedIds = new HashSet<>();
        moves.stream()
                .filter(move -> move.cause() != SpanMove.Cause.OTHERS)
                .limit(MOST_DETAILED)
                .forEach(move -> detailedIds.add(move.spanId()));
        var rows = new HashMap<String, RecordedRow>();
        var lines = new HashMap<String, Line>();
        before.read(columns, row -> {
            String id = row.text(0);
            if (ids.contains(id)) {
                row.lonLat().ifPresent(line -> lines.put(id, line));
            }
            if (detailedIds.contains(id)) {
                rows.put(id, row);
            }
        });
        var changes = new HashMap<String, List<String>>();
        after.read(columns, row -> {
            String id = row.text(0);
            if (ids.contains(id)) {
                row.lonLat().ifPresent(line -> lines.put(id, line));
            }
            RecordedRow old = rows.get(id);
            if (old != null) {
                changes.put(id, changes(values, old, row));
            }
        });
        return moves.stream()
                .map(move -> move.with(
                        Optional.ofNullable(lines.get(move.spanId())), changes.getOrDefault(move.spanId(), List.of())))
                .toList();
    }

    private static List<String> changes(List<String> columns, RecordedRow before, RecordedRow after) {
        var changes = new ArrayList<String>();
        for (int i = 0; i < columns.size(); i++) {
            String was = before.text(i + 1);
            String is = after.text(i + 1);
            if (!was.equals(is)) {
                changes.add(columns.get(i) + ": " + shown(was) + " to " + shown(is));
            }
        }
        return changes;
    }

    private static String shown(String value) {
        return value.isEmpty() ? "nothing" : value;
    }

    private List<String> differences(RecordedRun before, RecordedRun after) {
        var differences = new ArrayList<String>();
        if (!before.version().equals(after.version())) {
            differences.add("version: " + before.version() + " to " + after.version());
        }
        files(before, after, differences);
        var was = new TreeMap<String, String>();
        var is = new TreeMap<String, String>();
        flatten("", ConfigReader.asMap(ConfigReader.readRecorded(before.file())), was);
        flatten("", ConfigReader.asMap(ConfigReader.readRecorded(after.file())), is);
        var keys = new TreeMap<>(was);
        keys.putAll(is);
        for (String key : keys.keySet()) {
            String old = was.getOrDefault(key, "");
            String now = is.getOrDefault(key, "");
            if (!old.equals(now) && !key.startsWith("output.") && !key.equals("threads")) {
                differences.add("config " + key + ": " + shown(old) + " to " + shown(now));
            }
        }
        return differences;
    }

    private static void files(RecordedRun before, RecordedRun after, List<String> differences) {
        var was = new TreeMap<String, String>();
        var is = new TreeMap<String, String>();
        before.inputs().forEach(input -> was.put(input.role(), hashes(input)));
        after.inputs().forEach(input -> is.put(input.role(), hashes(input)));
        var roles = new TreeMap<>(was);
        roles.putAll(is);
        for (String role : roles.keySet()) {
            if (!Objects.equals(was.get(role), is.get(role))) {
                differences.add("the file of the " + role + " is another");
            }
        }
    }

    private static String hashes(RunRecord.Input input) {
        return String.join(
                " ", input.files().stream().map(RunRecord.Part::sha256).sorted().toList());
    }

    private static void flatten(String stem, Map<?, ?> section, Map<String, String> flat) {
        section.forEach((key, value) -> {
            if (value instanceof Map<?, ?> inner) {
                flatten(stem + key + ".", inner, flat);
            } else {
                flat.put(stem + key, String.valueOf(value));
            }
        });
    }
}
