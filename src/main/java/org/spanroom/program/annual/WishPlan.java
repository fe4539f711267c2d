package org.spanroom.program.annual;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** A plan that a search changes connection by connection; limits hold at all times. Not thread-safe. */
final class WishPlan {
    private final WishNetwork network;
    private final PricedYears priced;
    private final WishState state;
    private final PiecePrices pieces;
    private final PricedWay ways;
    private final double[][] prices;
    private final double[] yearRatio;
    private boolean areLimitsKept = true;
    private final @Nullable Placed[] placed;

    /**
     * A served connection.
     *
     * @param year when it is served
     * @param links its way
     * @param slots of each piece of its way, in the order of the way
     */
    @SuppressWarnings("ArrayRecordComponent") // Inside the search only; never changed or compared.
    record Placed(int year, int[] links, int[] slots) {}

    /**
     * A way that a connection could take.
     *
     * @param year by whose end it is to be served
     * @param price of what is needed in addition
     */
    @SuppressWarnings("ArrayRecordComponent") // Inside the search only; never changed or compared.
    record Offer(int year, int[] links, double price) {}

    WishPlan(WishNetwork network, WishPrices wishPrices, SetUpLevels levels) {
        this.network = network;
        YearProblem problem = network.problem();
        priced = new PricedYears(problem, wishPrices, false);
        state = new WishState(network, new YearAccount(problem, levels));
        pieces = new PiecePrices(network, state, priced);
        ways = new PricedWay(network);
        prices = IntStream.range(0, problem.years())
                .mapToObj(wishPrices.years()::ofYear)
                .toArray(double[][]::new);
        yearRatio = new double[problem.years()];
        Arrays.fill(yearRatio, 1);
        placed = new Placed[network.demands()];
    }

    /** Lets limits be exceeded, to see by how much they are short. */
    void ignoreLimits() {
        areLimitsKept = false;
    }

    /** Makes a year seem dearer by a ratio where the year of a task is chosen; 1 for its prices as they are. */
    void disturb(int year, double ratio) {
        yearRatio[year] = ratio;
    }

    WishState state() {
        return state;
    }

    @Nullable
    Placed placed(int demand) {
        return placed[demand];
    }

    /** Returns the last year in which serving a connection counts, or -1. */
    int lastYear(int demand) {
        Wish wish = network.wish(demand);
        int year = state.years() - 1;
        while (year >= 0 && !counts(wish, year)) {
            year--;
        }
        return year;
    }

    private static boolean counts(Wish wish, int year) {
        return wish.isMust() ? year <= wish.lastYear() : wish.values().get(year) > 0;
    }

    /** Returns the way of least price by which a connection can be served by the end of a year, if it has at most a price; limits are not looked at. */
    @Nullable
    Offer offer(int demand, int year, double most, PricedWay.@Nullable LinkPrice noise) {
        int cables = network.demand(demand).cables();
        PricedWay.LinkPrice price = link ->
                noise == null ? pieces.ofLink(link, cables, year) : pieces.ofLink(link, cables, year) * noise.of(link);
        int[] links =
                ways.find(network.demand(demand).from(), network.demand(demand).to(), most, price);
        return links == null ? null : new Offer(year, links, ways.foundPrice());
    }

    /** Serves a connection on an offered way if the limits allow it; if not, nothing is changed. */
    boolean place(int demand, Offer offer) {
        int mark = state.mark();
        int cables = network.demand(demand).cables();
        int[] passed = network.piecesOf(offer.links(), network.demand(demand).from());
        int[] slots = new int[passed.length];
        int year = 0;
        for (int index = 0; index < passed.length; index++) {
            int slot = pieces.choose(passed[index], cables, offer.year());
            if (slot < 0 || !prepare(slot, cables, offer.year())) {
                state.undo(mark);
                return false;
            }
            slots[index] = slot;
            year = Math.max(year, state.freeFrom(slot, cables));
        }
        int best = bestYear(demand, year);
        for (int slot : slots) {
            state.addLoad(slot, best, cables);
        }
        placed[demand] = new Placed(best, offer.links(), slots);
        return true;
    }

    /** Returns the year from a first one on in which serving a connection is worth most. */
    int bestYear(int demand, int first) {
        Wish wish = network.wish(demand);
        int best = first;
        for (int year = first + 1; year < state.years(); year++) {
            if (wish.values().get(year) > wish.values().get(best) && (!wish.isMust() || year <= wish.lastYear())) {
                best = year;
            }
        }
        return best;
    }

    /** Does what a slot needs to take cables by the end of a year, in the cheapest year that has what it takes. */
    private boolean prepare(int slot, int cables, int by) {
        if (state.freeFrom(slot, cables) <= by) {
            return true;
        }
        return state.isDuct(slot) ? build(slot, by) : doTask(state.taskOf(slot), by);
    }

    private boolean build(int slot, int by) {
        int first = network.connections().firstBuildYear().get(state.pieceOf(slot));
        int mark = state.mark();
        for (int year = by; year >= first; year--) {
            state.setDuct(slot, year);
            if (!areLimitsKept || state.account().isWithin(year)) {
                return true;
            }
            state.undo(mark);
        }
        return false;
    }

    /** Does a task by the end of a year, in the year that is worth most; false where none has what it takes. */
    boolean doTask(int task, int by) {
        Task each = network.problem().tasks().get(task);
        int mark = state.mark();
        if (state.yearOf(task) >= 0) {
            state.setTask(task, YearPlan.NEVER);
        }
        int best = YearPlan.NEVER;
        double bestNet = Double.NEGATIVE_INFINITY;
        for (int year = Math.min(by, each.lastYear()); year >= each.firstYear(); year--) {
            double net = each.values().get(year) - yearRatio[year] * price(task, year);
            if (net > bestNet && (!areLimitsKept || state.account().fits(task, year))) {
                best = year;
                bestNet = net;
            }
        }
        if (best < 0) {
            state.undo(mark);
            return false;
        }
        state.setTask(task, best);
        return true;
    }

    /** Does a task again in the year that is worth most now, unless a connection needs it. */
    void moveIfFree(int task) {
        if (!state.isTaskNeeded(task)) {
            doTask(task, state.years() - 1);
        }
    }

    /** Does a task that no connection needs, in the year that is worth most and has what it takes, if it is worth anything there. */
    void fill(int task) {
        int mark = state.mark();
        double before = state.taskValue();
        if (doTask(task, state.years() - 1) && !(state.taskValue() > before)) {
            state.undo(mark);
        }
    }

    /** Returns what a task takes in a year, at its prices. */
    double price(int task, int year) {
        return state.account().priced(task, year, prices[year]);
    }

    /** Takes a connection out, with all work that no other one needs. */
    void remove(int demand) {
        Placed old = placed[demand];
        if (old == null) {
            return;
        }
        int cables = network.demand(demand).cables();
        for (int slot : old.slots()) {
            state.addLoad(slot, old.year(), -cables);
        }
        for (int slot : old.slots()) {
            release(slot);
        }
        placed[demand] = null;
    }

    private void release(int slot) {
        int task = state.taskOf(slot);
        boolean isBuilt = state.isDuct(slot) && state.builtIn(slot) >= 0;
        boolean isDone = task >= 0
                && state.yearOf(task) >= 0
                && !network.problem().tasks().get(task).isMust();
        if ((isBuilt || isDone) && !state.isNeeded(slot)) {
            if (isBuilt) {
                state.setDuct(slot, YearPlan.NEVER);
            } else {
                state.setTask(task, YearPlan.NEVER);
            }
        }
    }

    /** Puts back what {@link #placed} returned, once the state is as it was. */
    void restore(int demand, @Nullable Placed old) {
        placed[demand] = old;
    }

    int missingMusts() {
        int missing = 0;
        for (int demand = 0; demand < placed.length; demand++) {
            missing += network.wish(demand).isMust() && placed[demand] == null ? 1 : 0;
        }
        return missing;
    }

    /** Returns the sum of values of tasks and served connections. */
    double value() {
        double value = state.taskValue();
        for (int demand = 0; demand < placed.length; demand++) {
            Placed each = placed[demand];
            value += each == null ? 0 : network.wish(demand).values().get(each.year());
        }
        return value;
    }

    /** Returns what is left of the limits, at its prices. */
    double leftPrice() {
        double sum = 0;
        for (int year = 0; year < prices.length; year++) {
            for (int resource = 0; resource < prices[year].length; resource++) {
                if (prices[year][resource] > 0) {
                    double limit = network.problem().limits().get(year).get(resource);
                    sum += prices[year][resource] * (limit - state.account().used(year, resource));
                }
            }
        }
        return sum;
    }

    PricedYears priced() {
        return priced;
    }

    /** Takes over a plan, where nothing is done yet. */
    void set(YearPlan plan) {
        new WishPlanRecord(network, state).set(plan, placed);
        state.forget();
    }

    /** Returns the plan as it is. */
    YearPlan plan() {
        return new WishPlanRecord(network, state).of(placed, value());
    }
}
