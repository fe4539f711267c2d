package org.spanroom.output.explain;

import java.util.List;

/** Sections of the same kind, each with a title of its own; an array of objects for programs. */
public record ExplanationSections(String key, List<ExplanationSection> sections) implements ExplanationPart {
    public ExplanationSections {
        sections = List.copyOf(sections);
    }

    @Override
    public boolean isShown() {
        return !sections.isEmpty();
    }
}
