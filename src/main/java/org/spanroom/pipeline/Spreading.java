package org.spanroom.pipeline;

import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import org.spanroom.parallel.ParallelRanges;
import org.spanroom.program.design.Spread;

/** Spreads the work of a search or a bound over threads. */
final class Spreading {
    private Spreading() {}

    /** Returns what does numbered work on so many threads. */
    static Spread over(int threads) {
        return new Spread() {
            @Override
            public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
                new ParallelRanges(threads).run(count, () -> {
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
