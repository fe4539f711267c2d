package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ParallelTest {
    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2, 5})
    void resultsKeepTheOrderOfTheList(int threads) {
        var list = IntStream.range(0, 12_345).boxed().toList();
        var counted = new AtomicLong();

        var results = new Parallel(threads).map(list, n -> n * 2, countingInto(counted));

        assertThat(results)
                .isEqualTo(IntStream.range(0, 12_345).mapToObj(n -> n * 2).toList());
        assertThat(counted).hasValue(12_345);
    }

    @Test
    void failureOfOneElementEndsTheWholeWithItsOwnException() {
        var list = IntStream.range(0, 9_000).boxed().toList();

        assertThatThrownBy(() -> new Parallel(2).map(list, n -> 1 / (n - 7_777), Progress.SILENT))
                .isInstanceOf(ArithmeticException.class);
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
            public void end(String result) {}
        };
    }
}
