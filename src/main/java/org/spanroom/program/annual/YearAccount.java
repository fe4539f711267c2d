package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.List;

/**
 * What is used in each year, set-ups shared, while a search adds tasks and removes them.
 *
 * <p>Counts in whole units of each resource, so that no order of additions and removals changes a sum. A use is within its limit up to one part
 * in 10<sup>9</sup> of the limit.
 */
final class YearAccount {
    /** Share of a limit that rounding can amount to. */
    static final double ROUNDING = 1e-9;

    /** Units of all uses of a resource together: sums of whole units below 2<sup>53</sup> are exact in a double, too. */
    private static final int BITS = 51;

    private final YearProblem problem;
    private final int years;
    private final int resources;
    private final SetUpLevels levels;
    private final double[] unitsOfOne;
    private final long[][] ownUnits;
    private final long[][] levelUnits;
    private final long[][] limits;
    private final long[][] used;
    private final int[][] reaching;

    YearAccount(YearProblem problem, SetUpLevels levels) {
        this.problem = problem;
        this.levels = levels;
        years = problem.years();
        resources = problem.resources();
        unitsOfOne = new double[resources];
        for (int resource = 0; resource < resources; resource++) {
            unitsOfOne[resource] = Math.scalb(1.0, BITS - 1 - Math.getExponent(Math.max(1e-100, most(resource))));
        }
        ownUnits = units(levels.ownUses);
        levelUnits = units(levels.uses);
        limits = new long[years][resources];
        used = new long[years][resources];
        reaching = new int[levels.count()][years];
        for (int year = 0; year < years; year++) {
            for (int resource = 0; resource < resources; resource++) {
                double limit = problem.limits().get(year).get(resource);
                double units = Math.floor(limit * (1 + ROUNDING) * unitsOfOne[resource]);
                limits[year][resource] = (long) Math.min(units, Math.scalb(1.0, 60));
            }
        }
    }

    /** Returns the same problem's account with nothing in it. */
    YearAccount empty() {
        return new YearAccount(problem, levels);
    }

    /** Of all tasks and new ducts in one year: no sum is larger. */
    private double most(int resource) {
        double most = 0;
        for (Task task : problem.tasks()) {
            most += task.uses().get(resource);
        }
        if (problem.connections().isPresent()) {
            Connections connections = problem.connections().get();
            for (int piece = 0; piece < connections.network().pieces().size(); piece++) {
                int ducts = connections.network().pieces().get(piece).more().most();
                most += ducts == 0
                        ? 0
                        : connections.buildUse(piece, resource, true)
                                + (ducts - 1) * connections.buildUse(piece, resource, false);
            }
        }
        return most;
    }

    private long[][] units(double[][] uses) {
        var units = new long[uses.length][resources];
        for (int each = 0; each < uses.length; each++) {
            for (int resource = 0; resource < resources; resource++) {
                units[each][resource] = units(uses[each][resource], resource);
            }
        }
        return units;
    }

    /** Returns the units of a use; at least one of any use above 0. */
    long units(double use, int resource) {
        return use > 0 ? Math.max(1, Math.round(use * unitsOfOne[resource])) : 0;
    }

    /** Returns what is used of a resource in a year. */
    double used(int year, int resource) {
        return used[year][resource] / unitsOfOne[resource];
    }

    /** Returns by how much more than its limit a year uses of a resource; 0 where it does not. */
    double excess(int year, int resource) {
        return Math.max(0, used[year][resource] - limits[year][resource]) / unitsOfOne[resource];
    }

    boolean isWithin(int year) {
        for (int resource = 0; resource < resources; resource++) {
            if (used[year][resource] > limits[year][resource]) {
                return false;
            }
        }
        return true;
    }

    /** Returns how much more a year uses of a resource, in units, once a task is added to it. */
    long addedUnits(int task, int year, int resource) {
        long sum = ownUnits[task][resource];
        for (int level : levels.levelsOf[task]) {
            if (reaching[level][year] == 0) {
                sum += levelUnits[level][resource];
            }
        }
        return sum;
    }

    /** Returns whether a year is within its limits once a task is added to it. */
    boolean fits(int task, int year) {
        for (int resource = 0; resource < resources; resource++) {
            long room = limits[year][resource] - used[year][resource];
            if (ownUnits[task][resource] > room || addedUnits(task, year, resource) > room) {
                return false;
            }
        }
        return true;
    }

    /** Returns what a task adds to a year, at prices for each unit of a use. */
    double priced(int task, int year, double[] prices) {
        double sum = 0;
        for (int resource = 0; resource < resources; resource++) {
            if (prices[resource] > 0) {
                sum += prices[resource] * (addedUnits(task, year, resource) / unitsOfOne[resource]);
            }
        }
        return sum;
    }

    void add(int task, int year) {
        change(task, year, 1);
    }

    void remove(int task, int year) {
        change(task, year, -1);
    }

    private void change(int task, int year, int by) {
        long[] ofYear = used[year];
        for (int resource = 0; resource < resources; resource++) {
            ofYear[resource] += by * ownUnits[task][resource];
        }
        for (int level : levels.levelsOf[task]) {
            int before = reaching[level][year];
            reaching[level][year] = before + by;
            if (before == 0 || before + by == 0) {
                for (int resource = 0; resource < resources; resource++) {
                    ofYear[resource] += by * levelUnits[level][resource];
                }
            }
        }
    }

    /** Returns whether a year is within its limits once it uses more, e.g. for a new duct. */
    boolean fits(int year, long[] units) {
        for (int resource = 0; resource < resources; resource++) {
            if (units[resource] > limits[year][resource] - used[year][resource]) {
                return false;
            }
        }
        return true;
    }

    /** Adds uses that are not those of a task; negative ones remove them. */
    void use(int year, long[] units) {
        for (int resource = 0; resource < resources; resource++) {
            used[year][resource] += units[resource];
        }
    }

    /** Returns what is used, of each year, of each resource. */
    List<List<Double>> uses() {
        List<List<Double>> uses = new ArrayList<>();
        for (int year = 0; year < years; year++) {
            List<Double> ofYear = new ArrayList<>();
            for (int resource = 0; resource < resources; resource++) {
                ofYear.add(used(year, resource));
            }
            uses.add(ofYear);
        }
        return uses;
    }
}
