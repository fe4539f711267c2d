package org.spanroom.cli;

import java.util.List;
import java.util.Locale;
import org.spanroom.model.Counted;
import org.spanroom.pipeline.ReportRun.ReportSummary;

/** What {@code report} says at its end. */
final class ReportReport {
    private static final double BYTES_PER_MB = 1e6;

    private ReportReport() {}

    static String text(ReportSummary summary) {
        var text = new StringBuilder();
        line(
                text,
                String.format(
                        Locale.ROOT,
                        "%nPage: %s (%.1f MB), %s, %s with the whole calculation.",
                        summary.file(),
                        summary.bytes() / BYTES_PER_MB,
                        Counted.of(summary.shownSpans(), "span"),
                        Counted.whole(summary.detailedSpans())));
        summary.notes().forEach(note -> line(text, "Note: " + note));
        line(text, "Open it in a browser. It loads nothing from a network, except map tiles where --tiles is given.");
        line(text, SummaryJson.CAUTION);
        return text.toString();
    }

    private static void line(StringBuilder text, String line) {
        text.append(Printable.of(line.replace(System.lineSeparator(), "\n"))).append('\n');
    }

    static String json(ReportSummary summary) {
        return SummaryJson.begin("report")
                .number("spans", summary.spans())
                .number("spans_shown", summary.shownSpans())
                .number("spans_detailed", summary.detailedSpans())
                .number("bytes", summary.bytes())
                .texts("notes", summary.notes())
                .texts("files", List.of(summary.file().toString()))
                .texts("cautions", List.of(SummaryJson.CAUTION))
                .write();
    }
}
