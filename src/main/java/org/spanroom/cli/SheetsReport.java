package org.spanroom.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.pipeline.SheetRun.Summary;

/** What {@code sheets} says at its end. */
final class SheetsReport {
    private SheetsReport() {}

    static String text(Summary summary) {
        var text = new StringBuilder();
        line(
                text,
                String.format(
                        Locale.ROOT,
                        "%nSheets of run %s: %s of %s in %s, with %s.",
                        summary.runCode(),
                        Counted.of(summary.pages(), "page"),
                        Counted.of(summary.spans(), "span"),
                        Counted.of(summary.sections(), "section"),
                        Counted.of(summary.blanks(), "blank")));
        if (summary.excluded() > 0) {
            line(text, "No candidates for recovery, as their sheets say: " + summary.excluded() + ".");
        }
        summary.notes().forEach(note -> line(text, note));
        line(text, "Files: " + files(summary).stream().collect(Collectors.joining(", ")));
        line(text, SummaryJson.CAUTION);
        return text.toString();
    }

    private static void line(StringBuilder text, String line) {
        text.append(Printable.of(line.replace(System.lineSeparator(), "\n"))).append('\n');
    }

    private static List<String> files(Summary summary) {
        return summary.files().stream().map(Path::toString).toList();
    }

    static String json(Summary summary) {
        return SummaryJson.begin("sheets")
                .text("run_code", summary.runCode())
                .number("sections", summary.sections())
                .number("spans", summary.spans())
                .number("no_candidates", summary.excluded())
                .number("pages", summary.pages())
                .number("blanks", summary.blanks())
                .texts("files", files(summary))
                .texts("notes", summary.notes())
                .texts("cautions", List.of(SummaryJson.CAUTION))
                .write();
    }
}
