package org.spanroom.parallel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

@Timeout(60)
class BackgroundTaskTest {
    private static final long ENDLESS_MS = 600_000;

    @Test
    void startedWorkRunsBesideTheCallerOnADaemon() {
        var goOn = new CountDownLatch(1);

        var task = BackgroundTask.start("beside", () -> {
            sleepUntil(goOn);
            return Thread.currentThread();
        });
        goOn.countDown();

        assertThat(task.await()).isNotSameAs(Thread.currentThread()).satisfies(thread -> {
            assertThat(thread.getName()).isEqualTo("beside");
            assertThat(thread.isDaemon()).isTrue();
        });
    }

    @Test
    void workIsUnderWayUntilItsThreadIsDoneAndNeverIfItIsDeferred() {
        var goOn = new CountDownLatch(1);
        var task = BackgroundTask.run("beside", () -> sleepUntil(goOn));

        assertThat(task.isUnderWay()).isTrue();
        goOn.countDown();
        task.await();
        assertThat(task.isUnderWay()).isFalse();
        assertThat(BackgroundTask.deferred(() -> 1).isUnderWay()).isFalse();
    }

    @Test
    void aThreadThatEndsBeforeItsWorkKeepsNoneWaiting() {
        var goOn = new CountDownLatch(1);
        var thread = new CompletableFuture<Thread>();
        var task = BackgroundTask.run("beside", () -> {
            thread.complete(Thread.currentThread());
            sleepUntil(goOn);
        });
        var full = new OutOfMemoryError("for the test");

        // As the Java machine does with what is thrown outside of the work, where memory is full.
        thread.join().getUncaughtExceptionHandler().uncaughtException(thread.join(), full);

        assertThatThrownBy(task::await).isSameAs(full);
        goOn.countDown();
    }

    @Test
    void deferredWorkRunsOnceOnTheThreadThatWaits() {
        var runs = new AtomicInteger();
        Supplier<Thread> work = () -> {
            runs.incrementAndGet();
            return Thread.currentThread();
        };

        var task = BackgroundTask.deferred(work);

        assertThat(runs).hasValue(0);
        assertThat(task.await()).isSameAs(Thread.currentThread());
        assertThat(task.await()).isSameAs(Thread.currentThread());
        assertThat(runs).hasValue(1);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("org.spanroom.parallel.Failures#all")
    void failureComesOutAsItWasThrown(Throwable failure) {
        Runnable failing = () -> Failures.raise(failure);

        assertThatThrownBy(BackgroundTask.run("failing", failing)::await).isSameAs(failure);
        assertThatThrownBy(BackgroundTask.deferred(() -> {
                    failing.run();
                    return 1;
                })::await)
                .isSameAs(failure);
    }

    @Test
    void interruptedCallerDoesNotWaitAndStaysMarked() {
        var task = BackgroundTask.run("endless", () -> sleepUntil(new CountDownLatch(1)));
        Thread.currentThread().interrupt();

        assertThatThrownBy(task::await)
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("interrupted");

        assertThat(Thread.interrupted()).isTrue();
        task.stop();
    }

    /** Each call takes a hundred bytes or so: a million of them go into no usual stack. */
    @Test
    void stackIsAsWideAsAskedFor() {
        assertThat(BackgroundTask.start("deep", 512L << 20, () -> depth(1_000_000))
                        .await())
                .isEqualTo(1_000_000);
    }

    private static int depth(int levels) {
        return levels == 0 ? 0 : 1 + depth(levels - 1);
    }

    private static void sleepUntil(CountDownLatch latch) {
        try {
            latch.await(ENDLESS_MS, TimeUnit.MILLISECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
