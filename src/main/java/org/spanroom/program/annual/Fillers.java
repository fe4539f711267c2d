package org.spanroom.program.annual;

import java.util.List;
import java.util.stream.IntStream;

/** Tasks that are worth something by themselves: they are done where limits have something left. */
final class Fillers {
    private final WishPlan plan;
    private final List<Integer> tasks;

    /** Orders tasks by what they are worth for what they take at the plan's prices, the best first. */
    Fillers(WishNetwork network, WishPlan plan) {
        this.plan = plan;
        List<Task> all = network.problem().tasks();
        double[] ratio = new double[all.size()];
        for (int task = 0; task < ratio.length; task++) {
            Task each = all.get(task);
            double use = 0;
            double gain = 0;
            for (int year = each.firstYear(); year <= each.lastYear(); year++) {
                gain = Math.max(gain, each.values().get(year) - each.valueNever());
                use = Math.max(use, plan.price(task, year));
            }
            ratio[task] = gain <= 0 ? 0 : gain / Math.max(1e-12, use);
        }
        tasks = IntStream.range(0, ratio.length)
                .filter(task -> ratio[task] > 0)
                .boxed()
                .sorted((a, b) -> ratio[a] != ratio[b] ? Double.compare(ratio[b], ratio[a]) : Integer.compare(a, b))
                .toList();
    }

    int count() {
        return tasks.size();
    }

    /** Does those that are not done yet, as far as limits allow it. */
    void fill() {
        for (int task : tasks) {
            if (plan.state().yearOf(task) < 0) {
                plan.fill(task);
            }
        }
    }
}
