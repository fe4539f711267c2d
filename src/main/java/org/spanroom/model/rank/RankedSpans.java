package org.spanroom.model.rank;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The spans of a run in the order of the ranking, the excluded ones last.
 *
 * <p>A span with its whole assessment takes kilobytes, and a country has millions: so one may be calculated again each
 * time it is requested. Implementations must bear calls from several threads and give equal answers to equal questions.
 */
public interface RankedSpans {
    int size();

    /** Returns the span at a place of the order, from 0. */
    RankedSpan at(int place);

    /** Returns the first spans of the order, or all if there are fewer. */
    default List<RankedSpan> first(int most) {
        return IntStream.range(0, Math.min(most, size())).mapToObj(this::at).toList();
    }

    /** Returns spans that are held already, given in the order of the ranking. */
    static RankedSpans of(List<RankedSpan> inOrder) {
        List<RankedSpan> spans = List.copyOf(inOrder);
        return new RankedSpans() {
            @Override
            public int size() {
                return spans.size();
            }

            @Override
            public RankedSpan at(int place) {
                return spans.get(place);
            }
        };
    }
}
