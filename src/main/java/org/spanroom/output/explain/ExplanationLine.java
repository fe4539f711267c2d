package org.spanroom.output.explain;

import java.util.List;

/** Facts that people read together in one line; an object for programs. */
public record ExplanationLine(String key, String label, List<ExplanationPart> parts) implements ExplanationPart {
    public ExplanationLine {
        parts = List.copyOf(parts);
    }

    @Override
    public boolean isShown() {
        return !label.isEmpty() && parts.stream().anyMatch(ExplanationPart::isShown);
    }
}
