package org.spanroom.parallel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class HandoffTest {
    @ParameterizedTest(name = "{0} items")
    @ValueSource(ints = {0, 1, 3, 4, 20_000})
    void itemsArriveInOrderOnAnotherThread(int count) {
        var arrived = new ArrayList<Integer>();
        var consumer = new AtomicReference<>(Thread.currentThread());

        int result = Handoff.<Integer, Integer>run(
                3,
                item -> {
                    arrived.add(item);
                    consumer.set(Thread.currentThread());
                },
                sink -> {
                    IntStream.range(0, count).forEach(sink::accept);
                    return 7;
                });

        assertThat(result).isEqualTo(7);
        assertThat(arrived).isEqualTo(IntStream.range(0, count).boxed().toList());
        assertThat(consumer.get() == Thread.currentThread()).isEqualTo(count == 0);
    }

    @Test
    void fastProducerWaits() {
        var handedOver = new AtomicInteger();
        var mostAhead = new AtomicInteger();
        var consumed = new AtomicInteger();

        Handoff.<Integer, Boolean>run(
                3,
                item -> {
                    LockSupport.parkNanos(100_000);
                    mostAhead.accumulateAndGet(handedOver.get() - consumed.getAndIncrement(), Math::max);
                },
                sink -> {
                    for (int item = 0; item < 500; item++) {
                        sink.accept(item);
                        handedOver.incrementAndGet();
                    }
                    return true;
                });

        // Three wait, one is with the consumer, one is treated as handed over a moment late.
        assertThat(mostAhead).hasValueBetween(1, 5);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("org.spanroom.parallel.Failures#all")
    void failureOfTheConsumerEndsTheProducerAndComesOutAsItWasThrown(Throwable failure) {
        var produced = new AtomicInteger();

        assertThatThrownBy(() -> Handoff.<Integer, Boolean>run(
                        3,
                        item -> {
                            if (item == 50) {
                                Failures.raise(failure);
                            }
                        },
                        sink -> {
                            for (int item = 0; item < 1_000_000; item++) {
                                sink.accept(item);
                                produced.incrementAndGet();
                            }
                            return true;
                        }))
                .isSameAs(failure);
        assertThat(produced).hasValueBetween(50, 50 + 6);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("org.spanroom.parallel.Failures#all")
    void whatWasHandedOverBeforeTheProducerFailedIsConsumed(Throwable failure) {
        var arrived = new ArrayList<Integer>();

        assertThatThrownBy(() -> Handoff.<Integer, Boolean>run(3, arrived::add, sink -> {
                    IntStream.range(0, 100).forEach(sink::accept);
                    Failures.raise(failure);
                    return true;
                }))
                .isSameAs(failure);
        assertThat(arrived).hasSize(100);
    }

    @Test
    void interruptedProducerInterruptsTheConsumerAndStaysMarked() throws InterruptedException {
        var begun = new CountDownLatch(1);
        var consumerInterrupted = new CountDownLatch(1);

        assertThatThrownBy(() -> Handoff.<Integer, Boolean>run(
                        1,
                        item -> {
                            begun.countDown();
                            untilInterrupted();
                            consumerInterrupted.countDown();
                        },
                        sink -> {
                            sink.accept(0);
                            awaitQuietly(begun);
                            Thread.currentThread().interrupt();
                            sink.accept(1);
                            return true;
                        }))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("interrupted");

        assertThat(Thread.interrupted()).isTrue();
        assertThat(consumerInterrupted.await(30, TimeUnit.SECONDS)).isTrue();
    }

    private static void untilInterrupted() {
        while (!Thread.currentThread().isInterrupted()) {
            LockSupport.parkNanos(1_000_000);
        }
    }

    private static void awaitQuietly(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
