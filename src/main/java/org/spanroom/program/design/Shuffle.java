package org.spanroom.program.design;

import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;

/** Random order from a generator that can be split. */
final class Shuffle {
    private Shuffle() {}

    static void shuffle(List<Integer> list, SplittableRandom random) {
        for (int last = list.size() - 1; last > 0; last--) {
            Collections.swap(list, last, random.nextInt(last + 1));
        }
    }
}
