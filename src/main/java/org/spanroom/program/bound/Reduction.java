package org.spanroom.program.bound;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.Piece;

/**
 * Makes a network smaller without changing its least cost.
 *
 * <p>Drops pieces that no demand fits into, dead ends and parts in which no demand ends, and demands that are worth nothing; joins
 * pieces one after the other where no demand ends between them, and pieces side by side. Each is exact, because a way passes a
 * place at most once, and because the cost of a part depends only on the counts that pass it.
 */
final class Reduction {
    private final boolean[] terminal;
    private final List<@Nullable Link> links = new ArrayList<>();
    private final List<TreeSet<Integer>> linksOf = new ArrayList<>();
    private final ArrayDeque<Integer> changed = new ArrayDeque<>();

    private Reduction(int places) {
        terminal = new boolean[places];
        for (int place = 0; place < places; place++) {
            linksOf.add(new TreeSet<>());
        }
    }

    /** Reduces a problem. The places keep their numbers. */
    static ReducedNetwork of(DesignProblem problem) {
        List<Demand> demands =
                problem.demands().stream().filter(demand -> demand.prize() > 0).toList();
        int[] sizes =
                demands.stream().mapToInt(Demand::cables).sorted().distinct().toArray();
        var reduction = new Reduction(problem.places());
        for (Demand demand : demands) {
            reduction.terminal[demand.from()] = true;
            reduction.terminal[demand.to()] = true;
        }
        for (Piece piece : problem.pieces()) {
            if (sizes.length > 0 && takes(piece, sizes[0])) {
                reduction.add(new Link(piece.from(), piece.to(), new BinCost(piece)));
            }
        }
        reduction.run();
        return new ReducedNetwork(problem.places(), reduction.reached(), demands, sizes);
    }

    private static boolean takes(Piece piece, int cables) {
        return piece.bins().stream().anyMatch(bin -> bin.after() >= cables)
                || (piece.more().most() > 0 && piece.more().positions() >= cables);
    }

    private void run() {
        for (int place = 0; place < terminal.length; place++) {
            changed.add(place);
        }
        while (!changed.isEmpty()) {
            int place = changed.remove();
            if (!terminal[place] && linksOf.get(place).size() <= 2) {
                remove(place);
            }
        }
    }

    private void remove(int place) {
        List<Link> ending = linksOf.get(place).stream().map(links::get).toList();
        for (int link : List.copyOf(linksOf.get(place))) {
            drop(link);
        }
        if (ending.size() == 2) {
            int from = ending.get(0).other(place);
            int to = ending.get(1).other(place);
            if (from != to) {
                add(new Link(from, to, chain(ending.get(0).cost(), ending.get(1).cost())));
            }
        }
    }

    /** Keeps long chains flat. */
    private static ChainCost chain(CountCost one, CountCost other) {
        var parts = new ArrayList<CountCost>();
        for (CountCost cost : List.of(one, other)) {
            if (cost instanceof ChainCost chain) {
                parts.addAll(chain.parts());
            } else {
                parts.add(cost);
            }
        }
        return new ChainCost(parts);
    }

    private void add(Link link) {
        Link whole = link;
        for (int beside : List.copyOf(linksOf.get(link.from()))) {
            Link other = links.get(beside);
            if (other != null && other.other(link.from()) == link.to()) {
                whole = new Link(link.from(), link.to(), new ParallelCost(other.cost(), whole.cost()));
                drop(beside);
            }
        }
        linksOf.get(whole.from()).add(links.size());
        linksOf.get(whole.to()).add(links.size());
        links.add(whole);
    }

    private void drop(int number) {
        Link link = links.get(number);
        if (link != null) {
            links.set(number, null);
            for (int place : List.of(link.from(), link.to())) {
                linksOf.get(place).remove(number);
                changed.add(place);
            }
        }
    }

    /** Returns the links of the parts in which a demand ends. */
    private List<Link> reached() {
        boolean[] seen = terminal.clone();
        var open = new ArrayDeque<Integer>();
        for (int place = 0; place < terminal.length; place++) {
            if (terminal[place]) {
                open.add(place);
            }
        }
        while (!open.isEmpty()) {
            int place = open.remove();
            for (int number : linksOf.get(place)) {
                Link link = links.get(number);
                if (link != null && !seen[link.other(place)]) {
                    seen[link.other(place)] = true;
                    open.add(link.other(place));
                }
            }
        }
        var reached = new ArrayList<Link>();
        for (Link link : links) {
            if (link != null && seen[link.from()]) {
                reached.add(link);
            }
        }
        return reached;
    }
}
