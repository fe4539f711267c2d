package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;

/**
 * Verifies a design from scratch: ways join up, every bin holds what lies in it, and costs are those of what is done. Shares
 * nothing with the search.
 */
public final class DesignChecker {
    private static final double ROUNDING = 1e-9;

    private final DesignProblem problem;
    private final Design design;
    private final List<String> problems = new ArrayList<>();
    private final Map<Integer, List<Integer>> passing = new TreeMap<>();

    private DesignChecker(DesignProblem problem, Design design) {
        this.problem = problem;
        this.design = design;
    }

    /** Returns what is wrong, a line each; empty where nothing is. */
    public static List<String> problems(DesignProblem problem, Design design) {
        var checker = new DesignChecker(problem, design);
        checker.check();
        return checker.problems;
    }

    private void check() {
        if (design.ways().size() != problem.demands().size()) {
            problems.add(design.ways().size() + " ways of " + problem.demands().size() + " demands");
            return;
        }
        for (int demand = 0; demand < design.ways().size(); demand++) {
            follow(demand, problem.demands().get(demand), design.ways().get(demand));
        }
        if (!passing.keySet().equals(design.uses().keySet())) {
            problems.add("ways pass pieces " + passing.keySet() + ", uses are of "
                    + design.uses().keySet());
            return;
        }
        passing.forEach((piece, demands) -> checkUse(
                piece,
                problem.pieces().get(piece),
                demands,
                Objects.requireNonNull(design.uses().get(piece))));
        checkMoney();
    }

    private void follow(int number, Demand demand, List<Integer> way) {
        int place = demand.from();
        for (int index : way) {
            Piece piece = problem.pieces().get(index);
            if (piece.from() != place && piece.to() != place) {
                problems.add("demand " + number + " jumps from place " + place + " to piece " + index);
                return;
            }
            place = piece.other(place);
            List<Integer> others = passing.computeIfAbsent(index, none -> new ArrayList<>());
            if (others.contains(number)) {
                problems.add("demand " + number + " passes piece " + index + " twice");
            }
            others.add(number);
        }
        if (!way.isEmpty() && place != demand.to()) {
            problems.add("demand " + number + " ends at place " + place + ", not " + demand.to());
        }
    }

    private void checkUse(int number, Piece piece, List<Integer> demands, Design.Use use) {
        String where = "piece " + number + ": ";
        if (!use.binOf().keySet().equals(Set.copyOf(demands))) {
            problems.add(where + "demands " + demands + " pass, placed are "
                    + use.binOf().keySet());
            return;
        }
        Map<Integer, Integer> load = new HashMap<>();
        use.binOf()
                .forEach((demand, bin) ->
                        load.merge(bin, problem.demands().get(demand).cables(), Integer::sum));
        load.forEach((bin, cables) -> {
            int room = room(piece, bin, use);
            if (cables > room) {
                problems.add(where + cables + " cables in bin " + bin + ", which takes " + room);
            }
        });
        if (use.built() < 0 || use.built() > piece.more().most()) {
            problems.add(where + use.built() + " ducts built of at most "
                    + piece.more().most());
        }
        if (use.recovered().stream().distinct().count() != use.recovered().size()) {
            problems.add(where + "recovers a bin twice: " + use.recovered());
        }
        double money = use.recovered().stream()
                        .mapToDouble(bin -> piece.bins().get(bin).money())
                        .sum()
                + piece.more().money(use.built());
        compare(where + "money", use.money(), money);
    }

    private static int room(Piece piece, int bin, Design.Use use) {
        int bins = piece.bins().size();
        if (bin < 0 || bin >= bins + use.built()) {
            return 0;
        }
        if (bin >= bins) {
            return piece.more().positions();
        }
        Bin each = piece.bins().get(bin);
        return use.recovered().contains(bin) ? each.after() : each.now();
    }

    private void checkMoney() {
        double work =
                design.uses().values().stream().mapToDouble(Design.Use::money).sum();
        compare("work", design.workMoney(), work);
        double unserved = 0;
        for (int demand = 0; demand < design.ways().size(); demand++) {
            unserved += design.ways().get(demand).isEmpty()
                    ? problem.demands().get(demand).prize()
                    : 0;
        }
        compare("prizes", design.unservedMoney(), unserved);
    }

    private void compare(String what, double stated, double found) {
        if (stated != found && !(Math.abs(stated - found) <= ROUNDING * Math.max(1, Math.abs(found)))) {
            problems.add(what + " " + stated + ", recalculated " + found);
        }
    }
}
