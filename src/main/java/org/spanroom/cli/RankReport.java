package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.bore.Room;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.pipeline.RankSummary;

/** What {@code rank} says at its end: what was found, the best spans, and where everything lies. */
final class RankReport {
    private static final int KINDS = 6;

    private final StringBuilder text = new StringBuilder();

    private RankReport() {}

    static String text(RankSummary summary) {
        var report = new RankReport();
        report.spans(summary.totals());
        report.best(summary.best());
        report.findings(summary.findings(), summary.findingsToMend());
        report.places(summary);
        return report.text.toString();
    }

    private void spans(RankTotals totals) {
        line(
                "%n%,d of %,d spans could give room back: %,d places for a cable more, over %.1f km.",
                totals.ranked(), totals.spans(), totals.cablesGained(), totals.rankedLengthM() / 1000);
        if (totals.doubtful() > 0) {
            line("%,8d of them only with good lubrication: on paper the pull fails at both ends without", totals.doubtful());
        }
        new TreeMap<>(totals.excluded()).forEach((why, count) -> line("%,8d excluded: %s", count, why.explanation()));
    }

    private void best(List<RankedSpan> first) {
        List<RankedSpan> best =
                first.stream().filter(span -> span.rank().isPresent()).toList();
        if (best.isEmpty()) {
            return;
        }
        line("%nThe best:");
        line("%5s  %6s  %8s  %7s  %8s  %-9s %s", "rank", "points", "length m", "bends", "cables", "pull from", "span");
        best.forEach(span -> line(
                "%5d  %6.1f  %8.1f  %6.0f\u00b0  %3d > %2d  %-9s %s",
                span.rank().orElse(0),
                span.score().totalPoints(),
                span.span().lengthM(),
                span.assessment().bends().total().deg(),
                room(span).positionsBefore(),
                room(span).newCables(),
                span.assessment().pull().outcome().key(),
                Printable.line(span.span().id())));
    }

    private void findings(Map<FindingCode, Long> counts, long toMend) {
        long all = counts.values().stream().mapToLong(Long::longValue).sum();
        line("%n%,d findings, %,d of them to mend:", all, toMend);
        List<Map.Entry<FindingCode, Long>> kinds = counts.entrySet().stream()
                .sorted(Map.Entry.<FindingCode, Long>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .toList();
        kinds.stream()
                .limit(KINDS)
                .forEach(kind -> line("%,8d %s", kind.getValue(), kind.getKey().meaning()));
        if (kinds.size() > KINDS) {
            line("         and %d more kinds", kinds.size() - KINDS);
        }
    }

    private void places(RankSummary summary) {
        line(
                "%nResults are in %s: %s",
                summary.written().folder(), String.join(", ", summary.written().files()));
        summary.written().notes().forEach(note -> line("Note: %s", note));
        line("Planning figures: they clear nobody to enter a vault or to pull.");
    }

    private static Room room(RankedSpan span) {
        return span.assessment().room();
    }

    private void line(String format, Object... values) {
        String line = String.format(Locale.ROOT, format.replace("%n", "\n"), values);
        text.append(Printable.of(line)).append('\n');
    }
}
