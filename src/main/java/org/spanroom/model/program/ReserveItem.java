package org.spanroom.model.program;

import java.util.OptionalDouble;

/**
 * An eligible span that is not in the program.
 *
 * @param place its place in the order in which eligible spans take the place of a span that fails, from 1; 0 for one that cannot
 * @param span the span
 * @param sectionId its section
 * @param chosenRatio in what share of the draws it is in the program; empty where that was not calculated
 * @param whyNot why it is not in the program, in one phrase
 */
public record ReserveItem(int place, EligibleSpan span, String sectionId, OptionalDouble chosenRatio, String whyNot) {}
