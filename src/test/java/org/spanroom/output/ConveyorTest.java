package org.spanroom.output;

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
import org.junit.jupiter.params.provider.ValueSource;

class ConveyorTest {
    @ParameterizedTest(name = "{0} loads on {1} threads")
    @CsvSource({"0, 2", "1, 4", "7, 1", "500, 2", "500, 7"})
    @Timeout(60)
    void loadsArriveInOrderAndFewCarriersAreMade(int loads, int threads) {
        var made = new AtomicInteger();
        var arrived = new ArrayList<Integer>();

        new Conveyor<>(
                        loads,
                        threads,
                        () -> {
                            made.incrementAndGet();
                            return new int[1];
                        },
                        (carrier, load) -> {
                            LockSupport.parkNanos(ThreadLocalRandom.current().nextInt(200_000));
                            carrier[0] = load;
                        },
                        carrier -> arrived.add(carrier[0]))
                .run();

        assertThat(arrived).isEqualTo(IntStream.range(0, loads).boxed().toList());
        assertThat(made).hasValueLessThanOrEqualTo(2 * threads);
    }

    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2, 5})
    @Timeout(60)
    void failureOfOneLoadEndsTheWholeWithItsOwnException(int threads) {
        assertThatThrownBy(() -> new Conveyor<>(
                                1000,
                                threads,
                                () -> List.of(),
                                (carrier, load) -> {
                                    if (load == 333) {
                                        throw new ArithmeticException("at " + load);
                                    }
                                },
                                carrier -> {})
                        .run())
                .isInstanceOf(ArithmeticException.class);
    }

    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2, 5})
    @Timeout(60)
    void failureInUnloadingEndsTheWholeToo(int threads) {
        var unloaded = new AtomicInteger();

        assertThatThrownBy(() -> new Conveyor<>(1000, threads, () -> List.of(), (carrier, load) -> {}, carrier -> {
                            if (unloaded.incrementAndGet() == 100) {
                                throw new ArithmeticException("at the hundredth");
                            }
                            LockSupport.parkNanos(1000);
                        })
                        .run())
                .isInstanceOf(ArithmeticException.class);
        assertThat(unloaded).hasValue(100);
    }
}
