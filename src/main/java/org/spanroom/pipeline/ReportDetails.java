package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.finding.InputException;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.report.SpanDetail;
import org.spanroom.output.report.SpanDetails;
import org.spanroom.output.table.Text;
import org.spanroom.parallel.ParallelRanges;
import org.spanroom.rank.ScoreBands;

/**
 * Details of many spans of an earlier run, calculated again from the files that the run read. The network is cut once; the spans are
 * calculated side by side, with the same result whatever the threads.
 */
public final class ReportDetails {
    /** A span takes some milliseconds. */
    private static final int SPANS_AT_A_TIME = 4;

    private final SpanCalculator calculator;
    private final UnitSystem units;
    private final int[] numbers;
    private final List<RecordedStanding> standings;
    private final SpanDetail[] details;
    private final double[][] scores;

    private ReportDetails(
            SpanCalculator calculator, UnitSystem units, int[] numbers, List<RecordedStanding> standings) {
        this.calculator = calculator;
        this.units = units;
        this.numbers = numbers;
        this.standings = standings;
        details = new SpanDetail[numbers.length];
        scores = new double[numbers.length][];
    }

    /**
     * What was found out.
     *
     * @param details one for each span asked for, in that order; none where an input of the run is missing or has changed
     * @param bands the bands of the spans asked for, in their order and without the excluded ones; empty where the run did not simulate, and
     *     where there are no details
     * @param notes why there are no details, and what to do about it
     */
    public record Found(List<SpanDetail> details, Optional<ScoreBands.Bands> bands, List<String> notes) {
        public Found {
            details = List.copyOf(details);
            notes = List.copyOf(notes);
        }
    }

    /**
     * Returns the details of spans. Where an input of the run is missing or is not as the run read it, there are none, and a note says which
     * file that is.
     *
     * @param runFolder the results of the run
     * @param spanIds as the results have them, in the order of the ranking from rank 1, excluded ones last: bands are those of this list
     * @param asked the units that people are shown, where not those of the run
     * @throws InputException if the folder holds no usable record, or has no span of one of the ids
     */
    public static Found of(Path runFolder, List<String> spanIds, Progress progress, Optional<UnitSystem> asked) {
        RecordedRun recorded = RecordedRun.read(runFolder);
        List<RecordedStanding> standings = RecordedStandings.find(runFolder, recorded, spanIds);
        RecordedInputs read;
        try {
            read = RecordedInputs.read(runFolder, recorded, progress, asked);
        } catch (InputException changed) {
            return new Found(List.of(), Optional.empty(), List.of("Without details of spans: " + changed.getMessage()));
        }
        SpanList spans = new RankRun(read.config(), progress).cut(read.inputs()).spans();
        var calculator = new SpanCalculator(
                read.config(),
                read.inputs().zones(),
                spans,
                spanIds.size(),
                LearnedOfRun.chances(read.config(), read.inputs()));
        int[] numbers = numbers(runFolder, spans, spanIds);
        return new ReportDetails(calculator, read.config().units(), numbers, standings)
                .run(SpanRun.threads(read.config()), progress);
    }

    /** Finds spans as {@code explain} does: by the id of the data and, where none has it, by the id of the results. */
    private static int[] numbers(Path runFolder, SpanList spans, List<String> spanIds) {
        Set<String> wanted = Set.copyOf(spanIds);
        Map<String, Integer> exact = new HashMap<>();
        Map<String, Integer> cleaned = new HashMap<>();
        for (int number = 0; number < spans.size(); number++) {
            String id = spans.id(number);
            String clean = Text.clean(id);
            if (wanted.contains(id)) {
                exact.putIfAbsent(id, number);
            } else if (wanted.contains(clean)) {
                cleaned.putIfAbsent(clean, number);
            }
        }
        return spanIds.stream()
                .mapToInt(id -> Optional.ofNullable(exact.getOrDefault(id, cleaned.get(id)))
                        .orElseThrow(() -> noSuchSpan(runFolder, id)))
                .toArray();
    }

    private static InputException noSuchSpan(Path runFolder, String spanId) {
        return new InputException(
                runFolder,
                "its inputs have no span '" + spanId + "', though its results do",
                "Make the run again with this version.");
    }

    private Found run(int threads, Progress progress) {
        progress.begin("calculate details", numbers.length);
        new ParallelRanges(threads, SPANS_AT_A_TIME).run(numbers.length, () -> (from, to) -> {
            for (int place = from; place < to; place++) {
                calculate(place);
            }
            progress.advance(to - from);
        });
        progress.end(Counted.of(numbers.length, "span"));
        List<double[]> simulated =
                Arrays.stream(scores).filter(found -> found.length > 0).toList();
        return new Found(
                List.of(details),
                simulated.isEmpty() ? Optional.empty() : Optional.of(ScoreBands.of(simulated)),
                List.of());
    }

    private void calculate(int place) {
        SpanCalculator.Calculated found = calculator.calculate(place, numbers[place], standings.get(place));
        details[place] = SpanDetails.of(found.explanation(), units);
        scores[place] = found.scoresBySample();
    }
}
