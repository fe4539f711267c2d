package org.spanroom.program.design;

import java.util.stream.IntStream;

/** Improves a design demand by demand until no single one can be served better, newly served or left out to advantage. */
final class Polish {
    private static final int MOST_ROUNDS = 20;

    private final DesignTask task;
    private final WorkingDesign design;

    Polish(DesignTask task, WorkingDesign design) {
        this.task = task;
        this.design = design;
    }

    void run() {
        boolean isChanged = true;
        for (int round = 0; isChanged && round < MOST_ROUNDS; round++) {
            isChanged = IntStream.range(0, task.demands()).filter(this::improve).count() > 0;
        }
        design.recount();
    }

    private boolean improve(int demand) {
        double before = design.totalMoney();
        int[] old = design.remove(demand);
        boolean isServed = design.serve(demand, task.prize(demand));
        if (old == null) {
            return isServed;
        }
        if (isServed || !task.isMust(demand)) {
            if (isLess(design.totalMoney(), before)) {
                return true;
            }
            design.remove(demand);
        }
        design.put(demand, old);
        return false;
    }

    /** By more than a rounding. */
    private static boolean isLess(double money, double before) {
        return money < before - 1e-9 * Math.max(1, Math.abs(before));
    }
}
