package org.spanroom.program.design;

import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** Works on all processors. */
public final class ManyThreads {
    /** On the common pool. */
    public static final Spread SPREAD = new Spread() {
        @Override
        public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
            IntStream.range(0, count).parallel().forEach(number -> work.accept(worker.get(), number));
        }
    };

    private ManyThreads() {}
}
