package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.spanroom.config.NearestWord;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.InputData;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.SpanName;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.table.Text;

/** Finds a span among inputs that were read, and calculates that span alone. */
final class SpanExplainer {
    private static final int NEAREST_SHOWN = 3;

    private final RunConfig config;
    private final InputData inputs;
    private final Progress progress;
    private Optional<SpanList> cutWhole = Optional.empty();
    private boolean isCutReported;

    SpanExplainer(RunConfig config, InputData inputs, Progress progress) {
        this.config = config;
        this.inputs = inputs;
        this.progress = progress;
    }

    /**
     * A span among others.
     *
     * @param spans at least those that matter to it
     */
    record Found(SpanList spans, int number) {
        String id() {
            return spans.id(number);
        }
    }

    /**
     * Finds the span of an id, given as the data has it or as the results do, where some characters are replaced.
     *
     * @param folder of the run, for the message
     * @throws InputException if there is none; the message names the nearest ids
     */
    Found find(String spanId, Path folder) {
        // Spans of one name are numbered over the whole network.
        if (!SpanName.parse(spanId).map(SpanName::isNumbered).orElse(false)) {
            Optional<Found> found = findAmong(cut(RoutesOfSpan.choose(inputs.routes(), spanId)), spanId);
            if (found.isPresent()) {
                return found.get();
            }
        }
        SpanList all = allSpans();
        return findAmong(all, spanId).orElseThrow(() -> noSuchSpan(spanId, all, folder));
    }

    /** Cutting a whole network takes long, and several spans may need it. */
    private SpanList allSpans() {
        if (cutWhole.isEmpty()) {
            cutWhole = Optional.of(cut(inputs.routes()));
        }
        return cutWhole.get();
    }

    private SpanList cut(List<Route> routes) {
        // Several spans are cut one after another; people read of it once.
        Progress reported = isCutReported ? Progress.SILENT : progress;
        isCutReported = true;
        return new RankRun(config, reported).cut(inputs.withRoutes(routes)).spans();
    }

    private static Optional<Found> findAmong(SpanList spans, String spanId) {
        return findFirst(spans, spanId::equals)
                .or(() -> findFirst(spans, id -> Text.clean(id).equals(spanId)));
    }

    private static Optional<Found> findFirst(SpanList spans, Predicate<String> wanted) {
        return IntStream.range(0, spans.size())
                .filter(number -> wanted.test(spans.id(number)))
                .mapToObj(number -> new Found(spans, number))
                .findFirst();
    }

    private static InputException noSuchSpan(String spanId, SpanList spans, Path folder) {
        List<String> ids = IntStream.range(0, spans.size()).mapToObj(spans::id).toList();
        List<String> nearest = NearestWord.nearest(spanId, ids, NEAREST_SHOWN);
        return new InputException(
                folder,
                "no span of this run has the id '" + spanId + "'",
                nearest.isEmpty()
                        ? "The run has no spans at all."
                        : "The nearest are: " + String.join(", ", nearest) + ".");
    }

    /** Returns everything about a span. */
    SpanExplanation explain(Found found, RecordedStanding recorded) {
        return calculator(found.spans()).explain(0, found.number(), recorded);
    }

    private SpanCalculator calculator(SpanList spans) {
        return new SpanCalculator(config, inputs.zones(), spans, 1, LearnedOfRun.chances(config, inputs));
    }
}
