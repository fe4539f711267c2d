package org.spanroom.pipeline;

import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import org.spanroom.parallel.ParallelRanges;
import org.spanroom.program.design.Spread;

/** Spreads the work of a search or a bound over threads. */
final class Spreading {
    /** So that no thread waits long for the last one. */
    private static final int RANGES_OF_THREAD = 8;

    private Spreading() {}

    /** Returns what does numbered work on so many threads. */
    static Spread over(int threads) {
        return new Spread() {
            @Override
            public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
                // Few numbers of much work: starts of a search, connections and sections of a bound.
                int range = Math.max(1, count / (RANGES_OF_THREAD * threads));
                new ParallelRanges(threads, range).run(count, () -> {
                    W own = worker.get();
                    return (from, to) -> {
                        for (int number = from; number < to; number++) {
                            work.accept(own, number);
                        }
                    };
                });
            }
        };
    }
}
