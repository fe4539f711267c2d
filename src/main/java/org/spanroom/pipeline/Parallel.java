package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** Applies a pure function to every element of a list on a fixed number of threads; the results keep the list's order. */
final class Parallel {
    /** Large enough to make handing over cheap, small enough to keep threads equally busy. */
    private static final int CHUNK = 2_000;

    private final int threads;

    Parallel(int threads) {
        this.threads = threads;
    }

    <A, B> List<B> map(List<A> list, Function<A, B> function, Progress progress) {
        if (threads == 1 || list.size() <= CHUNK) {
            List<B> results = list.stream().map(function).toList();
            progress.advance(list.size());
            return results;
        }
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            var chunks = new ArrayList<Future<List<B>>>();
            for (int from = 0; from < list.size(); from += CHUNK) {
                List<A> chunk = list.subList(from, Math.min(list.size(), from + CHUNK));
                chunks.add(pool.submit(() -> chunk.stream().map(function).toList()));
            }
            var results = new ArrayList<B>(list.size());
            for (Future<List<B>> chunk : chunks) {
                List<B> done = resultOf(chunk);
                results.addAll(done);
                progress.advance(done.size());
            }
            return results;
        } finally {
            pool.shutdownNow();
        }
    }

    private static <T> T resultOf(Future<T> future) {
        try {
            return future.get();
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
