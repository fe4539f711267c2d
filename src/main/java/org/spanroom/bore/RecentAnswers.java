package org.spanroom.bore;

import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.atomic.LongAdder;
import java.util.function.Function;

/**
 * Answers to questions that are asked again and again, of which the latest are kept: between N and twice N of them. What was
 * forgotten is calculated again, with the same result.
 *
 * <p>Method: two generations. An answer that is requested goes into the young one; when that is full it becomes the old one, and what
 * no caller requested since the last time is forgotten with the old one before it. Safe for use by several threads.
 */
final class RecentAnswers<K, V> {
    private final int most;
    private volatile Generations<K, V> generations = Generations.empty();
    private final LongAdder workedOut = new LongAdder();

    private record Generations<K, V>(ConcurrentMap<K, V> young, ConcurrentMap<K, V> old) {
        static <K, V> Generations<K, V> empty() {
            return new Generations<>(new ConcurrentHashMap<>(), new ConcurrentHashMap<>());
        }

        Generations<K, V> next() {
            return new Generations<>(new ConcurrentHashMap<>(), young);
        }
    }

    /** Keeps this many answers, and at most twice as many. */
    RecentAnswers(int most) {
        this.most = most;
    }

    /** Returns the answer to a question, from the work if it is not known; of two threads that work at once the first answer is kept. */
    V get(K question, Function<K, V> work) {
        Generations<K, V> now = generations;
        V young = now.young().get(question);
        if (young != null) {
            return young;
        }
        V old = now.old().get(question);
        V answer = old == null ? work.apply(question) : old;
        V first = now.young().putIfAbsent(question, answer);
        if (first != null) {
            return first;
        }
        if (old == null) {
            workedOut.increment();
        }
        if (now.young().size() >= most) {
            turn();
        }
        return answer;
    }

    private synchronized void turn() {
        if (generations.young().size() >= most) {
            generations = generations.next();
        }
    }

    /** Returns how many answers were calculated, those forgotten since then included. */
    long workedOut() {
        return workedOut.sum();
    }

    /** Returns how many answers are kept, some of them perhaps twice. */
    int kept() {
        Generations<K, V> now = generations;
        return now.young().size() + now.old().size();
    }
}
