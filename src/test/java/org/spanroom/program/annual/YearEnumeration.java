package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.Piece;

/** The best plans of a tiny problem, by looking at every year of every task and new duct with every way, bin and year of every connection. At most one new duct a piece. */
final class YearEnumeration {
    private final YearProblem problem;
    private final Connections connections;
    private final int[] yearOf;
    private final int[] builtIn;
    private final List<List<int[][]>> options = new ArrayList<>();
    private final int[][][] load;
    private double bestValue = Double.NEGATIVE_INFINITY;
    private double bestValueOfWhole = Double.NEGATIVE_INFINITY;
    private int leastMissing = Integer.MAX_VALUE;

    /**
     * What was found.
     *
     * @param value the greatest of any plan
     * @param valueOfWhole the greatest of plans that do and serve all that they must; negative infinite where there is none
     * @param missing the least number of wishes that are missed, of those that have to be served
     */
    record Best(double value, double valueOfWhole, int missing) {}

    private YearEnumeration(YearProblem problem) {
        this.problem = problem;
        connections = problem.connections().orElseThrow();
        yearOf = new int[problem.tasks().size()];
        builtIn = new int[connections.network().pieces().size()];
        load = new int[builtIn.length][3][problem.years()];
        for (Demand demand : connections.network().demands()) {
            List<int[][]> ways = new ArrayList<>();
            follow(demand, demand.from(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), ways);
            options.add(ways);
        }
    }

    static Best of(YearProblem problem) {
        var enumeration = new YearEnumeration(problem);
        enumeration.chooseTask(0);
        return new Best(enumeration.bestValue, enumeration.bestValueOfWhole, enumeration.leastMissing);
    }

    private void follow(
            Demand demand, int place, List<Integer> seen, List<Integer> way, List<Integer> bins, List<int[][]> ways) {
        if (place == demand.to()) {
            ways.add(new int[][] {
                way.stream().mapToInt(Integer::intValue).toArray(),
                bins.stream().mapToInt(Integer::intValue).toArray()
            });
            return;
        }
        seen.add(place);
        for (int number = 0; number < builtIn.length; number++) {
            Piece piece = connections.network().pieces().get(number);
            if ((piece.from() != place && piece.to() != place) || seen.contains(piece.other(place))) {
                continue;
            }
            way.add(number);
            for (int bin = 0; bin < piece.bins().size() + piece.more().most(); bin++) {
                bins.add(bin);
                follow(demand, piece.other(place), seen, way, bins, ways);
                bins.remove(bins.size() - 1);
            }
            way.remove(way.size() - 1);
        }
        seen.remove(seen.size() - 1);
    }

    private void chooseTask(int task) {
        if (task == yearOf.length) {
            chooseDuct(0);
            return;
        }
        for (int year = YearPlan.NEVER; year < problem.years(); year++) {
            if (year < 0 || problem.tasks().get(task).isPossibleIn(year)) {
                yearOf[task] = year;
                chooseTask(task + 1);
            }
        }
        yearOf[task] = YearPlan.NEVER;
    }

    private void chooseDuct(int piece) {
        if (piece == builtIn.length) {
            if (isWithin()) {
                serve(0, taskValue(), 0);
            }
            return;
        }
        int most = connections.network().pieces().get(piece).more().most();
        int first = connections.firstBuildYear().get(piece);
        for (int year = YearPlan.NEVER; year < (most == 0 ? 0 : problem.years()); year++) {
            if (year < 0 || year >= first) {
                builtIn[piece] = year;
                chooseDuct(piece + 1);
            }
        }
        builtIn[piece] = YearPlan.NEVER;
    }

    private boolean isWithin() {
        for (int year = 0; year < problem.years(); year++) {
            for (int resource = 0; resource < problem.resources(); resource++) {
                if (used(year, resource) > problem.limits().get(year).get(resource) + 1e-9) {
                    return false;
                }
            }
        }
        return true;
    }

    private double used(int year, int resource) {
        double used = 0;
        double[] greatest = new double[problem.places()];
        for (int task = 0; task < yearOf.length; task++) {
            if (yearOf[task] == year) {
                used += problem.tasks().get(task).uses().get(resource);
                for (SetUp setUp : problem.tasks().get(task).setUps()) {
                    used -= setUp.uses().get(resource);
                    greatest[setUp.place()] =
                            Math.max(greatest[setUp.place()], setUp.uses().get(resource));
                }
            }
        }
        for (int piece = 0; piece < builtIn.length; piece++) {
            used += builtIn[piece] == year ? connections.buildUses().get(piece).get(resource) : 0;
        }
        return used + Arrays.stream(greatest).sum();
    }

    private double taskValue() {
        double value = 0;
        for (int task = 0; task < yearOf.length; task++) {
            Task each = problem.tasks().get(task);
            value += yearOf[task] < 0 ? each.valueNever() : each.values().get(yearOf[task]);
        }
        return value;
    }

    private boolean hasAllMustTasks() {
        for (int task = 0; task < yearOf.length; task++) {
            if (problem.tasks().get(task).isMust() && yearOf[task] < 0) {
                return false;
            }
        }
        return true;
    }

    private void serve(int demand, double value, int missing) {
        if (demand == options.size()) {
            bestValue = Math.max(bestValue, value);
            leastMissing = Math.min(leastMissing, missing);
            if (missing == 0 && hasAllMustTasks()) {
                bestValueOfWhole = Math.max(bestValueOfWhole, value);
            }
            return;
        }
        Wish wish = connections.wishes().get(demand);
        int cables = connections.network().demands().get(demand).cables();
        for (int[][] option : options.get(demand)) {
            for (int year = 0; year < problem.years(); year++) {
                if (fits(option, cables, year)) {
                    add(option, cables, year);
                    boolean isMissed = wish.isMust() && year > wish.lastYear();
                    serve(demand + 1, value + wish.values().get(year), missing + (isMissed ? 1 : 0));
                    add(option, -cables, year);
                }
            }
        }
        serve(demand + 1, value, missing + (wish.isMust() ? 1 : 0));
    }

    private boolean fits(int[][] option, int cables, int from) {
        for (int index = 0; index < option[0].length; index++) {
            for (int year = from; year < problem.years(); year++) {
                int piece = option[0][index];
                int bin = option[1][index];
                if (load[piece][bin][year] + cables > positions(piece, bin, year)) {
                    return false;
                }
            }
        }
        return true;
    }

    private int positions(int number, int bin, int year) {
        Piece piece = connections.network().pieces().get(number);
        if (bin >= piece.bins().size()) {
            return builtIn[number] >= 0 && builtIn[number] <= year ? piece.more().positions() : 0;
        }
        int task = connections.taskOfBin().get(number).get(bin);
        boolean isRecovered = task >= 0 && yearOf[task] >= 0 && yearOf[task] <= year;
        return isRecovered ? piece.bins().get(bin).after() : piece.bins().get(bin).now();
    }

    private void add(int[][] option, int cables, int from) {
        for (int index = 0; index < option[0].length; index++) {
            for (int year = from; year < problem.years(); year++) {
                load[option[0][index]][option[1][index]][year] += cables;
            }
        }
    }
}
