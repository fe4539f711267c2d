package org.spanroom.output;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * Numbered loads that are filled by several threads at once and unloaded one at a time, in the order of their numbers.
 *
 * <p>There are few carriers, and each is used again and again, so that memory stays flat however many loads there are. A thread
 * takes a carrier before it takes a number: hence the lowest number on its way always has one, and nobody waits for ever.
 * Whoever has filled a carrier unloads all that are due, unless another thread is at it.
 *
 * @param <C> what a load is carried in
 */
final class Conveyor<C> {
    private final int loads;
    private final ObjIntConsumer<C> fill;
    private final Consumer<C> unload;
    private final Deque<C> free = new ArrayDeque<>();
    private final @Nullable Object[] filled;
    private final Supplier<C> carriers;
    private final int threads;
    private int made;
    private int next;
    private int unloaded;
    private boolean unloading;
    private boolean failed;

    /**
     * Sets a conveyor up.
     *
     * @param loads how many there are, from 0
     * @param carriers makes an empty carrier
     * @param fill fills a carrier with the load of a number; by several threads
     * @param unload empties a carrier; by one thread at a time
     */
    Conveyor(int loads, int threads, Supplier<C> carriers, ObjIntConsumer<C> fill, Consumer<C> unload) {
        this.loads = loads;
        this.threads = Math.max(1, Math.min(threads, loads));
        this.carriers = carriers;
        this.fill = fill;
        this.unload = unload;
        this.filled = new Object[2 * this.threads];
    }

    /** Carries all loads; what a thread throws ends the work of all and is thrown here. */
    void run() {
        if (threads == 1) {
            C carrier = carriers.get();
            for (int load = 0; load < loads; load++) {
                fill.accept(carrier, load);
                unload.accept(carrier);
            }
            return;
        }
        var pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> running = new ArrayList<>();
            for (int thread = 0; thread < threads; thread++) {
                running.add(pool.submit(this::work));
            }
            for (Future<?> future : running) {
                await(future);
            }
        } finally {
            pool.shutdownNow();
        }
    }

    /** A carrier on the way with a number. */
    private record Task<C>(C carrier, int load) {}

    private void work() {
        try {
            for (Task<C> task = take(); task != null; task = take()) {
                fill.accept(task.carrier(), task.load());
                put(task);
                unloadWhatIsDue();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while writing results", e);
        } finally {
            end();
        }
    }

    private synchronized @Nullable Task<C> take() throws InterruptedException {
        while (next < loads && !failed && free.isEmpty() && made == filled.length) {
            wait();
        }
        if (next >= loads || failed) {
            return null;
        }
        C carrier = free.poll();
        if (carrier == null) {
            carrier = carriers.get();
            made++;
        }
        return new Task<>(carrier, next++);
    }

    private synchronized void put(Task<C> task) {
        filled[task.load() % filled.length] = task.carrier();
    }

    private void unloadWhatIsDue() {
        for (C carrier = due(); carrier != null; carrier = due()) {
            boolean done = false;
            try {
                unload.accept(carrier);
                done = true;
            } finally {
                unloaded(carrier, done);
            }
        }
    }

    /** Returns the carrier that is to be unloaded next; null if it is not there yet, or somebody unloads. */
    @SuppressWarnings("unchecked")
    private synchronized @Nullable C due() {
        int slot = unloaded % filled.length;
        if (unloading || failed || filled[slot] == null) {
            return null;
        }
        C carrier = (C) filled[slot];
        filled[slot] = null;
        unloading = true;
        return carrier;
    }

    private synchronized void unloaded(C carrier, boolean done) {
        unloading = false;
        failed |= !done;
        unloaded++;
        free.add(carrier);
        notifyAll();
    }

    /** A thread that ends before all is done has failed: the others must not wait for it. */
    private synchronized void end() {
        failed |= next < loads;
        notifyAll();
    }

    private static void await(Future<?> future) {
        try {
            future.get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while writing results", e);
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
