package org.spanroom.program.annual;

import java.util.List;
import java.util.Optional;

/**
 * Choose for each task a year or none, so that no year uses more of a resource than its limit, every must is done, and the sum of values is
 * greatest. Resource 0 is money, resource 1 crew-hours; others are limits of any kind, e.g. of the work in a district.
 *
 * <p>Where tasks of one year work at one place, that place is set up once: what they use is the sum of their uses, less all of their set-ups there
 * but the greatest (of each resource by itself).
 *
 * @param limits of each year, of each resource, how much there is; infinite where there is no limit
 * @param places how many places there are; set-ups name them by number
 * @param connections what the tasks are to make possible; empty where only the tasks count
 */
public record YearProblem(
        List<List<Double>> limits, List<Task> tasks, int places, Optional<Connections> connections) {
    public static final int MONEY = 0;
    public static final int HOURS = 1;

    public YearProblem {
        limits = limits.stream().map(List::copyOf).toList();
        tasks = List.copyOf(tasks);
        int resources = limits.isEmpty() ? 0 : limits.get(0).size();
        for (List<Double> year : limits) {
            if (year.size() != resources || year.stream().anyMatch(limit -> !(limit >= 0))) {
                throw new IllegalArgumentException("limits " + limits);
            }
        }
        for (Task task : tasks) {
            if (task.values().size() != limits.size() || task.uses().size() != resources) {
                throw new IllegalArgumentException(
                        task + " in " + limits.size() + " years of " + resources + " resources");
            }
            for (SetUp setUp : task.setUps()) {
                if (setUp.place() >= places || setUp.uses().size() != resources) {
                    throw new IllegalArgumentException("set-up " + setUp + " of " + places + " places");
                }
            }
        }
    }

    public int years() {
        return limits.size();
    }

    public int resources() {
        return limits.isEmpty() ? 0 : limits.get(0).size();
    }

    /** Returns this with other limits. */
    public YearProblem withLimits(List<List<Double>> other) {
        return new YearProblem(other, tasks, places, connections);
    }

    /** Returns this with other tasks. */
    public YearProblem withTasks(List<Task> other) {
        return new YearProblem(limits, other, places, connections);
    }
}
