package org.spanroom.parallel;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/** Several threads that share one piece of work. The first failure stops all, and is the one that the caller receives. */
final class ThreadTeam {
    private final Runnable work;
    private final Runnable stop;
    private final AtomicReference<@Nullable Throwable> firstFailure = new AtomicReference<>();

    private ThreadTeam(Runnable work, Runnable stop) {
        this.work = work;
        this.stop = stop;
    }

    /**
     * Runs the work once on each thread, or on the caller's if there is only one, and returns when all have ended.
     *
     * <p>When the work fails on one thread, the others are stopped and waited for, and the failure is thrown unchanged. A caller that is
     * interrupted stops all and does not wait.
     *
     * @param stop makes the work end soon; for any thread, at any time, more than once
     */
    static void run(int threads, Runnable work, Runnable stop) {
        if (threads == 1) {
            work.run();
        } else {
            new ThreadTeam(work, stop).run(threads);
        }
    }

    private void run(int threads) {
        try {
            List<BackgroundTask<?>> tasks = new ArrayList<>(threads);
            for (int thread = 1; thread <= threads; thread++) {
                tasks.add(BackgroundTask.run("worker-" + thread, this::work));
            }
            tasks.forEach(BackgroundTask::await);
        } finally {
            stop.run();
        }
        if (firstFailure.get() != null) {
            throw BackgroundTask.unchecked(firstFailure.get());
        }
    }

    private void work() {
        try {
            work.run();
        } catch (RuntimeException | Error failure) {
            firstFailure.compareAndSet(null, failure);
            stop.run();
        }
    }
}
