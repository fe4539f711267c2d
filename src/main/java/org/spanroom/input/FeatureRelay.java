package org.spanroom.input;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * Reads a layer on one thread and makes routes or vaults of its features on another, in file order. Few features wait in between, so
 * that a fast reader does not fill the memory.
 */
final class FeatureRelay {
    private static final int AT_ONCE = 256;
    private static final int MOST_WAITING = 16;

    /** A few long lines are as much as many short ones. */
    private static final int ORDINATES_AT_ONCE = 1 << 16;

    /** What comes after the last features. */
    private static final List<SourceFeature> END = List.of();

    private final Consumer<SourceFeature> consumer;
    private final BlockingQueue<List<SourceFeature>> waiting = new ArrayBlockingQueue<>(MOST_WAITING);
    private List<SourceFeature> begun = new ArrayList<>(AT_ONCE);
    private long begunOrdinates;

    private FeatureRelay(Consumer<SourceFeature> consumer) {
        this.consumer = consumer;
    }

    /**
     * Reads all features of a layer.
     *
     * @param consumer takes each in turn, on a thread of its own unless one is all there is
     * @return how many features were met, as {@link LayerSource#read} tells
     */
    static long read(LayerSource source, List<String> fields, Consumer<SourceFeature> consumer, int threads) {
        return threads == 1 ? source.read(fields, consumer) : new FeatureRelay(consumer).read(source, fields);
    }

    private long read(LayerSource source, List<String> fields) {
        Executor ownThread = work -> {
            var thread = new Thread(work, "features");
            thread.setDaemon(true);
            thread.start();
        };
        var consumed = CompletableFuture.runAsync(this::consume, ownThread);
        try {
            long met = source.read(fields, feature -> handOver(feature, consumed));
            put(begun, consumed);
            return met;
        } finally {
            put(END, consumed);
            await(consumed);
        }
    }

    private void handOver(SourceFeature feature, CompletableFuture<Void> consumed) {
        begun.add(feature);
        for (double[] part : feature.geometry().parts()) {
            begunOrdinates += part.length;
        }
        if (begun.size() == AT_ONCE || begunOrdinates >= ORDINATES_AT_ONCE) {
            put(begun, consumed);
            begun = new ArrayList<>(AT_ONCE);
            begunOrdinates = 0;
        }
    }

    /** Adds to the queue, unless there is nobody any more who would take from it. */
    private void put(List<SourceFeature> features, CompletableFuture<Void> consumed) {
        try {
            while (!waiting.offer(features, 100, TimeUnit.MILLISECONDS)) {
                if (consumed.isCompletedExceptionally()) {
                    await(consumed);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while reading", e);
        }
    }

    private void consume() {
        try {
            for (List<SourceFeature> next = waiting.take(); !isEnd(next); next = waiting.take()) {
                next.forEach(consumer);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while reading", e);
        }
    }

    private static boolean isEnd(List<SourceFeature> features) {
        return features.isEmpty();
    }

    private static void await(CompletableFuture<Void> consumed) {
        try {
            consumed.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (e.getCause() instanceof Error cause) {
                throw cause;
            }
            throw e;
        }
    }
}
