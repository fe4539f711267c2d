package org.spanroom.output.explain;

import java.util.List;
import java.util.function.Function;

/** Sections of the same kind, each with a title of its own; an array of objects for programs. */
public record ExplanationSections(String key, List<ExplanationSection> sections) implements ExplanationPart {
    public ExplanationSections {
        sections = List.copyOf(sections);
    }

    static <T> ExplanationSections of(
            String key, List<? extends T> things, Function<? super T, ExplanationSection> section) {
        return new ExplanationSections(key, things.stream().map(section).toList());
    }

    @Override
    public boolean isShown() {
        return !sections.isEmpty();
    }
}
