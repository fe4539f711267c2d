package org.spanroom.output.explain;

import java.util.List;
import org.spanroom.model.UnitSystem;

/** Puts the numbers of an explanation into the units that people are shown. Programs get the metric ones, which the keys name. */
final class ExplanationUnits {
    /** From so many decimals on a number loses the zeros at its end, so a conversion must not carry one across. */
    private static final int EXACT_DECIMALS = 4;

    private final UnitSystem units;

    private ExplanationUnits(UnitSystem units) {
        this.units = units;
    }

    /** Returns the explanation, its numbers in these units. */
    static ExplanationSection convert(ExplanationSection explanation, UnitSystem units) {
        return units.isUs() ? new ExplanationUnits(units).section(explanation) : explanation;
    }

    private ExplanationSection section(ExplanationSection section) {
        return new ExplanationSection(section.key(), section.title(), parts(section.parts()));
    }

    private List<ExplanationPart> parts(List<ExplanationPart> parts) {
        return parts.stream().map(this::part).toList();
    }

    private ExplanationPart part(ExplanationPart part) {
        if (part instanceof ExplanationItem item) {
            return new ExplanationItem(item.key(), item.label(), value(item.value()), item.evidence());
        } else if (part instanceof ExplanationLine line) {
            return new ExplanationLine(line.key(), line.label(), parts(line.parts()));
        } else if (part instanceof ExplanationTable table) {
            return new ExplanationTable(
                    table.key(),
                    table.label(),
                    table.rows().stream().map(this::parts).toList(),
                    table.grouped());
        } else if (part instanceof ExplanationSection section) {
            return section(section);
        }
        ExplanationSections several = (ExplanationSections) part;
        return new ExplanationSections(
                several.key(), several.sections().stream().map(this::section).toList());
    }

    private ExplanationValue value(ExplanationValue value) {
        if (value instanceof ExplanationValue.Figure number) {
            return figure(number);
        } else if (value instanceof ExplanationValue.Several several) {
            return new ExplanationValue.Several(
                    several.values().stream().map(this::value).toList());
        }
        return value;
    }

    private ExplanationValue figure(ExplanationValue.Figure number) {
        int decimals = units.decimals(number.decimals(), number.unit());
        int kept = number.isExact() ? Math.max(EXACT_DECIMALS, decimals) : Math.min(EXACT_DECIMALS - 1, decimals);
        return new ExplanationValue.Figure(units.value(number.value(), number.unit()), kept, units.unit(number.unit()));
    }
}
