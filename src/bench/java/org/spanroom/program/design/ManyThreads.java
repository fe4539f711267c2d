package org.spanroom.program.design;

import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** Works on all processors. */
public final class ManyThreads {
    /** Enough to keep all processors busy to the end, few enough that workers cost little. */
    private static final int PARTS = 4 * Runtime.getRuntime().availableProcessors();

    public static final Spread SPREAD = new Spread() {
        @Override
        public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
            int parts = Math.min(count, PARTS);
            IntStream.range(0, parts).parallel().forEach(part -> {
                W own = worker.get();
                for (int number = part; number < count; number += parts) {
                    work.accept(own, number);
                }
            });
        }
    };

    private ManyThreads() {}
}
