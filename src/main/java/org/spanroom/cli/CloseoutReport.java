package org.spanroom.cli;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.RowProblem;
import org.spanroom.output.JsonObject;
import org.spanroom.pipeline.CloseoutRun.CloseoutSummary;

/** What {@code closeout} says at its end. */
final class CloseoutReport {
    private static final int MOST_PROBLEMS = 40;

    private static final Map<FactUse, String> MEANING = new EnumMap<>(Map.of(
            FactUse.STATUS, "on the state of the work",
            FactUse.DUCT, "on ducts and their contents",
            FactUse.VAULT, "on vaults",
            FactUse.PRODUCTION, "on hours, forces, material and cost",
            FactUse.RECORD, "kept for people only"));

    private final StringBuilder text = new StringBuilder();

    private CloseoutReport() {}

    /** Returns what entries of a use are about. */
    static String meaning(FactUse use) {
        return MEANING.getOrDefault(use, "");
    }

    static String text(CloseoutSummary summary) {
        var report = new CloseoutReport();
        report.rows(summary);
        report.problems(summary);
        report.result(summary);
        if (summary.applied()) {
            report.entries(summary);
            report.next(summary);
        }
        return report.text.toString();
    }

    private void rows(CloseoutSummary summary) {
        var read = summary.read();
        line("");
        line(Counted.of(read.rows(), "row") + ": "
                + Counted.whole(read.entries().size()) + " understood, " + Counted.whole(badRows(summary)) + " not, "
                + Counted.whole(read.empty()) + " without a value");
        if (!read.others().isEmpty()) {
            line("Columns not used: " + String.join(", ", read.others()));
        }
    }

    private void problems(CloseoutSummary summary) {
        List<RowProblem> problems = summary.read().problems();
        if (problems.isEmpty()) {
            return;
        }
        line("");
        if (summary.read().isAllInFuture()) {
            line(Counted.of(problems.size(), "row") + " " + Counted.form(problems.size(), "is", "are")
                    + " dated after the day of entering, " + summary.request().today()
                    + "; if the work was entered on a later day, use --entered DAY.");
            return;
        }
        line("Rows that cannot be entered:");
        List<String> lines = ProblemLines.of(problems);
        lines.stream().limit(MOST_PROBLEMS).forEach(problem -> line("  " + problem));
        if (lines.size() > MOST_PROBLEMS) {
            line("  and " + Counted.whole(lines.size() - MOST_PROBLEMS) + " more");
        }
        if (lines.size() > MOST_PROBLEMS || lines.size() < problems.size()) {
            line("--json lists each of these rows.");
        }
    }

    private void result(CloseoutSummary summary) {
        var read = summary.read();
        line("");
        if (!summary.applied()) {
            line(nothingEntered(summary));
            if (read.repeated() > 0
                    && read.repeated() == badRows(summary)
                    && read.entries().isEmpty()) {
                line("All of it is entered already.");
            }
            return;
        }
        List<FieldEntry> entries = read.entries();
        String numbers = entries.size() == 1
                ? "entry " + entries.get(0).number()
                : "entries " + entries.get(0).number() + " to "
                        + entries.get(entries.size() - 1).number();
        String verb = summary.request().check() ? "Would be entered in " : "Entered in ";
        line(verb + (summary.isNew() ? "the new field book " : "the field book ") + summary.bookFile() + ": "
                + numbers);
    }

    private static String nothingEntered(CloseoutSummary summary) {
        String entered = (summary.request().check() ? "would be" : "was") + " entered";
        if (summary.read().entries().isEmpty() && !summary.read().problems().isEmpty()) {
            return "No row " + entered + ".";
        }
        String why = summary.read().entries().isEmpty()
                ? "no row has a value"
                : "correct these rows, or enter the others with --partial";
        return "Nothing " + entered + ": " + why + ".";
    }

    private void entries(CloseoutSummary summary) {
        byUse(summary.read().entries())
                .forEach((use, count) -> line(String.format("%6s  %s", Counted.whole(count), meaning(use))));
    }

    private void next(CloseoutSummary summary) {
        if (!summary.outlook().isEmpty()) {
            line("");
            line("The next rank:");
            summary.outlook().forEach(effect -> line("  " + effect));
        }
        if (!summary.isNamed()) {
            line("");
            line("The config of the run does not name this field book. Add to it, relative to the config:");
            line("  inputs:");
            line("    field_book:");
            line("      file: " + summary.bookFile().getFileName());
            line("or give rank the option --field-book " + summary.bookFile() + ".");
        }
    }

    private static long badRows(CloseoutSummary summary) {
        return summary.read().problems().stream()
                .map(RowProblem::line)
                .distinct()
                .count();
    }

    private static Map<FactUse, Long> byUse(List<FieldEntry> entries) {
        return entries.stream()
                .collect(Collectors.groupingBy(
                        entry -> entry.fact().use(), () -> new EnumMap<>(FactUse.class), Collectors.counting()));
    }

    private void line(String line) {
        text.append(Printable.of(line)).append('\n');
    }

    static String json(CloseoutSummary summary) {
        var read = summary.read();
        List<FieldEntry> entered = summary.applied() ? read.entries() : List.of();
        return SummaryJson.begin("closeout")
                .text("run_code", summary.runCode())
                .text("field_book", summary.bookFile().toString())
                .flag("field_book_named", summary.isNamed())
                .flag("checked_only", summary.request().check())
                .number("rows", read.rows())
                .number("rows_understood", read.entries().size())
                .number("rows_refused", badRows(summary))
                .number("rows_repeated", read.repeated())
                .number("rows_without_value", read.empty())
                .number("entries", entered.size())
                .number("first_entry", entered.isEmpty() ? 0 : entered.get(0).number())
                .counts("entries_by_use", SummaryJson.byUse(byUse(entered)))
                .texts("outlook", summary.outlook())
                .objects(
                        "problems",
                        read.problems().stream()
                                .map(problem -> new JsonObject()
                                        .number("line", problem.line())
                                        .text("column", problem.column())
                                        .text("problem", problem.problem())
                                        .text("remedy", problem.remedy()))
                                .toList())
                .write();
    }
}
