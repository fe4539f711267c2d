package org.spanroom.parallel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class OrderedWriterTest {
    @ParameterizedTest(name = "{0} chunks on {1} threads")
    @CsvSource({"0, 2", "1, 4", "7, 1", "500, 2", "500, 7"})
    void chunksAreWrittenInOrderAndFewBuffersAreMade(int chunks, int threads) {
        var made = new AtomicInteger();
        var written = new ArrayList<Integer>();

        new OrderedWriter<>(
                        chunks,
                        threads,
                        () -> {
                            made.incrementAndGet();
                            return new int[1];
                        },
                        (buffer, chunk) -> {
                            LockSupport.parkNanos(ThreadLocalRandom.current().nextInt(200_000));
                            buffer[0] = chunk;
                        },
                        buffer -> written.add(buffer[0]))
                .run();

        assertThat(written).isEqualTo(IntStream.range(0, chunks).boxed().toList());
        assertThat(made).hasValueLessThanOrEqualTo(threads == 1 ? 1 : 2 * threads);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("org.spanroom.parallel.Failures#all")
    void failureOfOneChunkComesOutAsItWasThrown(Throwable failure) {
        for (int threads : new int[] {1, 2, 5}) {
            var written = new ArrayList<Integer>();

            assertThatThrownBy(() -> new OrderedWriter<>(
                                    1000,
                                    threads,
                                    () -> new int[1],
                                    (buffer, chunk) -> {
                                        buffer[0] = chunk;
                                        if (chunk == 333) {
                                            Failures.raise(failure);
                                        }
                                    },
                                    buffer -> written.add(buffer[0]))
                            .run())
                    .isSameAs(failure);
            assertThat(written)
                    .isEqualTo(IntStream.range(0, written.size()).boxed().toList())
                    .hasSizeLessThanOrEqualTo(333);
        }
    }

    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2, 5})
    void noChunkIsWrittenAfterOneThatFailed(int threads) {
        var written = new AtomicInteger();

        assertThatThrownBy(() -> new OrderedWriter<>(1000, threads, () -> List.of(), (buffer, chunk) -> {}, buffer -> {
                            if (written.incrementAndGet() == 100) {
                                throw new ArithmeticException("at the hundredth");
                            }
                            LockSupport.parkNanos(1000);
                        })
                        .run())
                .isInstanceOf(ArithmeticException.class);
        assertThat(written).hasValue(100);
    }
}
