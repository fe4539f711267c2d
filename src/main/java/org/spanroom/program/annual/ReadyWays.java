package org.spanroom.program.annual;

import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Leads connections, one after another, along ways that wait for less work, with the years of all work as they are: the search is
 * indifferent between ways of one price, and a planner is not, for positions that are free today serve at once. No connection is served
 * in a year that is worth less to it, and none of the others waits for more. Not thread-safe.
 */
final class ReadyWays {
    private final WishNetwork network;
    private final WishPlan plan;
    private final WishState state;
    private final PricedWay ways;

    ReadyWays(WishNetwork network, WishPlan plan) {
        this.network = network;
        this.plan = plan;
        this.state = plan.state();
        this.ways = new PricedWay(network);
    }

    /** Changes the plan. Musts choose first, then what is worth most. */
    void choose() {
        IntStream.range(0, network.demands())
                .filter(demand -> plan.placed(demand) != null)
                .boxed()
                .sorted(Comparator.comparing(
                                (Integer demand) -> !network.wish(demand).isMust())
                        .thenComparing(demand -> -value(demand)))
                .forEach(this::choose);
        state.recount();
    }

    private double value(int demand) {
        WishPlan.Placed placed = plan.placed(demand);
        return placed == null ? 0 : network.wish(demand).values().get(placed.year());
    }

    private void choose(int demand) {
        WishPlan.Placed old = plan.placed(demand);
        int waits = old == null ? 0 : waits(old);
        if (old == null || waits == 0) {
            return;
        }
        int cables = network.demand(demand).cables();
        load(old, -cables);
        int[] links = ways.find(
                network.demand(demand).from(),
                network.demand(demand).to(),
                waits - 0.5,
                link -> waits(link, cables, old.year()));
        WishPlan.Placed found = links == null ? old : placed(demand, links, old.year());
        boolean isKept = network.wish(demand).values().get(found.year())
                >= network.wish(demand).values().get(old.year());
        WishPlan.Placed chosen = isKept ? found : old;
        load(chosen, cables);
        plan.restore(demand, chosen);
        leaveOut(old);
    }

    private void load(WishPlan.Placed placed, int cables) {
        for (int slot : placed.slots()) {
            state.addLoad(slot, placed.year(), cables);
        }
    }

    /** Returns how many of its pieces wait for work. */
    private int waits(WishPlan.Placed placed) {
        int waits = 0;
        for (int slot : placed.slots()) {
            waits += state.load(slot, placed.year()) > freeToday(slot) ? 1 : 0;
        }
        return waits;
    }

    /** Returns how many pieces of a link wait for work by a year; infinite if one cannot take the cables by then. */
    private double waits(int link, int cables, int year) {
        double waits = 0;
        for (int piece : network.link(link).pieces()) {
            int slot = slot(piece, cables, year);
            waits += slot < 0 ? Double.POSITIVE_INFINITY : isFreeToday(slot, cables) ? 0 : 1;
        }
        return waits;
    }

    /** Returns the slot that takes the cables first, one that has the positions today before all others; -1 where none does by a year. */
    private int slot(int piece, int cables, int year) {
        int best = -1;
        int bestFrom = year + 1;
        for (int slot = state.slotStart(piece); slot < state.slotStart(piece + 1); slot++) {
            if (isFreeToday(slot, cables)) {
                return slot;
            }
            int from = state.freeFrom(slot, cables);
            if (from < bestFrom) {
                best = slot;
                bestFrom = from;
            }
        }
        return best;
    }

    /** Whatever lies in it later counts, so that no other connection has to wait. */
    private boolean isFreeToday(int slot, int cables) {
        return state.load(slot, state.years() - 1) + cables <= freeToday(slot);
    }

    private int freeToday(int slot) {
        int piece = state.pieceOf(slot);
        return state.isDuct(slot)
                ? 0
                : network.piece(piece).bins().get(slot - state.slotStart(piece)).now();
    }

    private WishPlan.Placed placed(int demand, int[] links, int latest) {
        int cables = network.demand(demand).cables();
        int[] slots = IntStream.of(
                        network.piecesOf(links, network.demand(demand).from()))
                .map(piece -> slot(piece, cables, latest))
                .toArray();
        int year = 0;
        for (int slot : slots) {
            year = Math.max(year, state.freeFrom(slot, cables));
        }
        return new WishPlan.Placed(plan.bestYear(demand, year), links, slots);
    }

    /** Work that no connection needs any longer and that is worth nothing by itself is not done. */
    private void leaveOut(WishPlan.Placed old) {
        for (int slot : old.slots()) {
            int task = state.taskOf(slot);
            if (state.isDuct(slot) && state.builtIn(slot) >= 0 && !state.isNeeded(slot)) {
                state.setDuct(slot, YearPlan.NEVER);
            } else if (task >= 0 && state.yearOf(task) >= 0 && !state.isTaskNeeded(task) && !isOfValue(task)) {
                state.setTask(task, YearPlan.NEVER);
            }
        }
    }

    private boolean isOfValue(int task) {
        Task each = network.problem().tasks().get(task);
        return each.isMust() || each.values().get(state.yearOf(task)) > each.valueNever();
    }
}
