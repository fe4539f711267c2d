package org.spanroom.output;

import java.util.function.IntFunction;
import org.spanroom.model.rank.SpanFigures;

/**
 * The rows of all spans, packed, with where each stands.
 *
 * @param places finds the span at a place in the ranking, from 0; asked by several threads
 */
public record PackedResult(PackedSpans rows, SpanFigures figures, IntFunction<PlacedSpan> places) {}
