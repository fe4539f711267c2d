package org.spanroom.program.annual;

import java.util.Arrays;
import java.util.List;
import java.util.Map;

/** A plan under way: the year of each task, what is used and what it is worth; changes can be taken back. */
final class WorkingPlan {
    private final YearProblem problem;
    private final YearAccount account;
    private final int[] yearOf;
    private final double[] values;
    private final int years;
    private int[] changedTasks = new int[64];
    private int[] yearsBefore = new int[64];
    private int changes;
    private double value;

    /** With no task done. */
    WorkingPlan(YearProblem problem, YearAccount empty) {
        this.problem = problem;
        account = empty;
        years = problem.years();
        yearOf = new int[problem.tasks().size()];
        Arrays.fill(yearOf, YearPlan.NEVER);
        values = new double[yearOf.length * (years + 1)];
        for (int task = 0; task < yearOf.length; task++) {
            Task each = problem.tasks().get(task);
            values[task * (years + 1)] = each.valueNever();
            for (int year = 0; year < years; year++) {
                values[task * (years + 1) + year + 1] = each.values().get(year);
            }
        }
        value = calculatedValue();
    }

    YearAccount account() {
        return account;
    }

    int yearOf(int task) {
        return yearOf[task];
    }

    int[] years() {
        return yearOf.clone();
    }

    double value() {
        return value;
    }

    double value(int task, int year) {
        return values[task * (years + 1) + year + 1];
    }

    /** Puts a task into another year, or into none, within the limits or not. */
    void put(int task, int year) {
        int before = yearOf[task];
        if (before == year) {
            return;
        }
        if (changes == changedTasks.length) {
            changedTasks = Arrays.copyOf(changedTasks, 2 * changes);
            yearsBefore = Arrays.copyOf(yearsBefore, 2 * changes);
        }
        changedTasks[changes] = task;
        yearsBefore[changes++] = before;
        move(task, year);
    }

    private void move(int task, int year) {
        int before = yearOf[task];
        if (before != YearPlan.NEVER) {
            account.remove(task, before);
        }
        if (year != YearPlan.NEVER) {
            account.add(task, year);
        }
        value += value(task, year) - value(task, before);
        yearOf[task] = year;
    }

    /** Makes all changes so far final. */
    void keep() {
        changes = 0;
    }

    /** Takes back all changes since the last ones that were kept. */
    void takeBack() {
        while (changes > 0) {
            changes--;
            move(changedTasks[changes], yearsBefore[changes]);
        }
    }

    /** Goes to another plan; what it was worth is calculated from its start. */
    void set(int[] other) {
        for (int task = 0; task < yearOf.length; task++) {
            move(task, other[task]);
        }
        changes = 0;
        value = calculatedValue();
    }

    private double calculatedValue() {
        double sum = 0;
        for (int task = 0; task < yearOf.length; task++) {
            sum += value(task, yearOf[task]);
        }
        return sum;
    }

    YearPlan plan() {
        return new YearPlan(
                Arrays.stream(yearOf).boxed().toList(),
                List.of(),
                Map.of(),
                calculatedValue(),
                account.uses());
    }
}
