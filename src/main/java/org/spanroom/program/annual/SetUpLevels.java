package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What tasks use, cut into their own part and levels of set-up that they share.
 *
 * <p>The greatest of the set-ups at one place is a sum over levels: from each set-up to the next smaller one is a level, used once
 * if any task with a set-up of at least its height works there. So a year's use is the own uses of its tasks, and each level once that
 * any of them reaches. Levels of several resources that the same tasks reach are one.
 */
final class SetUpLevels {
    /** Of each task, of each resource, what it uses without its set-ups. */
    final double[][] ownUses;
    /** Of each level, of each resource, what it uses. */
    final double[][] uses;
    /** Of each level, the tasks that reach it, in ascending order. */
    final int[][] tasks;
    /** Of each task, the levels that it reaches. */
    final int[][] levelsOf;
    /** Of each task, for each of its levels, a number that no other pair of task and level has: levels one after another. */
    final int[][] slotsOf;
    /** How many such numbers there are. */
    final int slots;

    SetUpLevels(YearProblem problem) {
        int resources = problem.resources();
        int count = problem.tasks().size();
        ownUses = new double[count][resources];
        Map<Integer, List<Integer>> tasksAt = new TreeMap<>();
        for (int task = 0; task < count; task++) {
            Task each = problem.tasks().get(task);
            for (int resource = 0; resource < resources; resource++) {
                ownUses[task][resource] = own(each, resource);
            }
            for (SetUp setUp : each.setUps()) {
                tasksAt.computeIfAbsent(setUp.place(), none -> new ArrayList<>())
                        .add(task);
            }
        }
        List<double[]> allUses = new ArrayList<>();
        List<int[]> allTasks = new ArrayList<>();
        tasksAt.forEach((place, there) -> levels(problem, place, there).forEach((reaching, use) -> {
            allTasks.add(reaching.stream().mapToInt(Integer::intValue).toArray());
            allUses.add(use);
        }));
        uses = allUses.toArray(double[][]::new);
        tasks = allTasks.toArray(int[][]::new);
        levelsOf = new int[count][];
        slotsOf = new int[count][];
        slots = number(count);
    }

    private static double own(Task task, int resource) {
        double own = task.uses().get(resource);
        for (SetUp setUp : task.setUps()) {
            own -= setUp.uses().get(resource);
        }
        // Set-ups that are all of a use leave what rounding does to the difference.
        return own > 1e-12 * task.uses().get(resource) ? own : 0;
    }

    private static Map<List<Integer>, double[]> levels(YearProblem problem, int place, List<Integer> there) {
        Map<List<Integer>, double[]> levels = new LinkedHashMap<>();
        for (int resource = 0; resource < problem.resources(); resource++) {
            int of = resource;
            Map<Double, Collection<Integer>> byUse = new TreeMap<>(Comparator.reverseOrder());
            there.forEach(task -> byUse.computeIfAbsent(
                            use(problem.tasks().get(task), place, of), none -> new TreeSet<>())
                    .add(task));
            var heights = new ArrayList<>(byUse.keySet());
            var reaching = new TreeSet<Integer>();
            for (int height = 0; height < heights.size(); height++) {
                reaching.addAll(byUse.getOrDefault(heights.get(height), List.of()));
                double next = height + 1 < heights.size() ? heights.get(height + 1) : 0;
                double use = heights.get(height) - next;
                if (use > 0) {
                    levels.computeIfAbsent(List.copyOf(reaching), none -> new double[problem.resources()])[resource] =
                            use;
                }
            }
        }
        return levels;
    }

    private static double use(Task task, int place, int resource) {
        return task.setUps().stream()
                .filter(setUp -> setUp.place() == place)
                .mapToDouble(setUp -> setUp.uses().get(resource))
                .sum();
    }

    private int number(int count) {
        var levelsOfTask = new ArrayList<List<Integer>>();
        var slotsOfTask = new ArrayList<List<Integer>>();
        for (int task = 0; task < count; task++) {
            levelsOfTask.add(new ArrayList<>());
            slotsOfTask.add(new ArrayList<>());
        }
        int next = 0;
        for (int level = 0; level < tasks.length; level++) {
            for (int task : tasks[level]) {
                levelsOfTask.get(task).add(level);
                slotsOfTask.get(task).add(next++);
            }
        }
        for (int task = 0; task < count; task++) {
            levelsOf[task] =
                    levelsOfTask.get(task).stream().mapToInt(Integer::intValue).toArray();
            slotsOf[task] =
                    slotsOfTask.get(task).stream().mapToInt(Integer::intValue).toArray();
        }
        return next;
    }

    int count() {
        return tasks.length;
    }

    /** Returns what a task uses of a resource if it is done alone. */
    double usedAlone(int task, int resource) {
        double sum = ownUses[task][resource];
        for (int level : levelsOf[task]) {
            sum += uses[level][resource];
        }
        return sum;
    }
}
