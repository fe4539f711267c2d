package org.spanroom.output.explain;

import java.util.List;
import java.util.stream.Stream;
import org.spanroom.output.explain.ExplanationValue.Sentences;

/** Renders an explanation as text for a terminal, at most {@value TextPage#WIDTH} columns wide. */
public final class ExplanationText {
    private static final int STEP = 2;
    private static final int WIDEST_LABEL = 40;

    private final TextPage page = new TextPage();

    private ExplanationText() {}

    /** Returns the text of an explanation, its sections one below another. */
    public static String write(ExplanationSection explanation) {
        var text = new ExplanationText();
        text.section(explanation, 0);
        return text.page.text();
    }

    /** The sections of the whole start at the same indent as its title; those within them are indented, step by step. */
    private void section(ExplanationSection section, int depth) {
        int indent = STEP * Math.max(0, depth - 1);
        if (depth == 1 || depth == 2) {
            page.gap();
        }
        page.line("%s%s", " ".repeat(indent), section.title());
        var place = new Place(depth, indent + STEP, labelWidth(section.parts()));
        shown(section.parts()).forEach(part -> part(part, place));
    }

    /** Where the parts of a section are. */
    private record Place(int depth, int indent, int labelWidth) {}

    private static Stream<ExplanationPart> shown(List<ExplanationPart> parts) {
        return parts.stream().filter(ExplanationPart::isShown);
    }

    private static int labelWidth(List<ExplanationPart> parts) {
        int widest = shown(parts)
                .mapToInt(part -> label(part).length())
                .filter(length -> length <= WIDEST_LABEL)
                .max()
                .orElse(0);
        return widest + STEP;
    }

    /** Returns the label of a part; empty for one without a label. */
    private static String label(ExplanationPart part) {
        if (part instanceof ExplanationItem item) {
            return item.label();
        } else if (part instanceof ExplanationLine line) {
            return line.label();
        }
        return part instanceof ExplanationTable table && !ExplanationTextTable.fits(table) ? table.label() : "";
    }

    private void part(ExplanationPart part, Place place) {
        if (part instanceof ExplanationItem item) {
            item(item, place);
        } else if (part instanceof ExplanationLine line) {
            labeled(line.label(), ExplanationWords.inline(line.parts()), place);
        } else if (part instanceof ExplanationTable table) {
            table(table, place);
        } else if (part instanceof ExplanationSection section) {
            section(section, place.depth() + 1);
        } else if (part instanceof ExplanationSections several) {
            several.sections().forEach(section -> section(section, place.depth() + 1));
        }
    }

    private void item(ExplanationItem item, Place place) {
        if (item.value() instanceof Sentences list) {
            String pad = " ".repeat(place.indent());
            list.sentences().forEach(sentence -> page.hanging(place.indent() + STEP, "%s- %s", pad, sentence));
        } else {
            labeled(item.label(), ExplanationWords.of(item), place);
        }
    }

    private void labeled(String label, String words, Place place) {
        page.hanging(
                place.indent() + place.labelWidth(),
                "%s%-" + place.labelWidth() + "s%s",
                " ".repeat(place.indent()),
                label,
                words);
    }

    private void table(ExplanationTable table, Place place) {
        if (ExplanationTextTable.fits(table)) {
            ExplanationTextTable.write(table, place.indent(), page);
        } else {
            table.rows().forEach(row -> labeled(table.label(), ExplanationWords.inline(row), place));
        }
    }
}
