package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.UnitDoubts;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.EndDistanceCounts;
import org.spanroom.model.network.Network;
import org.spanroom.pipeline.CheckRun.CheckSummary;

/** What {@code check} says: the account of length, the distances from line ends to vaults, the findings by kind. */
final class CheckReport {
    private static final int FIRST_FEW = 3;

    private final StringBuilder text = new StringBuilder();

    private final UnitSystem units;

    private CheckReport(UnitSystem units) {
        this.units = units;
    }

    static String text(CheckSummary summary, boolean everyFinding, UnitSystem units) {
        var report = new CheckReport(units);
        report.units(UnitDoubts.sentences(summary.findings()));
        report.lengths(summary.network());
        report.ends(summary.ends());
        report.findings(summary.findings(), summary.findingsToFix(), everyFinding);
        return report.text.toString();
    }

    private void units(List<String> doubts) {
        if (!doubts.isEmpty()) {
            line("%nFix first:");
            doubts.forEach(doubt -> line("  %s", Printable.line(doubt)));
        }
    }

    private void lengths(Network network) {
        line(
                "%n%,d spans between %,d vaults",
                network.spans().size(), network.vaults().size());
        length(network.routeLengthM(), "drawn in total");
        length(network.spanLengthM(), "in spans");
        length(network.remainderLengthM(), "not assigned to a span");
    }

    private void length(double lengthM, String meaning) {
        line("%14s %s %s", units.number(lengthM, 3, "m"), units.unit("m"), meaning);
    }

    private void ends(EndDistanceCounts ends) {
        line("%nLine ends that have a vault nearby, of %,d:", ends.endCount());
        for (EndDistanceCounts.Band band : ends.bands()) {
            double percent = ends.endCount() == 0 ? 0 : 100.0 * band.count() / ends.endCount();
            line("  within %s %,10d  %5.1f %%", within(band.withinM()), band.count(), percent);
        }
        line("Set network.snap_tolerance_m to the distance from which the counts hardly grow.");
    }

    /** The tolerance to choose is a setting in meters, whatever is shown. */
    private String within(double withinM) {
        String meters = String.format(Locale.ROOT, "%3.1f m", withinM);
        return units.isUs() ? String.format(Locale.ROOT, "%7s (%s)", units.words(withinM, 1, "m"), meters) : meters;
    }

    private void findings(List<Finding> findings, long toFix, boolean every) {
        line("%n%,d findings, %,d of them to fix", count(findings), toFix);
        Map<FindingCode, List<Finding>> byCode =
                findings.stream().collect(Collectors.groupingBy(Finding::code, TreeMap::new, Collectors.toList()));
        byCode.forEach((code, list) -> {
            line("%n%s (%,d): %s", code.key(), count(list), code.meaning());
            list.stream().limit(every ? Long.MAX_VALUE : FIRST_FEW).forEach(this::finding);
            if (!every && list.size() > FIRST_FEW) {
                line("  and %,d more; --all lists them", list.size() - FIRST_FEW);
            }
        });
    }

    private static long count(List<Finding> findings) {
        return findings.stream().mapToLong(Finding::count).sum();
    }

    private void finding(Finding finding) {
        String field = finding.field().isEmpty() ? "" : ", " + finding.field();
        String place = finding.place()
                .map(at -> String.format(Locale.ROOT, " at %.6f %.6f", at.lonDeg(), at.latDeg()))
                .orElse("");
        String lost = finding.lengthM() > 0 ? " (" + units.words(finding.lengthM(), 2, "m") + ")" : "";
        String what = finding.featureId() + field + ": " + finding.detail();
        line("  %s, %s%s%s", finding.source(), Printable.line(what), lost, place);
    }

    private void line(String format, Object... values) {
        String line = String.format(Locale.ROOT, format.replace("%n", "\n"), values);
        text.append(Printable.of(line)).append('\n');
    }
}
