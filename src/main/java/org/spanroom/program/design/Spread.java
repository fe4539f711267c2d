package org.spanroom.program.design;

import java.util.function.ObjIntConsumer;
import java.util.function.Supplier;

/**
 * Does independent pieces of work, on one thread or on several.
 *
 * <p>Each piece writes only what belongs to its number, so the result does not depend on the threads.
 */
public interface Spread {
    /** Works on the calling thread. */
    Spread ON_ONE_THREAD = new Spread() {
        @Override
        public <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work) {
            W own = worker.get();
            for (int i = 0; i < count; i++) {
                work.accept(own, i);
            }
        }
    };

    /**
     * Works on numbers from 0 up.
     *
     * @param worker makes what one thread works with
     * @param work does the work of one number
     */
    <W> void over(int count, Supplier<W> worker, ObjIntConsumer<W> work);
}
