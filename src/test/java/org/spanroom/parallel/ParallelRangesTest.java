package org.spanroom.parallel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

@Timeout(60)
class ParallelRangesTest {
    @ParameterizedTest(name = "{0} numbers on {1} threads")
    @CsvSource({"0, 2", "1, 3", "256, 2", "257, 2", "12345, 1", "12345, 2", "12345, 5"})
    void everyNumberIsWorkedOnOnce(int count, int threads) {
        var worked = new AtomicIntegerArray(count);

        new ParallelRanges(threads)
                .run(count, () -> (from, to) -> IntStream.range(from, to).forEach(worked::incrementAndGet));

        assertThat(IntStream.range(0, count).map(worked::get)).allMatch(times -> times == 1);
    }

    @Test
    void oneThreadIsTheCallersOwnAndWorksInOrder() {
        var expectedFrom = new AtomicInteger();
        Thread caller = Thread.currentThread();

        new ParallelRanges(1).run(10_000, () -> (from, to) -> {
            assertThat(Thread.currentThread()).isSameAs(caller);
            assertThat(expectedFrom.getAndSet(to)).isEqualTo(from);
        });

        assertThat(expectedFrom).hasValue(10_000);
    }

    @Test
    void eachThreadHasWorkOfItsOwn() {
        var threads = ConcurrentHashMap.newKeySet();
        var made = new AtomicInteger();

        new ParallelRanges(3).run(100_000, () -> {
            made.incrementAndGet();
            Thread own = Thread.currentThread();
            return (from, to) -> {
                threads.add(Thread.currentThread());
                assertThat(Thread.currentThread()).isSameAs(own);
            };
        });

        assertThat(made).hasValue(3);
        assertThat(threads).hasSizeBetween(1, 3);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("org.spanroom.parallel.Failures#all")
    void failureComesOutAsItWasThrown(Throwable failure) {
        for (int threads : new int[] {1, 3}) {
            assertThatThrownBy(() -> new ParallelRanges(threads).run(9_000, () -> (from, to) -> {
                        if (from <= 7_777 && 7_777 < to) {
                            Failures.raise(failure);
                        }
                    }))
                    .isSameAs(failure);
        }
    }

    @Test
    void theOtherThreadsStopWhenOneFailsAndHaveEndedWhenTheCallerKnows() {
        var done = new AtomicLong();
        var running = new AtomicInteger();

        assertThatThrownBy(() -> new ParallelRanges(3).run(5_000_000, () -> (from, to) -> {
                    if (from == 0) {
                        throw new ArithmeticException("at once");
                    }
                    running.incrementAndGet();
                    LockSupport.parkNanos(1_000_000);
                    running.decrementAndGet();
                    done.incrementAndGet();
                }))
                .isInstanceOf(ArithmeticException.class);

        assertThat(running).hasValue(0);
        assertThat(done).hasValueLessThan(2_500);
    }

    /** Of two failures the caller receives the earlier one, whichever thread it is from. */
    @Test
    void firstFailureInTimeIsTheOneThatIsThrown() {
        var failed = new CountDownLatch(1);

        assertThatThrownBy(() -> new ParallelRanges(2).run(10_000, () -> (from, to) -> {
                    if (from == 0) {
                        await(failed);
                        LockSupport.parkNanos(20_000_000);
                        throw new ArithmeticException("second");
                    }
                    failed.countDown();
                    throw new ArithmeticException("first");
                }))
                .hasMessage("first");
    }

    @Test
    void interruptedCallerStopsTheWorkAndStaysMarked() throws InterruptedException {
        var begun = new CountDownLatch(1);
        var marked = new AtomicBoolean();
        var done = new AtomicLong();
        var caller = new Thread(() -> {
            assertThatThrownBy(() -> new ParallelRanges(2).run(Integer.MAX_VALUE, () -> (from, to) -> {
                        begun.countDown();
                        LockSupport.parkNanos(1_000_000);
                        done.incrementAndGet();
                    }))
                    .isInstanceOf(IllegalStateException.class)
                    .hasMessage("interrupted");
            marked.set(Thread.currentThread().isInterrupted());
        });
        caller.start();
        begun.await();
        caller.interrupt();
        caller.join();

        assertThat(marked).isTrue();
        LockSupport.parkNanos(50_000_000);
        long soon = done.get();
        LockSupport.parkNanos(50_000_000);
        assertThat(done).hasValue(soon);
    }

    @Test
    void noThreadIsRefused() {
        assertThatThrownBy(() -> new ParallelRanges(0)).hasMessage("threads must be >= 1, was 0");
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
