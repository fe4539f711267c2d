package org.spanroom.program.annual;

import java.util.function.BooleanSupplier;

/**
 * Finds good prices and shares for a {@link PriceBound}: the duals of the linear relaxation, by the primal-dual hybrid gradient method with steps for
 * each row and column, averages and restarts.
 *
 * <p>Columns are parts of tasks in years and parts of levels of set-up in years, all from 0 to 1. Rows: of each task all parts together at most 1, exactly 1 for a
 * must; of each slot and year the task's part at most the level's; of each year and resource the limit.
 *
 * <p>Method: A. Chambolle and T. Pock 2011 (from memory), steps of rows and columns T. Pock and A. Chambolle 2011 (from memory), restarts D. Applegate et al. 2021 (from memory).
 */
final class PriceSearch {
    private static final int CHECKED_EVERY = 40;
    private static final double SUFFICIENT = 0.2;
    private static final double NECESSARY = 0.8;
    private static final double LONGEST_RATIO = 0.36;

    private final YearProblem problem;
    private final SetUpLevels levels;
    private final PriceBound bound;
    private final int years;
    private final int resources;
    private final int tasks;
    private final YearOptions options;
    private final double worthScale;
    /** Of each task, of each year, what it is worth there against never, in scaled worth. */
    private final double[] gains;
    private final double[] useScales;
    private final double[][] limits;
    /** Rows of limits that some plan could exceed. */
    private final boolean[][] isShort;
    private final double[][] limitSteps;
    private final double[] partSteps;
    private final double[] levelSteps;
    private final PricePoint now;
    private final PricePoint sum;
    private final PricePoint start;
    private final PricePoint average;
    private double weight = 1;
    private int iterations;

    PriceSearch(YearProblem problem, SetUpLevels levels, YearOptions options, PriceBound bound) {
        this.problem = problem;
        this.levels = levels;
        this.options = options;
        this.bound = bound;
        years = problem.years();
        resources = problem.resources();
        tasks = problem.tasks().size();
        worthScale = worthScale();
        gains = new double[tasks * years];
        for (int task = 0; task < tasks; task++) {
            Task each = problem.tasks().get(task);
            for (int year = 0; year < years; year++) {
                gains[task * years + year] = (each.values().get(year) - each.valueNever()) / worthScale;
            }
        }
        useScales = useScales();
        limits = new double[years][resources];
        isShort = new boolean[years][resources];
        limitSteps = new double[years][resources];
        partSteps = new double[tasks];
        levelSteps = new double[levels.count()];
        prepareLimits();
        prepareSteps();
        now = new PricePoint(tasks, levels, years, resources);
        sum = new PricePoint(tasks, levels, years, resources);
        start = new PricePoint(tasks, levels, years, resources);
        average = new PricePoint(tasks, levels, years, resources);
    }

    private double worthScale() {
        double worth = 0;
        for (Task task : problem.tasks()) {
            worth += task.values().stream()
                    .mapToDouble(value -> Math.abs(value - task.valueNever()))
                    .max()
                    .orElse(0);
        }
        return worth > 0 ? worth / tasks : 1;
    }

    /** Mean use of those tasks that use a resource at all. */
    private double[] useScales() {
        var scales = new double[resources];
        for (int resource = 0; resource < resources; resource++) {
            double used = 0;
            int using = 0;
            for (int task = 0; task < tasks; task++) {
                double use = levels.usedAlone(task, resource);
                used += use;
                using += use > 0 ? 1 : 0;
            }
            scales[resource] = using > 0 ? used / using : 1;
        }
        return scales;
    }

    private void prepareLimits() {
        for (int year = 0; year < years; year++) {
            for (int resource = 0; resource < resources; resource++) {
                double most = 0;
                double coefficients = 0;
                for (int task = 0; task < tasks; task++) {
                    if (options.is(task, year)) {
                        most += levels.usedAlone(task, resource);
                        coefficients += levels.ownUses[task][resource] / useScales[resource];
                    }
                }
                for (double[] uses : levels.uses) {
                    coefficients += uses[resource] / useScales[resource];
                }
                double limit = problem.limits().get(year).get(resource);
                isShort[year][resource] = most > limit;
                limits[year][resource] = isShort[year][resource] ? limit / useScales[resource] : 0;
                limitSteps[year][resource] = isShort[year][resource] ? 1 / coefficients : 0;
            }
        }
    }

    private void prepareSteps() {
        for (int task = 0; task < tasks; task++) {
            double coefficients = 1 + levels.levelsOf[task].length;
            for (int resource = 0; resource < resources; resource++) {
                coefficients += levels.ownUses[task][resource] / useScales[resource];
            }
            partSteps[task] = 1 / coefficients;
        }
        for (int level = 0; level < levels.count(); level++) {
            double coefficients = levels.tasks[level].length;
            for (int resource = 0; resource < resources; resource++) {
                coefficients += levels.uses[level][resource] / useScales[resource];
            }
            levelSteps[level] = 1 / coefficients;
        }
    }

    int iterations() {
        return iterations;
    }

    /** Returns what part of a task is done in a year, about, where the relaxation is worth most. */
    double part(int task, int year) {
        return now.parts[task * years + year];
    }

    /**
     * Improves prices and shares.
     *
     * @param most how many steps
     * @param closeRatio gap of the relaxation at which it ends, as a share of the bound
     * @param stop asked every 40 steps
     * @return whether it ended by itself
     */
    boolean run(int most, double closeRatio, BooleanSupplier stop) {
        evaluate(now);
        if (tasks == 0 || years == 0) {
            return true;
        }
        double errorAtStart = Double.POSITIVE_INFINITY;
        double errorBefore = Double.POSITIVE_INFINITY;
        int length = 0;
        sum.clear();
        start.set(now);
        for (int i = 0; i < most; i++) {
            step();
            length++;
            if ((i + 1) % CHECKED_EVERY != 0) {
                continue;
            }
            if (stop.getAsBoolean()) {
                return false;
            }
            average.setMean(sum, length);
            double errorNow = error(now);
            double errorAverage = error(average);
            double error = Math.min(errorNow, errorAverage);
            if (error < closeRatio * Math.abs(bound.bestValue()) / worthScale) {
                return true;
            }
            if (error <= SUFFICIENT * errorAtStart
                    || error <= NECESSARY * errorAtStart && error > errorBefore
                    || length >= LONGEST_RATIO * iterations) {
                restart(errorAverage < errorNow ? average : now);
                errorAtStart = error;
                length = 0;
                error = Double.POSITIVE_INFINITY;
            }
            errorBefore = error;
        }
        return true;
    }

    private void restart(PricePoint from) {
        now.set(from);
        double primal = now.primalDistance(start);
        double dual = now.dualDistance(start);
        if (primal > 1e-10 && dual > 1e-10) {
            weight = Math.exp(0.5 * Math.log(dual / primal) + 0.5 * Math.log(weight));
        }
        start.set(now);
        sum.clear();
    }

    private void step() {
        iterations++;
        double primalStep = 1 / weight;
        stepLevels(primalStep);
        stepTasks(primalStep, weight);
        stepRows(weight);
        sum.add(now);
    }

    /** Of each level and year, its part; {@code ahead} of all columns is twice the new part less the old one. */
    private void stepLevels(double step) {
        int first = 0;
        for (int level = 0; level < levels.count(); level++) {
            int reaching = levels.tasks[level].length;
            double[] uses = levels.uses[level];
            for (int year = 0; year < years; year++) {
                double gain = 0;
                for (int i = 0; i < reaching; i++) {
                    gain += now.weights[(first + i) * years + year];
                }
                for (int resource = 0; resource < resources; resource++) {
                    gain -= now.prices[year][resource] * uses[resource] / useScales[resource];
                }
                int at = level * years + year;
                double before = now.levelParts[at];
                double after = Math.max(0, Math.min(1, before + step * levelSteps[level] * gain));
                now.levelParts[at] = after;
                now.levelsAhead[at] = 2 * after - before;
            }
            first += reaching;
        }
    }

    private void stepTasks(double step, double rowStep) {
        for (int task = 0; task < tasks; task++) {
            double together = 0;
            for (int year = 0; year < years; year++) {
                if (!options.is(task, year)) {
                    continue;
                }
                double gain = gains[task * years + year] - now.taskPrices[task];
                for (int resource = 0; resource < resources; resource++) {
                    gain -= now.prices[year][resource] * levels.ownUses[task][resource] / useScales[resource];
                }
                for (int slot : levels.slotsOf[task]) {
                    gain -= now.weights[slot * years + year];
                }
                int at = task * years + year;
                double before = now.parts[at];
                double after = Math.max(0, Math.min(1, before + step * partSteps[task] * gain));
                now.parts[at] = after;
                now.partsAhead[at] = 2 * after - before;
                together += now.partsAhead[at];
            }
            double price = now.taskPrices[task] + rowStep / years * (together - 1);
            now.taskPrices[task] = options.is(task, YearPlan.NEVER) ? Math.max(0, price) : price;
        }
    }

    private void stepRows(double step) {
        double[][] used = now.used(levels, true);
        for (int year = 0; year < years; year++) {
            for (int resource = 0; resource < resources; resource++) {
                double over = used[year][resource] / useScales[resource] - limits[year][resource];
                now.prices[year][resource] = Math.max(
                        0, now.prices[year][resource] + step * limitSteps[year][resource] * over);
            }
        }
        for (int task = 0; task < tasks; task++) {
            int[] reached = levels.levelsOf[task];
            int[] slots = levels.slotsOf[task];
            for (int i = 0; i < reached.length; i++) {
                for (int year = 0; year < years; year++) {
                    double over = now.partsAhead[task * years + year] - now.levelsAhead[reached[i] * years + year];
                    int at = slots[i] * years + year;
                    now.weights[at] = Math.max(0, now.weights[at] + step / 2 * over);
                }
            }
        }
    }

    private double evaluate(PricePoint point) {
        var prices = new double[years][resources];
        for (int year = 0; year < years; year++) {
            for (int resource = 0; resource < resources; resource++) {
                prices[year][resource] =
                        isShort[year][resource] ? point.prices[year][resource] * worthScale / useScales[resource] : 0;
            }
        }
        return bound.evaluate(prices, point.weights);
    }

    /** Gap of the relaxation and what rows are exceeded by, in mean values of a task. */
    private double error(PricePoint point) {
        double value = 0;
        double squares = 0;
        for (int task = 0; task < tasks; task++) {
            Task each = problem.tasks().get(task);
            double together = 0;
            value += each.valueNever();
            for (int year = 0; year < years; year++) {
                double part = point.parts[task * years + year];
                together += part;
                value += part * gains[task * years + year] * worthScale;
                for (int level : levels.levelsOf[task]) {
                    double over = Math.max(0, part - point.levelParts[level * years + year]);
                    squares += over * over;
                }
            }
            double over = options.is(task, YearPlan.NEVER) ? Math.max(0, together - 1) : together - 1;
            squares += over * over;
        }
        double[][] used = point.used(levels, false);
        for (int year = 0; year < years; year++) {
            for (int resource = 0; resource < resources; resource++) {
                double over = used[year][resource] / useScales[resource] - limits[year][resource];
                squares += isShort[year][resource] && over > 0 ? over * over : 0;
            }
        }
        double gap = (evaluate(point) - value) / worthScale;
        return Math.sqrt(gap * gap + weight * weight * squares);
    }
}
