package org.spanroom.output.explain;

import java.util.List;
import org.spanroom.output.explain.ExplanationReading.Item;
import org.spanroom.output.explain.ExplanationReading.Section;
import org.spanroom.output.explain.ExplanationReading.Sentence;
import org.spanroom.output.explain.ExplanationReading.Table;

/** Renders an explanation as text for a terminal, at most {@value TextPage#WIDTH} columns wide. */
public final class ExplanationText {
    private static final int STEP = 2;
    private static final int WIDEST_LABEL = 40;

    private final TextPage page = new TextPage();

    private ExplanationText() {}

    /** Returns the text of an explanation, its sections one below another. */
    public static String write(ExplanationSection explanation) {
        var text = new ExplanationText();
        text.section(ExplanationReading.of(explanation), 0);
        return text.page.text();
    }

    /** The sections of the whole start at the same indent as its title; those within them are indented, step by step. */
    private void section(Section section, int depth) {
        int indent = STEP * Math.max(0, depth - 1);
        if (depth == 1 || depth == 2) {
            page.gap();
        }
        page.line("%s%s", " ".repeat(indent), section.title());
        var place = new Place(depth, indent + STEP, labelWidth(section.parts()));
        section.parts().forEach(part -> part(part, place));
    }

    /** Where the parts of a section are. */
    private record Place(int depth, int indent, int labelWidth) {}

    private static int labelWidth(List<ExplanationReading> parts) {
        int widest = parts.stream()
                .mapToInt(part -> part instanceof Item item ? item.label().length() : 0)
                .filter(length -> length <= WIDEST_LABEL)
                .max()
                .orElse(0);
        return widest + STEP;
    }

    private void part(ExplanationReading part, Place place) {
        if (part instanceof Item item) {
            labeled(item, place);
        } else if (part instanceof Sentence sentence) {
            page.hanging(place.indent() + STEP, "%s- %s", " ".repeat(place.indent()), sentence.text());
        } else if (part instanceof Table table) {
            ExplanationTextTable.write(table, place.indent(), page);
        } else if (part instanceof Section section) {
            section(section, place.depth() + 1);
        }
    }

    private void labeled(Item item, Place place) {
        int width = Math.max(place.labelWidth(), item.label().length() + STEP);
        page.hanging(
                place.indent() + place.labelWidth(),
                "%s%-" + width + "s%s",
                " ".repeat(place.indent()),
                item.label(),
                item.words());
    }
}
