package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/** Runs numbered jobs on several threads. Each job writes to its own place, so that no result depends on the threads. */
final class Workers {
    private static final int CHUNK = 256;

    private final int threads;

    Workers(int threads) {
        if (threads < 1) {
            throw new IllegalArgumentException("threads must be >= 1, was " + threads);
        }
        this.threads = threads;
    }

    /** Runs jobs 0 to count - 1; each thread gets a worker of its own, which may keep scratch space. */
    void run(int count, Supplier<IntConsumer> workers) {
        if (threads == 1 || count <= CHUNK) {
            IntConsumer worker = workers.get();
            for (int job = 0; job < count; job++) {
                worker.accept(job);
            }
            return;
        }
        var next = new AtomicInteger();
        var pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int thread = 0; thread < threads; thread++) {
                running.add(pool.submit(() -> takeChunks(count, next, workers.get())));
            }
            for (Future<?> future : running) {
                await(future);
            }
        } finally {
            pool.shutdownNow();
        }
    }

    private static void takeChunks(int count, AtomicInteger next, IntConsumer worker) {
        for (int from = next.getAndAdd(CHUNK); from < count && from >= 0; from = next.getAndAdd(CHUNK)) {
            try {
                for (int job = from; job < Math.min(count, from + CHUNK); job++) {
                    worker.accept(job);
                }
            } catch (RuntimeException | Error failure) {
                next.set(count); // the others need not go on
                throw failure;
            }
        }
    }

    private static void await(Future<?> future) {
        try {
            future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("cutting into spans was interrupted", e);
        } catch (ExecutionException e) {
            Throwable cause = e.getCause();
            if (cause instanceof RuntimeException problem) {
                throw problem;
            }
            if (cause instanceof Error error) {
                throw error;
            }
            throw new IllegalStateException(cause);
        }
    }
}
