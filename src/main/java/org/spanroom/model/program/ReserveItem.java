package org.spanroom.model.program;

import java.util.OptionalDouble;

/**
 * A candidate that is not in the program.
 *
 * @param place its place in the order in which candidates take the place of a span that fails, from 1; 0 for one that cannot
 * @param candidate the span
 * @param sectionId its section
 * @param chosenRatio in what share of the draws it is in the program; empty where that was not calculated
 * @param whyNot why it is not in the program, in one phrase
 */
public record ReserveItem(
        int place, Candidate candidate, String sectionId, OptionalDouble chosenRatio, String whyNot) {}
