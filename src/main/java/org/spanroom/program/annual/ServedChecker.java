package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.Piece;

/** Verifies from scratch what a plan says about connections: ways join up, bins hold what lies in them in each year, new ducts may be built. */
final class ServedChecker {
    private final YearProblem problem;
    private final Connections connections;
    private final YearPlan plan;
    private final List<String> problems = new ArrayList<>();
    private final Map<Integer, Map<Integer, List<Integer>>> demandsIn = new TreeMap<>();

    ServedChecker(YearProblem problem, Connections connections, YearPlan plan) {
        this.problem = problem;
        this.connections = connections;
        this.plan = plan;
    }

    List<String> problems() {
        List<Demand> demands = connections.network().demands();
        if (plan.served().size() != demands.size()) {
            return List.of(plan.served().size() + " of " + demands.size() + " demands");
        }
        plan.built().forEach(this::checkBuilt);
        if (!problems.isEmpty()) {
            return problems;
        }
        for (int demand = 0; demand < demands.size(); demand++) {
            Wish wish = connections.wishes().get(demand);
            if (plan.served().get(demand).isPresent()) {
                checkServed(demand, wish, plan.served().get(demand).get());
            } else if (wish.isMust()) {
                problems.add("demand " + demand + " is a must and not served");
            }
        }
        if (problems.isEmpty()) {
            demandsIn.forEach((piece, byBin) -> byBin.forEach((bin, there) -> checkBin(piece, bin, there)));
        }
        return problems;
    }

    private void checkBuilt(int number, List<Integer> years) {
        if (number < 0 || number >= connections.network().pieces().size()) {
            problems.add("new ducts of piece " + number + ", which is none");
            return;
        }
        int most = connections.network().pieces().get(number).more().most();
        if (years.size() > most) {
            problems.add("piece " + number + ": " + years.size() + " ducts built of at most " + most);
        }
        int before = connections.firstBuildYear().get(number);
        for (int year : years) {
            if (year < before || year >= problem.years()) {
                problems.add("piece " + number + ": a duct built in year " + year + ", not from " + before + " on");
            }
            before = Math.max(before, year);
        }
    }

    private void checkServed(int number, Wish wish, YearPlan.Served served) {
        String who = "demand " + number;
        if (served.year() < 0 || served.year() >= problem.years()) {
            problems.add(who + " is served in year " + served.year());
        } else if (wish.isMust() && served.year() > wish.lastYear()) {
            problems.add(who + " is a must and served in year " + served.year() + ", after " + wish.lastYear());
        }
        if (served.bins().size() != served.way().size()) {
            problems.add(who + " has " + served.bins().size() + " bins on "
                    + served.way().size() + " pieces");
            return;
        }
        if (!joins(number, served.way())) {
            return;
        }
        int cables = connections.network().demands().get(number).cables();
        int firstYear = 0;
        for (int step = 0; step < served.way().size(); step++) {
            int piece = served.way().get(step);
            int bin = served.bins().get(step);
            demandsIn
                    .computeIfAbsent(piece, none -> new TreeMap<>())
                    .computeIfAbsent(bin, none -> new ArrayList<>())
                    .add(number);
            int year = 0;
            while (year < problem.years() && positions(piece, bin, year) < cables) {
                year++;
            }
            firstYear = Math.max(firstYear, year);
        }
        if (firstYear > served.year()) {
            problems.add(who + " is served in year " + served.year() + ", its way is there from " + firstYear);
        }
    }

    private boolean joins(int number, List<Integer> way) {
        Demand demand = connections.network().demands().get(number);
        int place = demand.from();
        Set<Integer> passed = new HashSet<>();
        for (int index : way) {
            if (index < 0 || index >= connections.network().pieces().size()) {
                problems.add("demand " + number + " passes piece " + index + ", which is none");
                return false;
            }
            Piece piece = connections.network().pieces().get(index);
            if (piece.from() != place && piece.to() != place) {
                problems.add("demand " + number + " jumps from place " + place + " to piece " + index);
                return false;
            }
            if (!passed.add(index)) {
                problems.add("demand " + number + " passes piece " + index + " twice");
                return false;
            }
            place = piece.other(place);
        }
        if (place != demand.to()) {
            problems.add("demand " + number + " ends at place " + place + ", not " + demand.to());
            return false;
        }
        return true;
    }

    private void checkBin(int piece, int bin, List<Integer> demands) {
        for (int year = 0; year < problem.years(); year++) {
            int cables = 0;
            for (int demand : demands) {
                boolean isServed = plan.served().get(demand).orElseThrow().year() <= year;
                cables += isServed ? connections.network().demands().get(demand).cables() : 0;
            }
            int positions = positions(piece, bin, year);
            if (cables > positions) {
                problems.add("piece " + piece + ", bin " + bin + ", year " + year + ": " + cables + " cables in "
                        + positions + " positions");
            }
        }
    }

    /** Returns the positions of a bin at the end of a year; 0 where there is no such bin. */
    private int positions(int number, int bin, int year) {
        Piece piece = connections.network().pieces().get(number);
        int bins = piece.bins().size();
        if (bin < 0) {
            return 0;
        }
        if (bin >= bins) {
            List<Integer> years = plan.built().getOrDefault(number, List.of());
            return bin - bins < years.size() && years.get(bin - bins) <= year
                    ? piece.more().positions()
                    : 0;
        }
        int task = connections.taskOfBin().get(number).get(bin);
        boolean isRecovered = task >= 0
                && plan.yearOf().get(task) != YearPlan.NEVER
                && plan.yearOf().get(task) <= year;
        return isRecovered ? piece.bins().get(bin).after() : piece.bins().get(bin).now();
    }
}
