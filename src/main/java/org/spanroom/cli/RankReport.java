package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.rank.ContentsAccount;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.pipeline.RankSummary;

/** What {@code rank} says at its end: what was found, the best sections, and where everything lies. */
final class RankReport {
    private static final int KINDS = 6;

    private final StringBuilder text = new StringBuilder();

    private final UnitSystem units;

    private RankReport(UnitSystem units) {
        this.units = units;
    }

    static String text(RankSummary summary, UnitSystem units) {
        var report = new RankReport(units);
        report.units(summary.unitDoubts());
        report.spans(summary.totals(), summary.written().money(), summary.contents());
        report.best(summary);
        KeptReport.lines(summary.written(), units).forEach(line -> report.line("%s", line));
        report.next(ContentsReport.next(summary.contents(), summary.survey()));
        report.findings(summary.findings(), summary.findingsToFix());
        report.places(summary);
        return report.text.toString();
    }

    private void units(List<String> doubts) {
        if (!doubts.isEmpty()) {
            line("%nDo not use these results before the units of the data are right:");
            doubts.forEach(doubt -> line("  %s", Printable.line(doubt)));
        }
    }

    private void spans(RankTotals totals, MoneyTotals money, ContentsAccount contents) {
        boolean assumption = contents.counts().isAssumption();
        line(
                "%n%s%s %,d additional cable positions (%s).",
                contents.statement(),
                assumption ? ".\nIf so:" : ":",
                totals.positionsGained(),
                units.words(totals.rankedLengthM() / 1000, 1, "km"));
        if (contents.counts().rankedAssumed() > 0 && !assumption) {
            line(
                    "%,8d of them with assumed contents: no count of innerducts or cables is recorded",
                    contents.counts().rankedAssumed());
        }
        if (totals.doubtful() > 0) {
            line(
                    "%,8d of them only with good lubrication; without it the calculated pull fails from both ends",
                    totals.doubtful());
        }
        if (totals.tightBends() > 0) {
            line(
                    "%,8d of them only through a bend that is tighter than the innerduct's minimum radius; check them in the field",
                    totals.tightBends());
        }
        contents.deciders().forEach(sentence -> line("%s.", sentence));
        if (totals.ranked() > 0) {
            MoneyReport.lines(money).forEach(text -> line("%s", text));
        }
        ContentsReport.scenarios(contents).forEach(text -> line("%s", text));
        new TreeMap<>(totals.excluded()).forEach((why, count) -> line("%,8d excluded: %s", count, why.explanation()));
    }

    /** One span a section: the others of it would share the crew's set-up, and the list. */
    private void best(RankSummary summary) {
        if (summary.best().isEmpty()) {
            return;
        }
        line("%n%s", BestSections.title(summary.sectionsRanked()));
        line(
                "%5s  %6s  %8s  %7s  %8s  %-9s %4s  %s",
                "rank", "points", "length " + units.unit("m"), "bends", "cables", "pull from", "more", "span");
        summary.best().forEach(this::best);
    }

    private void best(RankSummary.Best best) {
        RankedSpan span = best.span();
        line(
                "%5d  %6.1f  %8s  %6.0f\u00b0  %3d > %2d  %-9s %4s  %s",
                span.rank().orElse(0),
                span.score().totalPoints(),
                units.number(span.span().lengthM(), 1, "m"),
                span.assessment().bends().total().deg(),
                room(span).positionsNow().orElse(0),
                room(span).positionsAfter().orElse(0),
                span.assessment().pull().outcome().key(),
                BestSections.more(best.section()),
                Printable.line(span.span().id()));
    }

    private void next(List<String> lines) {
        for (int i = 0; i < lines.size(); i++) {
            line(i == 0 ? "%n%s" : "%s", lines.get(i));
        }
    }

    private void findings(Map<FindingCode, Long> counts, long toFix) {
        long all = counts.values().stream().mapToLong(Long::longValue).sum();
        line("%n%,d findings, %,d of them to fix:", all, toFix);
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
        summary.written()
                .spansKept()
                .ifPresent(kept -> line(
                        "%nRows of %,d of %,d spans are written, as selected by --where and --within; all "
                                + "counts above are for the whole run.",
                        kept, summary.totals().spans()));
        line(
                "%nResults are in %s: %s",
                summary.written().folder(), String.join(", ", summary.written().files()));
        summary.written().notes().stream()
                .filter(note -> !summary.unitDoubts().contains(note))
                .forEach(note -> line("Note: %s", note));
        line("Planning figures only; they do not authorize vault entry or pulling.");
    }

    private static Room room(RankedSpan span) {
        return span.assessment().room();
    }

    private void line(String format, Object... values) {
        String line = String.format(Locale.ROOT, format.replace("%n", "\n"), values);
        text.append(Printable.of(line)).append('\n');
    }
}
