package org.spanroom.parallel;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;

/**
 * Works through the numbers from 0 in ranges, on a fixed number of threads. The work for a number writes to a place of that number, so
 * that no result depends on the threads.
 */
public final class ParallelRanges {
    /** Large enough that taking a range costs little, small enough to keep all threads busy to the end. */
    private static final int RANGE = 256;

    private final int threads;
    private final int range;

    /** For work of which each number takes little time. */
    public ParallelRanges(int threads) {
        this(threads, RANGE);
    }

    /**
     * For work of any length.
     *
     * @param range how many numbers a thread takes at a time
     */
    public ParallelRanges(int threads, int range) {
        if (range < 1) {
            throw new IllegalArgumentException("range must be >= 1, was " + range);
        }
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be >= 1, was " + threads);
        }
        this.threads = threads;
        this.range = range;
    }

    /** The work for the numbers {@code from} to {@code to - 1}. */
    @FunctionalInterface
    public interface RangeWork {
        void on(int from, int to);
    }

    /**
     * Does the work for every number below the count, each once. The first failure stops all threads and is thrown unchanged.
     *
     * @param workers gives each thread work of its own, which may keep scratch space
     * @throws IllegalStateException if the calling thread is interrupted
     */
    public void run(int count, Supplier<RangeWork> workers) {
        var next = new AtomicInteger();
        Runnable taking = () -> take(count, next, workers.get());
        ThreadTeam.run(count <= range ? 1 : threads, taking, () -> next.set(count));
    }

    private void take(int count, AtomicInteger next, RangeWork work) {
        for (int from = next.getAndAdd(range); from < count && from >= 0; from = next.getAndAdd(range)) {
            work.on(from, Math.min(count - from, range) + from);
        }
    }
}
