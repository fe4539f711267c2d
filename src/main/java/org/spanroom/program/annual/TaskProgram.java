package org.spanroom.program.annual;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The choice of years as an integer program: a yes or no of each task and year, and of each level of set-up and year.
 *
 * <p>The native library must be loaded. Uses are rounded down and values up, so that no plan is lost and the bound holds; a plan that exceeds a limit by
 * what rounding leaves has to be repaired. It runs to its limit of work: calls back from the library's threads have crashed the virtual machine, so
 * nothing asks it to stop.
 */
final class TaskProgram {
    private static final int WORKERS = 2;

    private final YearProblem problem;
    private final SetUpLevels levels;
    private final YearOptions options;
    private final CpModel model = new CpModel();
    private final BoolVar[][] does;
    private final BoolVar[][] reaches;
    private double valueFactor;
    private double neverValue;

    private TaskProgram(YearProblem problem, SetUpLevels levels, YearOptions options) {
        this.problem = problem;
        this.levels = levels;
        this.options = options;
        does = new BoolVar[problem.tasks().size()][problem.years()];
        reaches = new BoolVar[levels.count()][problem.years()];
    }

    /**
     * What was found.
     *
     * @param years of each task; empty where no plan was found
     * @param bound no plan with the options is worth more; infinite where nothing is proven, negative infinity where there is no plan
     */
    record Found(Optional<List<Integer>> years, double bound) {}

    /**
     * Searches and proves.
     *
     * @param start a plan to start from: years of tasks
     * @param time limit of work, in the solver's deterministic unit
     */
    static Found of(
            YearProblem problem,
            SetUpLevels levels,
            YearOptions options,
            Optional<int[]> start,
            long seed,
            double time) {
        var program = new TaskProgram(problem, levels, options);
        program.build();
        start.ifPresent(program::hint);
        return program.solve(seed, time);
    }

    private Found solve(long seed, double time) {
        var solver = new CpSolver();
        solver.getParameters()
                .setMaxDeterministicTime(time)
                .setNumWorkers(WORKERS)
                .setInterleaveSearch(true)
                .setRandomSeed((int) (seed & 0x7fff_ffff));
        CpSolverStatus status = solver.solve(model);
        if (status == CpSolverStatus.INFEASIBLE) {
            return new Found(Optional.empty(), Double.NEGATIVE_INFINITY);
        }
        boolean hasPlan = status == CpSolverStatus.OPTIMAL || status == CpSolverStatus.FEASIBLE;
        if (!hasPlan && status != CpSolverStatus.UNKNOWN) {
            throw new IllegalStateException("the integer program ends with " + status);
        }
        double bound = hasPlan ? solver.bestObjectiveBound() / valueFactor + neverValue : Double.POSITIVE_INFINITY;
        return new Found(hasPlan ? Optional.of(years(solver)) : Optional.empty(), bound);
    }

    private List<Integer> years(CpSolver solver) {
        List<Integer> years = new ArrayList<>();
        for (BoolVar[] ofTask : does) {
            int chosen = YearPlan.NEVER;
            for (int year = 0; year < ofTask.length; year++) {
                if (ofTask[year] != null && solver.booleanValue(ofTask[year])) {
                    chosen = year;
                }
            }
            years.add(chosen);
        }
        return years;
    }

    private void build() {
        for (int task = 0; task < does.length; task++) {
            List<Literal> choices = new ArrayList<>();
            for (int year = 0; year < problem.years(); year++) {
                if (options.is(task, year)) {
                    does[task][year] = model.newBoolVar("");
                    choices.add(does[task][year]);
                }
            }
            if (!options.is(task, YearPlan.NEVER)) {
                model.addExactlyOne(choices);
            } else if (choices.size() > 1) {
                model.addAtMostOne(choices);
            }
        }
        for (int level = 0; level < levels.count(); level++) {
            for (int year = 0; year < problem.years(); year++) {
                for (int task : levels.tasks[level]) {
                    if (does[task][year] != null) {
                        reaches[level][year] =
                                reaches[level][year] == null ? model.newBoolVar("") : reaches[level][year];
                        model.addImplication(does[task][year], reaches[level][year]);
                    }
                }
            }
        }
        for (int resource = 0; resource < problem.resources(); resource++) {
            addLimits(resource);
        }
        addObjective();
    }

    private void addLimits(int resource) {
        var scale = new WholeScale();
        for (double[] uses : levels.ownUses) {
            scale.see(uses[resource]);
        }
        for (double[] uses : levels.uses) {
            scale.see(uses[resource]);
        }
        double factor = scale.factor();
        for (int year = 0; year < problem.years(); year++) {
            LinearExprBuilder used = LinearExpr.newBuilder();
            long most = addUses(used, does, levels.ownUses, resource, year, factor)
                    + addUses(used, reaches, levels.uses, resource, year, factor);
            double limit = problem.limits().get(year).get(resource) * (1 + YearAccount.ROUNDING) * factor;
            if (most > limit) {
                model.addLessOrEqual(used, WholeScale.down(limit));
            }
        }
    }

    private static long addUses(
            LinearExprBuilder used, BoolVar[][] of, double[][] uses, int resource, int year, double factor) {
        long most = 0;
        for (int each = 0; each < of.length; each++) {
            long use = WholeScale.down(uses[each][resource] * factor);
            if (of[each][year] != null && use > 0) {
                used.addTerm(of[each][year], use);
                most += use;
            }
        }
        return most;
    }

    private void addObjective() {
        var scale = new WholeScale();
        for (Task task : problem.tasks()) {
            neverValue += task.valueNever();
            task.values().forEach(value -> scale.see(value - task.valueNever()));
        }
        valueFactor = scale.factor();
        LinearExprBuilder value = LinearExpr.newBuilder();
        for (int task = 0; task < does.length; task++) {
            Task each = problem.tasks().get(task);
            for (int year = 0; year < problem.years(); year++) {
                if (does[task][year] != null) {
                    double gain = each.values().get(year) - each.valueNever();
                    value.addTerm(does[task][year], WholeScale.up(gain * valueFactor));
                }
            }
        }
        model.maximize(value);
    }

    private void hint(int[] years) {
        var isReached = new boolean[levels.count()][problem.years()];
        for (int task = 0; task < does.length; task++) {
            for (int year = 0; year < problem.years(); year++) {
                if (does[task][year] != null) {
                    model.addHint(does[task][year], years[task] == year);
                }
            }
            for (int level : levels.levelsOf[task]) {
                if (years[task] != YearPlan.NEVER) {
                    isReached[level][years[task]] = true;
                }
            }
        }
        for (int level = 0; level < levels.count(); level++) {
            for (int year = 0; year < problem.years(); year++) {
                if (reaches[level][year] != null) {
                    model.addHint(reaches[level][year], isReached[level][year]);
                }
            }
        }
    }
}
