package org.spanroom.output.explain;

import java.util.List;
import java.util.NoSuchElementException;
import java.util.stream.Stream;

/** Parts under a title; an object for programs, or members of the object around it where it has no key. */
public record ExplanationSection(String key, String title, List<ExplanationPart> parts) implements ExplanationPart {
    public ExplanationSection {
        parts = List.copyOf(parts);
    }

    /** Returns the words of the item at a path of keys, such as {@code room/sleeves}; there must be one. */
    public String words(String path) {
        return ExplanationWords.of(((ExplanationItem) part(path)).value());
    }

    /** Returns the number at a path of keys; there must be one. */
    public double number(String path) {
        return ((ExplanationValue.Figure) ((ExplanationItem) part(path)).value()).value();
    }

    /** Returns the part at a path of keys; there must be one. */
    ExplanationPart part(String path) {
        int slash = path.indexOf('/');
        return slash < 0
                ? member(path)
                : ((ExplanationSection) member(path.substring(0, slash))).part(path.substring(slash + 1));
    }

    private ExplanationPart member(String name) {
        return members(parts)
                .filter(part -> part.key().equals(name))
                .findFirst()
                .orElseThrow(() -> new NoSuchElementException("the explanation has no part '" + name + "'"));
    }

    private static Stream<ExplanationPart> members(List<ExplanationPart> parts) {
        return parts.stream()
                .flatMap(part -> part.key().isEmpty() && part instanceof ExplanationSection section
                        ? members(section.parts())
                        : Stream.of(part));
    }

    @Override
    public boolean isShown() {
        return !title.isEmpty();
    }
}
