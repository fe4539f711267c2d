package org.spanroom.program.annual;

import java.util.List;

/**
 * When serving a connection counts.
 *
 * @param values what serving it is worth, by the first year at whose end all of its way is there; 0 after the year in which it is needed
 * @param isMust whether it has to be served
 * @param lastYear of a must, the last year at whose end it may be served first
 */
public record Wish(List<Double> values, boolean isMust, int lastYear) {
    public Wish {
        values = List.copyOf(values);
        if (values.stream().anyMatch(value -> !(value >= 0))) {
            throw new IllegalArgumentException("values " + values);
        }
    }
}
