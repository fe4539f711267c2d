package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;

/**
 * A problem with connections under prices: a constant, and of each year a design problem of its own.
 *
 * <p>With the limits priced, a task that no connection needs is worth its best year or never. One that has to be done by some year loses a part of that, and this
 * loss never rises with the years, so it is a sum of parts of the years from then on: what a bin costs in the problem of a year is the part of that
 * year. Also, what serving a connection by the end of a year is worth is a sum of parts of the years from then on, the prizes. What no year knows of the others is that what is
 * done and served stays so. Hence no plan is worth more than the constant plus, of each year, the sum of prizes less the least cost of its design.
 */
final class PricedYears {
    private final YearProblem problem;
    private final Connections connections;
    private final WishPrices prices;
    private final boolean areMustsRequired;
    private final PricedWork[] tasks;
    private final double[][] taskUses;
    private final PricedWork[] ducts;
    private final int[] binsOfTask;

    /**
     * Creates.
     *
     * @param areMustsRequired whether plans that miss a must do not count
     */
    PricedYears(YearProblem problem, WishPrices prices, boolean areMustsRequired) {
        this.problem = problem;
        this.prices = prices;
        this.areMustsRequired = areMustsRequired;
        connections = problem.connections().orElseThrow();
        int count = problem.tasks().size();
        taskUses = new double[count][];
        tasks = new PricedWork[count];
        for (int task = 0; task < count; task++) {
            Task each = problem.tasks().get(task);
            taskUses[task] = prices.uses(each, task);
            tasks[task] = PricedWork.of(each, taskUses[task], prices.years(), areMustsRequired && each.isMust());
        }
        ducts = IntStream.range(0, connections.firstBuildYear().size())
                .mapToObj(piece ->
                        PricedWork.ofDuct(connections.firstBuildYear().get(piece), ductUses(piece), prices.years()))
                .toArray(PricedWork[]::new);
        binsOfTask = new int[count];
        connections
                .taskOfBin()
                .forEach(bins -> bins.stream().filter(task -> task >= 0).forEach(task -> binsOfTask[task]++));
    }

    /** Returns what the first new duct of a piece takes. */
    double[] ductUses(int piece) {
        return IntStream.range(0, problem.resources())
                .mapToDouble(resource -> connections.buildUse(piece, resource, true))
                .toArray();
    }

    /** Returns what the limits count as, and what all tasks are worth left to themselves. */
    double constant() {
        return prices.years().of(problem.limits())
                + Arrays.stream(tasks).mapToDouble(PricedWork::worth).sum();
    }

    /** Returns the sum of what serving the connections by the end of a year is worth there. */
    double prizes(int year) {
        return IntStream.range(0, connections.wishes().size())
                .mapToDouble(demand -> prize(demand, year))
                .sum();
    }

    private double prize(int demand, int year) {
        double[] worth = prices.worth()[demand];
        return worth[year] - (year + 1 < worth.length ? worth[year + 1] : 0);
    }

    private boolean isRequired(int demand, int year) {
        Wish wish = connections.wishes().get(demand);
        return areMustsRequired && wish.isMust() && year >= wish.lastYear();
    }

    /** Returns the demands that count in a year: those that are worth something there, or have to be served. */
    List<Integer> demands(int year) {
        return IntStream.range(0, connections.wishes().size())
                .filter(demand -> isRequired(demand, year) || prize(demand, year) > 0)
                .boxed()
                .toList();
    }

    /** Returns the problem of a year; its demands are {@link #demands}. */
    DesignProblem design(int year) {
        List<Piece> pieces = new ArrayList<>();
        for (int number = 0; number < ducts.length; number++) {
            Piece piece = connections.network().pieces().get(number);
            List<Bin> bins = new ArrayList<>();
            for (int bin = 0; bin < piece.bins().size(); bin++) {
                bins.add(bin(
                        piece.bins().get(bin),
                        connections.taskOfBin().get(number).get(bin),
                        year));
            }
            pieces.add(new Piece(piece.from(), piece.to(), piece.lengthM(), bins, newDucts(number, piece, year)));
        }
        List<Demand> demands = demands(year).stream()
                .map(number -> {
                    Demand demand = connections.network().demands().get(number);
                    double prize = isRequired(number, year) ? Double.POSITIVE_INFINITY : prize(number, year);
                    return new Demand(demand.from(), demand.to(), demand.cables(), prize);
                })
                .toList();
        return new DesignProblem(connections.network().places(), pieces, demands);
    }

    /** A task that recovers several bins is paid by each of them in part. */
    private Bin bin(Bin bin, int task, int year) {
        if (task < 0 || !bin.isRecoverable() || !tasks[task].isPossibleBy(year)) {
            return new Bin(bin.now(), bin.now(), 0);
        }
        return new Bin(bin.now(), bin.after(), tasks[task].lossOf(year) / binsOfTask[task]);
    }

    private NewDucts newDucts(int number, Piece piece, int year) {
        NewDucts more = piece.more();
        if (more.most() == 0 || !ducts[number].isPossibleBy(year)) {
            return NewDucts.NONE;
        }
        double first = ducts[number].lossOf(year);
        double further = more.firstMoney() > 0 ? first * more.furtherMoney() / more.firstMoney() : 0;
        return new NewDucts(more.positions(), first, further, more.most());
    }

    PricedWork task(int task) {
        return tasks[task];
    }

    double[] taskUses(int task) {
        return taskUses[task];
    }

    PricedWork duct(int piece) {
        return ducts[piece];
    }

    int binsOfTask(int task) {
        return binsOfTask[task];
    }
}
