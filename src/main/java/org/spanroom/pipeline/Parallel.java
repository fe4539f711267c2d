package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;

/** Goes through numbers from 0 on a fixed number of threads, in stretches; each writes to places of its own. */
final class Parallel {
    /** Large enough to make handing over cheap, small enough to keep threads equally busy. */
    private static final int STRETCH = 1_000;

    private final int threads;

    Parallel(int threads) {
        this.threads = threads;
    }

    /** Does what is to be done for the numbers of a stretch. */
    interface Work {
        void on(int from, int to);
    }

    /** Does the work for every number below the count, each once; what a thread throws is thrown here. */
    void run(int count, Work work, Progress progress) {
        var next = new AtomicInteger();
        Runnable taking = () -> take(count, next, work, progress);
        if (threads == 1 || count <= STRETCH) {
            taking.run();
            return;
        }
        var pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int thread = 0; thread < threads; thread++) {
                running.add(pool.submit(taking));
            }
            running.forEach(Parallel::await);
        } finally {
            pool.shutdownNow();
        }
    }

    private static void take(int count, AtomicInteger next, Work work, Progress progress) {
        for (int from = next.getAndAdd(STRETCH); from < count && from >= 0; from = next.getAndAdd(STRETCH)) {
            int to = Math.min(count, from + STRETCH);
            try {
                work.on(from, to);
            } catch (RuntimeException | Error failure) {
                next.set(count); // the others need not go on
                throw failure;
            }
            progress.advance(to - from);
        }
    }

    private static void await(Future<?> future) {
        try {
            future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw new IllegalStateException(e.getCause());
        }
    }
}
