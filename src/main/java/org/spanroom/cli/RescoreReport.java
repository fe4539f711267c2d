package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.output.WrittenResults;
import org.spanroom.pipeline.RescoreRun.RescoreSummary;

/** What {@code rank --from} says at its end. */
final class RescoreReport {
    private static final int BEST = 5;

    private final StringBuilder text = new StringBuilder();

    private RescoreReport() {}

    static String text(RescoreSummary summary, UnitSystem units) {
        var report = new RescoreReport();
        RankTotals totals = summary.written().totals();
        report.line("%n%,d of %,d spans ranked with the new scoring.", totals.ranked(), totals.spans());
        if (summary.written().contents().counts().isAssumption()) {
            report.line("%s.", summary.written().contents().statement());
        }
        if (totals.doubtful() > 0) {
            report.line("%,8d of them only with good lubrication", totals.doubtful());
        }
        if (totals.tightBends() > 0) {
            report.line(
                    "%,8d of them only through a bend tighter than the innerduct's minimum radius",
                    totals.tightBends());
        }
        summary.written().contents().deciders().forEach(sentence -> report.line("%s.", sentence));
        if (totals.ranked() > 0) {
            MoneyReport.lines(summary.written().money()).forEach(line -> report.line("%s", line));
        }
        new TreeMap<>(totals.excluded())
                .forEach((why, count) -> report.line("%,8d excluded: %s", count, why.explanation()));
        summary.sections().ifPresentOrElse(report::sections, () -> report.spans(summary.spans()));
        WrittenResults written = summary.written();
        KeptReport.lines(written, units).forEach(line -> report.line("%s", line));
        written.spansKept()
                .ifPresent(kept -> report.line(
                        "%nRows of %,d of %,d spans are written, as selected by --where and --within; counts "
                                + "and sums are for the whole run.",
                        kept, totals.spans()));
        report.line("%nResults are in %s: %s", written.folder(), String.join(", ", written.files()));
        written.notes().forEach(note -> report.line("Note: %s", Printable.line(note)));
        report.line("To see which spans moved, and why: spanroom compare OLD_RUN %s", written.folder());
        return report.text.toString();
    }

    private void sections(List<RankedSection> sections) {
        long ranked =
                sections.stream().filter(section -> section.rank().isPresent()).count();
        line("%n%s", BestSections.title(ranked));
        line("%5s  %6s  %4s  %s", "rank", "points", "more", "span");
        sections.stream()
                .limit(Math.min(BEST, ranked))
                .forEach(section -> line(
                        "%5d  %6.1f  %4s  %s",
                        section.first().rank().orElse(0),
                        section.first().scorePoints(),
                        BestSections.more(section),
                        Printable.line(section.first().spanId())));
    }

    /** Where the earlier run did not write what sections are made of. */
    private void spans(List<RescoredSpan> spans) {
        line("%nThe best spans:");
        line("%5s  %6s  %s", "rank", "points", "span");
        spans.stream()
                .limit(BEST)
                .filter(span -> span.rank().isPresent())
                .forEach(span -> line(
                        "%5d  %6.1f  %s",
                        span.rank().orElse(0), span.score().totalPoints(), Printable.line(span.spanId())));
    }

    private void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format.replace("%n", "\n"), values))
                .append('\n');
    }
}
