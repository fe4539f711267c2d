package org.spanroom.model;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Remembers, for each thread, the answer to the question that it asked last, where the same question is mostly asked several times in a row, as what
 * is found of a duct is for each of its spans. A question is the same only if it is the same object: to compare all that makes up a duct takes
 * longer than to answer again. Safe for use by several threads.
 *
 * @param <K> a question, immutable
 * @param <V> an answer
 */
public final class LatestAnswer<K, V> {
    private final Function<K, V> work;
    private final ThreadLocal<Slot<K, V>> latest = ThreadLocal.withInitial(Slot::new);

    /** What one thread asked last. */
    private static final class Slot<K, V> {
        private @Nullable K question;
        private @Nullable V answer;
    }

    public LatestAnswer(Function<K, V> work) {
        this.work = work;
    }

    /** Returns the answer to a question. */
    @SuppressWarnings("ReferenceEquality") // equal questions that are other objects are answered again
    public V of(K question) {
        Slot<K, V> slot = latest.get();
        V known = slot.answer;
        if (known != null && slot.question == question) {
            return known;
        }
        V found = work.apply(question);
        slot.question = question;
        slot.answer = found;
        return found;
    }
}
