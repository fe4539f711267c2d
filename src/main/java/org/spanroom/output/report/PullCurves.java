package org.spanroom.output.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.explain.PullProfile;
import org.spanroom.output.report.SpanDetail.PullCurve;

/** Both forces along a span for each innerduct that comes out and both ends: those of the traces that {@code explain} shows. */
final class PullCurves {
    private PullCurves() {}

    /** Returns two curves for each innerduct, in the order of pulling, out at A first; none where nothing comes out. */
    static List<PullCurve> of(SpanExplanation explained) {
        return explained.traces().stream()
                .flatMap(trace -> Stream.of(trace.fromA(), trace.fromB()).map(way -> curve(trace, way, explained)))
                .toList();
    }

    private static PullCurve curve(PullTrace trace, PullTrace.Way way, SpanExplanation explained) {
        List<PullProfile.Point> pull = PullProfile.INNERDUCT.points(way);
        List<PullProfile.Point> hold = PullProfile.CABLE.points(way);
        int[] kept = changes(pull, hold);
        return new PullCurve(
                trace.pull().innerduct().id(),
                vault(explained.span(), way.pullingEnd()),
                explained
                        .assessment()
                        .pull()
                        .outcome()
                        .findBetterEnd()
                        .filter(end -> end == way.pullingEnd())
                        .isPresent(),
                IntStream.of(kept).mapToObj(i -> pull.get(i).atM()).toList(),
                IntStream.of(kept).mapToObj(i -> pull.get(i).forceN()).toList(),
                IntStream.of(kept).mapToObj(i -> hold.get(i).forceN()).toList(),
                allowedN(PullProfile.INNERDUCT, way, explained),
                allowedN(PullProfile.CABLE, way, explained));
    }

    /** Returns the numbers of the points that are not those before them: sections mostly begin where the last one ended. */
    private static int[] changes(List<PullProfile.Point> pull, List<PullProfile.Point> hold) {
        var kept = new ArrayList<Integer>();
        for (int i = 0; i < pull.size(); i++) {
            if (i == 0 || !pull.get(i).equals(pull.get(i - 1)) || !hold.get(i).equals(hold.get(i - 1))) {
                kept.add(i);
            }
        }
        return kept.stream().mapToInt(Integer::intValue).toArray();
    }

    private static String vault(Span span, SpanEnd end) {
        return (end == SpanEnd.A ? span.from() : span.to()).id();
    }

    private static double allowedN(PullProfile profile, PullTrace.Way way, SpanExplanation explained) {
        return profile.findLimit(way)
                .map(limit -> profile.steadyN(limit, way, explained.pulling().breakawayRatio()))
                .orElse(Double.NaN);
    }
}
