package org.spanroom.model;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;

/**
 * Remembers the answers to questions of which a network asks few different ones, such as what a word in its records means. Where there are
 * more than a thousand, as in free text, the answers to further ones are found each time, so that memory stays small. Safe for use by several
 * threads.
 *
 * @param <K> a question, equal questions having equal answers
 * @param <V> an answer
 */
public final class FewAnswers<K, V> {
    /** Threads that add an answer at the same moment may exceed it by one each. */
    private static final int MOST = 1000;

    private final Map<K, V> known = new ConcurrentHashMap<>();
    private final Function<K, V> work;

    public FewAnswers(Function<K, V> work) {
        this.work = work;
    }

    /** Returns the answer to a question. */
    public V of(K question) {
        V answer = known.get(question);
        if (answer == null) {
            answer = work.apply(question);
            if (known.size() < MOST) {
                known.put(question, answer);
            }
        }
        return answer;
    }
}
