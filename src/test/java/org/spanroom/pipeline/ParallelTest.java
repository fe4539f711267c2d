package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicIntegerArray;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ParallelTest {
    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2, 5})
    void everyNumberIsWorkedOnOnce(int threads) {
        var worked = new AtomicIntegerArray(12_345);
        var counted = new AtomicLong();

        new Parallel(threads)
                .run(
                        worked.length(),
                        (from, to) -> IntStream.range(from, to).forEach(worked::incrementAndGet),
                        countingInto(counted));

        assertThat(IntStream.range(0, worked.length()).map(worked::get)).containsOnly(1);
        assertThat(counted).hasValue(12_345);
    }

    @Test
    void failureOfOneNumberEndsTheWholeWithItsOwnException() {
        Parallel.Work work = (from, to) -> IntStream.range(from, to).forEach(n -> {
            if (n == 7_777) {
                throw new ArithmeticException("at " + n);
            }
        });

        assertThatThrownBy(() -> new Parallel(2).run(9_000, work, Progress.SILENT))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void theOtherThreadsStopWhenOneFails() {
        var done = new AtomicLong();
        Parallel.Work work = (from, to) -> {
            if (from == 0) {
                throw new ArithmeticException("at once");
            }
            LockSupport.parkNanos(1_000_000);
            done.incrementAndGet();
        };

        assertThatThrownBy(() -> new Parallel(3).run(5_000_000, work, Progress.SILENT))
                .isInstanceOf(ArithmeticException.class);
        assertThat(done).hasValueLessThan(2_500);
    }

    private static Progress countingInto(AtomicLong counter) {
        return new Progress() {
            @Override
            public void begin(String stage, long expectedCount) {}

            @Override
            public void advance(long count) {
                counter.addAndGet(count);
            }

            @Override
            public void reach(double doneShare) {}

            @Override
            public void end(String result) {}
        };
    }
}
