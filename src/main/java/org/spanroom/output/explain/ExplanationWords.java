package org.spanroom.output.explain;

import static java.util.stream.Collectors.joining;

import java.util.List;
import java.util.Locale;
import org.spanroom.output.explain.ExplanationValue.Figure;
import org.spanroom.output.explain.ExplanationValue.Flag;
import org.spanroom.output.explain.ExplanationValue.Sentences;
import org.spanroom.output.explain.ExplanationValue.Several;
import org.spanroom.output.explain.ExplanationValue.Text;
import org.spanroom.output.explain.ExplanationValue.Word;
import org.spanroom.output.table.Decimals;

/** The values of an explanation in words and figures for people. */
final class ExplanationWords {
    /** More digits than anything in the ground is known to. */
    private static final int SHOWN_DIGITS = 5;

    private ExplanationWords() {}

    /** Returns a value with its unit; empty where it is absent. */
    static String of(ExplanationValue value) {
        if (value instanceof Figure number) {
            return (figures(number) + " " + number.unit()).strip();
        } else if (value instanceof Text text) {
            return text.text();
        } else if (value instanceof Word word) {
            return word.words();
        } else if (value instanceof Flag flag) {
            return flag.value() ? "yes" : "no";
        } else if (value instanceof Several several) {
            String all = several.values().stream().map(ExplanationWords::of).collect(joining(", "));
            return all.isEmpty() ? "none" : all;
        }
        return value instanceof Sentences sentences ? String.join(" ", sentences.sentences()) : "";
    }

    /** Returns the value of an item, and what it rests on. */
    static String of(ExplanationItem item) {
        return of(item.value()) + (item.evidence().isEmpty() ? "" : " (" + item.evidence() + ")");
    }

    /** Returns parts one after another, as within a sentence. */
    static String inline(List<ExplanationPart> parts) {
        return parts.stream()
                .filter(ExplanationPart::isShown)
                .map(ExplanationWords::inline)
                .collect(joining(", "));
    }

    private static String inline(ExplanationPart part) {
        if (part instanceof ExplanationItem item) {
            return item.label() + " " + of(item);
        } else if (part instanceof ExplanationLine line) {
            return line.label() + " " + inline(line.parts());
        } else if (part instanceof ExplanationTable table) {
            return table.rows().stream().map(ExplanationWords::inline).collect(joining("; ", table.label() + ": ", ""));
        }
        throw new IllegalArgumentException("a section does not go into a line: " + part.key());
    }

    /** Returns how many decimals of a number people are shown. */
    static int decimals(Figure number) {
        double size = Math.max(number.isExact() ? 1e-9 : 1, Math.abs(number.value()));
        int whole = (int) Math.floor(Math.log10(size)) + 1;
        return Math.min(number.decimals(), Math.max(0, SHOWN_DIGITS - whole));
    }

    /** Returns a number without its unit. */
    static String figures(Figure number) {
        String figures = fixed(number.value(), decimals(number));
        return number.isExact() && figures.contains(".") ? figures.replaceAll("\\.?0+$", "") : figures;
    }

    /** Returns a number with the given number of decimals, and commas between thousands from ten thousand on. */
    static String fixed(double value, int decimals) {
        String format = Math.abs(value) < 1e4 ? "%." : "%,.";
        return String.format(Locale.ROOT, format + decimals + "f", Decimals.round(value, decimals));
    }
}
