package org.spanroom.program.annual;

/**
 * Which years come into question for each task: those in which it is possible and, done alone, within the limits; and whether leaving it
 * comes into question.
 */
final class YearOptions {
    private final boolean[][] years;
    private final boolean[] never;

    YearOptions(YearProblem problem, YearAccount empty) {
        int tasks = problem.tasks().size();
        years = new boolean[tasks][problem.years()];
        never = new boolean[tasks];
        for (int task = 0; task < tasks; task++) {
            Task each = problem.tasks().get(task);
            never[task] = !each.isMust();
            for (int year = 0; year < problem.years(); year++) {
                years[task][year] = each.isPossibleIn(year) && empty.fits(task, year);
            }
        }
    }

    private YearOptions(YearOptions other) {
        years = new boolean[other.years.length][];
        for (int task = 0; task < years.length; task++) {
            years[task] = other.years[task].clone();
        }
        never = other.never.clone();
    }

    YearOptions copy() {
        return new YearOptions(this);
    }

    int tasks() {
        return never.length;
    }

    boolean is(int task, int year) {
        return year == YearPlan.NEVER ? never[task] : years[task][year];
    }

    void exclude(int task, int year) {
        if (year == YearPlan.NEVER) {
            never[task] = false;
        } else {
            years[task][year] = false;
        }
    }

    /** Returns how many years come into question for a task. */
    int count(int task) {
        int count = 0;
        for (boolean is : years[task]) {
            count += is ? 1 : 0;
        }
        return count;
    }
}
