package org.spanroom.parallel;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * One piece of work beside other work. The caller that waits for it receives its result, or its failure, as if the work were done by the
 * waiting thread: this is the one place where a failure is taken out of the wrapper that the library puts around it, and where an
 * interruption becomes an exception.
 *
 * <p>Its thread is a daemon: a task that no thread waits for keeps no program running, and its failure has no effect.
 *
 * @param <T> the result
 */
public final class BackgroundTask<T> {
    private static final long USUAL_STACK = 0;

    private final Task<T> task;
    private final boolean deferred;

    /** Work whose failure is known even if its thread ends before it begins, because no memory is left. */
    private static final class Task<T> extends FutureTask<T> {
        private Task(Supplier<T> work) {
            super(work::get);
        }

        private void fail(Throwable failure) {
            setException(failure);
        }
    }

    private BackgroundTask(Supplier<T> work, boolean deferred) {
        task = new Task<>(work);
        this.deferred = deferred;
    }

    /** Begins work at once on a thread of that name. */
    public static <T> BackgroundTask<T> start(String name, Supplier<T> work) {
        return start(name, USUAL_STACK, work);
    }

    /** Begins work without a result at once on a thread of that name. */
    public static BackgroundTask<?> run(String name, Runnable work) {
        return start(name, () -> {
            work.run();
            return true;
        });
    }

    /** Begins work at once on a thread whose stack has this many bytes. */
    public static <T> BackgroundTask<T> start(String name, long stackBytes, Supplier<T> work) {
        var background = new BackgroundTask<>(work, false);
        var thread = new Thread(null, background.task, name, stackBytes);
        thread.setDaemon(true);
        thread.setUncaughtExceptionHandler((ended, failure) -> background.task.fail(failure));
        thread.start();
        return background;
    }

    /** Returns work that begins when it is waited for, on the waiting thread. */
    public static <T> BackgroundTask<T> deferred(Supplier<T> work) {
        return new BackgroundTask<>(work, true);
    }

    /**
     * Waits for the result. A failure of the work is thrown unchanged.
     *
     * @throws IllegalStateException if the waiting thread is interrupted, which stays marked as such
     */
    public T await() {
        if (deferred) {
            task.run();
        }
        try {
            return task.get();
        } catch (InterruptedException e) {
            throw interrupted(e);
        } catch (ExecutionException e) {
            throw unchecked(e.getCause());
        }
    }

    /** Waits until the work has ended, whatever came of it. */
    public void awaitQuietly() {
        try {
            await();
        } catch (RuntimeException | Error failure) {
            // Who needs its result finds out again.
        }
    }

    /** Returns whether a thread of its own is at work; a wait for a result would take time. */
    public boolean isUnderWay() {
        return !deferred && !task.isDone();
    }

    /** Interrupts the work if it has not ended. */
    void stop() {
        task.cancel(true);
    }

    /** Returns what an interruption means for the work of this thread, which stays marked as interrupted. */
    static IllegalStateException interrupted(InterruptedException e) {
        Thread.currentThread().interrupt();
        return new IllegalStateException("interrupted", e);
    }

    /** Returns, or throws, what a failed work has thrown, which can be nothing else than unchecked. */
    static RuntimeException unchecked(@Nullable Throwable failure) {
        if (failure instanceof Error error) {
            throw error;
        }
        return failure instanceof RuntimeException unchecked ? unchecked : new IllegalStateException(failure);
    }
}
