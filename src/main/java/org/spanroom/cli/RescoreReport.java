package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import org.spanroom.model.RescoredSpan;
import org.spanroom.pipeline.RescoreRun.RescoreSummary;

/** What {@code rank --from} says at its end. */
final class RescoreReport {
    private static final int BEST = 5;

    private final StringBuilder text = new StringBuilder();

    private RescoreReport() {}

    static String text(RescoreSummary summary) {
        var report = new RescoreReport();
        List<RescoredSpan> ranked =
                summary.spans().stream().filter(span -> span.rank().isPresent()).toList();
        report.line(
                "%n%,d of %,d spans ranked by the other scoring.",
                ranked.size(), summary.spans().size());
        report.line("%nThe best:");
        report.line("%5s  %6s  %s", "rank", "points", "span");
        ranked.stream()
                .limit(BEST)
                .forEach(span -> report.line(
                        "%5d  %6.1f  %s",
                        span.rank().orElse(0), span.score().totalPoints(), Printable.line(span.spanId())));
        report.line("%nResults are in %s: %s", summary.folder(), String.join(", ", summary.files()));
        report.line("What moved, and why: spanroom compare OLD_RUN %s", summary.folder());
        return report.text.toString();
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format.replace("%n", "\n"), values))
                .append('\n');
    }
}
