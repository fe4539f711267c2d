package org.spanroom.model.rank;

/**
 * A reason why a span is not ranked, or would not be if its gate were shut. Which reasons there are, and when one applies, is for the
 * ranking to say.
 *
 * @param order place among all reasons, from 0; of several reasons the one with the smallest is the most basic
 * @param key the word in columns, which is also the key of the gate's switch in the config
 * @param explanation the same for people, in one phrase
 */
public record Exclusion(int order, String key, String explanation) implements Comparable<Exclusion> {
    @Override
    public int compareTo(Exclusion other) {
        return Integer.compare(order, other.order);
    }
}
