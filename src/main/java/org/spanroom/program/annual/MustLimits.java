package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.List;

/**
 * Musts that cannot be done, as far as that is seen without a search: of every run of years, what the musts use at least that have no year outside, against
 * the sum of the limits.
 */
final class MustLimits {
    private final YearProblem problem;
    private final SetUpLevels levels;
    private final YearOptions options;
    private final List<Shortage> shortages = new ArrayList<>();

    private MustLimits(YearProblem problem, SetUpLevels levels, YearOptions options) {
        this.problem = problem;
        this.levels = levels;
        this.options = options;
    }

    /** Returns what is short; empty where nothing is seen. */
    static List<Shortage> shortages(YearProblem problem, SetUpLevels levels, YearOptions options) {
        var limits = new MustLimits(problem, levels, options);
        for (int task = 0; task < options.tasks(); task++) {
            if (problem.tasks().get(task).isMust() && options.count(task) == 0) {
                limits.shortages.add(new Shortage.NoYear(task));
            }
        }
        for (int length = 1; length <= problem.years(); length++) {
            for (int first = 0; first + length <= problem.years(); first++) {
                limits.check(first, first + length - 1);
            }
        }
        return limits.shortages;
    }

    private void check(int firstYear, int lastYear) {
        boolean[] isWithin = new boolean[options.tasks()];
        for (int task = 0; task < isWithin.length; task++) {
            isWithin[task] = problem.tasks().get(task).isMust() && options.count(task) > 0;
            for (int year = 0; year < problem.years(); year++) {
                isWithin[task] &= !options.is(task, year) || year >= firstYear && year <= lastYear;
            }
        }
        for (int resource = 0; resource < problem.resources(); resource++) {
            double limit = 0;
            for (int year = firstYear; year <= lastYear; year++) {
                limit += problem.limits().get(year).get(resource);
            }
            double least = least(isWithin, resource);
            if (least > limit * (1 + 2 * YearAccount.ROUNDING)) {
                shortages.add(new Shortage.MustsExceed(firstYear, lastYear, resource, least, limit));
            }
        }
    }

    /** Each level is used once at least, if any of the tasks reaches it. */
    private double least(boolean[] isWithin, int resource) {
        double least = 0;
        for (int task = 0; task < isWithin.length; task++) {
            least += isWithin[task] ? levels.ownUses[task][resource] : 0;
        }
        for (int level = 0; level < levels.count(); level++) {
            boolean isReached = false;
            for (int task : levels.tasks[level]) {
                isReached |= isWithin[task];
            }
            least += isReached ? levels.uses[level][resource] : 0;
        }
        return least;
    }
}
