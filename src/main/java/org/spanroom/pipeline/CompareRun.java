package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
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
import java.util.function.Supplier;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Line;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.model.rank.Standing;
import org.spanroom.output.AboutFile;
import org.spanroom.output.ComparisonWriter;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.RunRecord;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.rank.Comparison;
import org.spanroom.rank.Rescoring;

/** Two runs side by side: which spans moved, and why. */
public final class CompareRun {
    /** So many spans get their differing values listed, those that moved farthest; enough for anyone to read. */
    private static final int MOST_DETAILED = 50_000;

    private static final List<String> STANDING = List.of(
            StandingColumns.SPAN_ID.name(),
            StandingColumns.RANK.name(),
            StandingColumns.SCORE.name(),
            StandingColumns.EXCLUSION.name());

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
     * @param fieldEntries how many entries of the field book only the second run has, by what they change
     * @param statuses how many of them set each state of the work, by its word
     */
    public record CompareSummary(
            List<SpanMove> moves,
            long unmoved,
            List<String> differences,
            Map<FactUse, Long> fieldEntries,
            Map<String, Long> statuses,
            List<Path> files) {
        public CompareSummary {
            moves = List.copyOf(moves);
            differences = List.copyOf(differences);
            files = List.copyOf(files);
        }
    }

    /**
     * Compares and writes.
     *
     * @throws org.spanroom.finding.InputException if one of the folders holds no run, or one of another version
     * @throws org.spanroom.output.folder.OutputException if the results cannot be written
     */
    public CompareSummary run(Path folder, boolean overwrite, Instant writtenAt) {
        ComparisonWriter.check(folder, overwrite);
        RecordedRun firstRun = RecordedRun.read(first);
        RecordedRun secondRun = RecordedRun.read(second);
        List<String> differences = differences(firstRun, secondRun);
        RecordedSpans before = RecordedScores.open(firstRun);
        RecordedSpans after = RecordedScores.open(secondRun);
        progress.begin("compare spans", -1);
        SpanMatches matches = SpanMatches.of(named(before), named(after));
        var comparison = new Comparison();
        standings(firstRun, before, comparison::before);
        long spans = standings(secondRun, after, (id, standing) -> comparison.after(id, matches.firstId(id), standing));
        FieldBookChanges fieldBook = FieldBookChanges.of(first, firstRun, second, secondRun, differences);
        List<SpanMove> moves = detailed(comparison.moves(), before, after, matches).stream()
                .map(move -> move.withFieldChanges(fieldBook.of(move.spanId())))
                .toList();
        long unmoved =
                spans - moves.stream().filter(move -> move.after().isPresent()).count();
        progress.end(String.format(Locale.ROOT, "%,d spans changed, %,d unchanged", moves.size(), unmoved));
        Map<String, Object> config = ConfigReader.asMap(ConfigReader.readRecorded(secondRun.file()));
        var options = new LayerOptions(secondRun.outputSystem(), writtenAt)
                .about(AboutFile.ofRuns("compare", writtenAt, config, List.of(firstRun, secondRun)));
        return new CompareSummary(
                moves,
                unmoved,
                differences,
                fieldBook.counts(),
                fieldBook.statuses(),
                ComparisonWriter.write(moves, folder, overwrite, options));
    }

    private static List<SpanMatches.Named> named(RecordedSpans spans) {
        int id = spans.columns().indexOf(StandingColumns.SPAN_ID.name());
        int length = spans.columns().indexOf(SpanColumns.LENGTH.name());
        var named = new ArrayList<SpanMatches.Named>();
        spans.read(
                List.of(SpanColumns.LENGTH),
                false,
                row -> named.add(new SpanMatches.Named(row.text(id), row.number(length))));
        return named;
    }

    private static long standings(RecordedRun run, RecordedSpans spans, BiConsumer<String, Standing> sink) {
        RunConfig config = ConfigReader.readRecorded(run.file());
        var scores = new RecordedScores(new Rescoring(config.scoring(), config.room()), spans.columns());
        List<String> columns = spans.columns();
        int[] standing = STANDING.stream().mapToInt(columns::indexOf).toArray();
        return spans.read(RecordedScores.types(), false, row -> {
            var partPoints = new TreeMap<String, Double>();
            for (Score.Part part : scores.of(row).parts()) {
                double points = Math.rint(100 * part.points()) / 100;
                if (!Double.isNaN(points)) {
                    partPoints.put(part.criterion(), points);
                }
            }
            double rank = row.number(standing[1]);
            sink.accept(
                    row.text(standing[0]),
                    new Standing(
                            Double.isNaN(rank) ? OptionalInt.empty() : OptionalInt.of((int) rank),
                            row.number(standing[2]),
                            row.text(standing[3]),
                            partPoints));
        });
    }

    /** Reads both runs once more for the lines and the values of the spans that moved. */
    private List<SpanMove> detailed(
            List<SpanMove> moves, RecordedSpans before, RecordedSpans after, SpanMatches matches) {
        List<String> values = before.columns().stream()
                .filter(after.columns()::contains)
                .filter(column -> !STANDING.contains(column))
                .toList();
        var ids = new HashSet<String>();
        moves.forEach(move -> ids.add(matches.firstId(move.spanId())));
        Set<String> detailedIds = new HashSet<>();
        moves.stream()
                .filter(move -> move.cause() != SpanMove.Cause.OTHERS)
                .limit(MOST_DETAILED)
                .forEach(move -> detailedIds.add(matches.firstId(move.spanId())));
        var rows = new HashMap<String, List<String>>();
        var lines = new HashMap<String, Line>();
        readValues(first, before, values, (id, row) -> {
            if (ids.contains(id)) {
                row.line().ifPresent(line -> lines.put(id, line));
            }
            if (detailedIds.contains(id)) {
                rows.put(id, row.values().get());
            }
        });
        var changes = new HashMap<String, List<String>>();
        readValues(second, after, values, (secondId, row) -> {
            String id = matches.firstId(secondId);
            if (ids.contains(id)) {
                row.line().ifPresent(line -> lines.put(id, line));
            }
            List<String> old = rows.get(id);
            if (old != null) {
                changes.put(id, changes(values, old, row.values().get()));
            }
        });
        return moves.stream()
                .map(move -> {
                    String id = matches.firstId(move.spanId());
                    return move.with(Optional.ofNullable(lines.get(id)), changes.getOrDefault(id, List.of()));
                })
                .toList();
    }

    /** A span's line, and its values where they are asked for. */
    private record Values(Optional<Line> line, Supplier<List<String>> values) {}

    private static void readValues(
            Path run, RecordedSpans spans, List<String> columns, BiConsumer<String, Values> sink) {
        RecordedLines lines = RecordedLines.of(run, spans);
        int id = spans.columns().indexOf(StandingColumns.SPAN_ID.name());
        int[] places = columns.stream().mapToInt(spans.columns()::indexOf).toArray();
        spans.read(
                List.of(),
                true,
                row -> sink.accept(
                        row.text(id),
                        new Values(
                                lines.of(row.text(id), row),
                                () -> Arrays.stream(places).mapToObj(row::text).toList())));
    }

    private static List<String> changes(List<String> columns, List<String> before, List<String> after) {
        var changes = new ArrayList<String>();
        for (int i = 0; i < columns.size(); i++) {
            if (!before.get(i).equals(after.get(i))) {
                changes.add(columns.get(i) + ": " + shown(before.get(i)) + " to " + shown(after.get(i)));
            }
        }
        return changes;
    }

    private static String shown(String value) {
        return value.isEmpty() ? "none" : value;
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
        before.inputs().forEach(input -> was.merge(input.role(), hashes(input), CompareRun::joined));
        after.inputs().forEach(input -> is.merge(input.role(), hashes(input), CompareRun::joined));
        var roles = new TreeMap<>(was);
        roles.putAll(is);
        for (String role : roles.keySet()) {
            if (!Objects.equals(was.get(role), is.get(role))) {
                differences.add("the runs read different files of " + role.replace('_', ' '));
            }
        }
    }

    /** A layer may consist of several files. */
    private static String joined(String hashes, String more) {
        return hashes + " " + more;
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
