package org.spanroom.parallel;

import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Hands items from one thread to another in order. Few items wait in between, so that a fast producer does not fill the memory.
 *
 * @param <T> what is handed over
 */
public final class Handoff<T> {
    private final Consumer<T> consumer;
    private final BlockingQueue<Optional<T>> waiting;
    private final BackgroundTask<?> consuming;
    private volatile boolean ended;

    private Handoff(int mostWaiting, Consumer<T> consumer) {
        this.consumer = consumer;
        waiting = new ArrayBlockingQueue<>(mostWaiting);
        consuming = BackgroundTask.run("consumer", this::consume);
    }

    /**
     * Runs a producer on this thread and a consumer on another, and returns when both have ended. A failure of either ends both
     * and is thrown unchanged; before a failure of the producer is thrown, the consumer takes all that was handed over.
     *
     * @param producer receives the place to put items, and returns the result
     * @throws IllegalStateException if either thread is interrupted
     */
    public static <T, R> R run(int mostWaiting, Consumer<T> consumer, Function<Consumer<T>, R> producer) {
        var handoff = new Handoff<>(mostWaiting, consumer);
        try {
            return producer.apply(item -> handoff.put(Optional.of(item)));
        } finally {
            handoff.end();
        }
    }

    /** A consumer that has failed makes room for one item, so that this neither waits for ever nor goes on for long. */
    private void put(Optional<T> item) {
        try {
            if (ended) {
                consuming.await();
            }
            waiting.put(item);
        } catch (InterruptedException e) {
            throw BackgroundTask.interrupted(e);
        }
    }

    private void end() {
        try {
            put(Optional.empty());
            consuming.await();
        } finally {
            consuming.stop();
        }
    }

    private void consume() {
        try {
            for (Optional<T> item = waiting.take(); item.isPresent(); item = waiting.take()) {
                consumer.accept(item.get());
            }
        } catch (InterruptedException e) {
            throw BackgroundTask.interrupted(e);
        } finally {
            ended = true;
            waiting.clear();
        }
    }
}
