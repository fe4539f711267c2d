package org.spanroom.program.annual;

import java.util.Arrays;
import java.util.List;
import org.spanroom.program.design.Design;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.DesignSearch;
import org.spanroom.program.design.SearchSettings;
import org.spanroom.program.design.Spread;

/** Good designs of the years of a problem under prices, and in which direction the prices are to move for a smaller bound. */
final class PricedDesigns {
    private final YearProblem problem;
    private final PricedYears years;
    private final List<Design> designs;
    private final double[][] used;
    private final boolean[][] isServed;
    private final boolean[] isDone;

    private PricedDesigns(YearProblem problem, PricedYears years, List<Design> designs) {
        this.problem = problem;
        this.years = years;
        this.designs = designs;
        used = new double[problem.years()][problem.resources()];
        isServed = new boolean[problem.years()][problem.connections().orElseThrow().wishes().size()];
        isDone = new boolean[problem.tasks().size()];
        for (int task = 0; task < isDone.length; task++) {
            use(years.task(task).year(), years.taskUses(task), 1);
            isDone[task] = years.task(task).year() >= 0;
        }
        for (int year = 0; year < problem.years(); year++) {
            look(year);
        }
    }

    /** Searches designs of all years; the same problem and settings give the same ones. */
    static PricedDesigns of(YearProblem problem, PricedYears years, SearchSettings settings, Spread spread) {
        var designs = new Design[problem.years()];
        spread.over(
                designs.length,
                () -> years,
                (same, year) -> designs[year] =
                        new DesignSearch(same.design(year)).run(settings).design());
        return new PricedDesigns(problem, years, Arrays.asList(designs));
    }

    private void use(int year, double[] uses, double times) {
        for (int resource = 0; year >= 0 && resource < uses.length; resource++) {
            used[year][resource] += times * uses[resource];
        }
    }

    private void look(int year) {
        Design design = designs.get(year);
        List<Integer> demands = years.demands(year);
        for (int index = 0; index < demands.size(); index++) {
            isServed[year][demands.get(index)] = !design.ways().get(index).isEmpty();
        }
        design.uses().forEach((piece, use) -> {
            for (int bin : use.recovered()) {
                int task = taskOf(piece, bin);
                isDone[task] = true;
                move(year, years.task(task), years.taskUses(task), 1.0 / years.binsOfTask(task));
            }
            if (use.built() > 0) {
                double further = ratio(piece) * (use.built() - 1);
                move(year, years.duct(piece), years.ductUses(piece), 1 + further);
            }
        });
    }

    private int taskOf(int piece, int bin) {
        return problem.connections().orElseThrow().taskOfBin().get(piece).get(bin);
    }

    private double ratio(int piece) {
        var more = problem.connections().orElseThrow().network().pieces().get(piece).more();
        return more.firstMoney() > 0 ? more.furtherMoney() / more.firstMoney() : 0;
    }

    /** Having work by the end of a year moves it there from where it is if the next year needs it first, or nothing does. */
    private void move(int year, PricedWork work, double[] uses, double times) {
        boolean isLast = year + 1 == problem.years();
        int before = isLast || !work.isPossibleBy(year) ? work.year() : work.yearBy()[year + 1];
        use(work.yearBy()[year], uses, times);
        use(before, uses, -times);
    }

    /** Returns what the designs, and the tasks that are worth it by themselves, use of a resource in a year. */
    double used(int year, int resource) {
        return used[year][resource];
    }

    boolean isServed(int demand, int year) {
        return isServed[year][demand];
    }

    /** Returns the pieces of a connection's way in the design of a year; empty where that does not serve it. */
    List<Integer> way(int demand, int year) {
        int index = years.demands(year).indexOf(demand);
        return index < 0 ? List.of() : designs.get(year).ways().get(index);
    }

    /** Returns whether some design recovers what a task recovers, or the task is worth it by itself. */
    boolean isDone(int task) {
        return isDone[task];
    }

    /** Returns what the bound at these prices would be if the designs were the cheapest ones. */
    double value() {
        double value = years.constant();
        for (int year = 0; year < problem.years(); year++) {
            value += years.prizes(year) - money(year);
        }
        return value;
    }

    /** Returns the cost of a year's design with the prizes of what it does not serve; infinite where it misses a must. */
    double knownMoney(int year) {
        return designs.get(year).totalMoney();
    }

    private double money(int year) {
        Design design = designs.get(year);
        if (Double.isFinite(design.unservedMoney())) {
            return design.totalMoney();
        }
        DesignProblem drawn = years.design(year);
        double money = design.workMoney();
        for (int demand = 0; demand < design.ways().size(); demand++) {
            double prize = drawn.demands().get(demand).prize();
            money += design.ways().get(demand).isEmpty() && Double.isFinite(prize) ? prize : 0;
        }
        return money;
    }
}
