package org.spanroom.program.annual;

import java.util.List;

/**
 * What a task spends on the set-up of a place where it works: tasks of one year at one place share it, so that all but the most
 * expensive set-up of that place and year are saved.
 *
 * @param place number of the place
 * @param uses of each resource how much of the task's use is this set-up
 */
public record SetUp(int place, List<Double> uses) {
    public SetUp {
        uses = List.copyOf(uses);
        if (place < 0 || uses.stream().anyMatch(use -> !(use >= 0) || Double.isInfinite(use))) {
            throw new IllegalArgumentException("place " + place + ", uses " + uses);
        }
    }
}
