package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** Turns the plan that a search changes into one that is handed out, and the other way. */
final class WishPlanRecord {
    private final WishNetwork network;
    private final WishState state;

    WishPlanRecord(WishNetwork network, WishState state) {
        this.network = network;
        this.state = state;
    }

    /** Does and builds what a plan does, and notes how it serves connections; nothing may be done yet. */
    void set(YearPlan plan, WishPlan.@Nullable Placed[] placed) {
        for (int task = 0; task < plan.yearOf().size(); task++) {
            if (plan.yearOf().get(task) >= 0) {
                state.setTask(task, plan.yearOf().get(task));
            }
        }
        plan.built().forEach((piece, years) -> {
            int first = state.slotStart(piece) + network.piece(piece).bins().size();
            for (int duct = 0; duct < years.size(); duct++) {
                state.setDuct(first + duct, years.get(duct));
            }
        });
        for (int demand = 0; demand < placed.length; demand++) {
            if (plan.served().get(demand).isPresent()) {
                placed[demand] = placed(demand, plan.served().get(demand).get());
            }
        }
    }

    private WishPlan.Placed placed(int demand, YearPlan.Served served) {
        int[] slots = new int[served.way().size()];
        for (int index = 0; index < slots.length; index++) {
            slots[index] = state.slotStart(served.way().get(index)) + served.bins().get(index);
            state.addLoad(slots[index], served.year(), network.demand(demand).cables());
        }
        return new WishPlan.Placed(served.year(), network.linksOf(served.way()), slots);
    }

    /** Returns the plan of a value that does what is done. */
    YearPlan of(WishPlan.@Nullable Placed[] placed, double value) {
        Map<Integer, List<Integer>> built = new TreeMap<>();
        int[] numberOf = new int[state.slotStart(network.pieces())];
        for (int piece = 0; piece < network.pieces(); piece++) {
            int firstDuct = state.slotStart(piece) + network.piece(piece).bins().size();
            List<Integer> slots = IntStream.range(firstDuct, state.slotStart(piece + 1))
                    .filter(slot -> state.builtIn(slot) >= 0)
                    .boxed()
                    .sorted((a, b) -> Integer.compare(state.builtIn(a), state.builtIn(b)))
                    .toList();
            for (int duct = 0; duct < slots.size(); duct++) {
                numberOf[slots.get(duct)] = duct;
            }
            if (!slots.isEmpty()) {
                built.put(piece, slots.stream().map(state::builtIn).toList());
            }
        }
        List<Optional<YearPlan.Served>> served = new ArrayList<>();
        for (int demand = 0; demand < placed.length; demand++) {
            served.add(Optional.ofNullable(placed[demand]).map(each -> served(each, numberOf)));
        }
        List<Integer> yearOf = IntStream.range(0, network.problem().tasks().size())
                .map(state::yearOf)
                .boxed()
                .toList();
        return new YearPlan(yearOf, served, built, value, state.account().uses());
    }

    private YearPlan.Served served(WishPlan.Placed each, int[] numberOf) {
        List<Integer> way = new ArrayList<>();
        List<Integer> bins = new ArrayList<>();
        for (int slot : each.slots()) {
            int piece = state.pieceOf(slot);
            way.add(piece);
            bins.add(state.isDuct(slot)
                    ? network.piece(piece).bins().size() + numberOf[slot]
                    : slot - state.slotStart(piece));
        }
        return new YearPlan.Served(each.year(), way, bins);
    }
}
