package org.spanroom.program.design;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;

/**
 * Makes the network small without losing a design: dead ends at which no demand ends are dropped, and pieces that meet where
 * nothing else does become one link.
 */
final class Contraction {
    private final DesignProblem problem;
    private final boolean[] isEnd;
    private final List<List<Integer>> linksAt = new ArrayList<>();
    private final List<Part> parts = new ArrayList<>();
    private final Deque<Integer> waiting = new ArrayDeque<>();

    /** A piece, or two parts that meet: the first is passed before the second. */
    private record Part(int from, int to, double lengthM, int piece, int first, int second) {
        private int other(int place) {
            return place == from ? to : from;
        }
    }

    private Contraction(DesignProblem problem) {
        this.problem = problem;
        isEnd = new boolean[problem.places()];
        for (int place = 0; place < problem.places(); place++) {
            linksAt.add(new ArrayList<>(4));
        }
        problem.demands().forEach(demand -> {
            isEnd[demand.from()] = true;
            isEnd[demand.to()] = true;
        });
    }

    static LinkNetwork of(DesignProblem problem) {
        var contraction = new Contraction(problem);
        contraction.addPieces();
        contraction.contract();
        return contraction.network();
    }

    private void addPieces() {
        int fewest = problem.demands().stream().mapToInt(Demand::cables).min().orElse(1);
        for (int number = 0; number < problem.pieces().size(); number++) {
            Piece piece = problem.pieces().get(number);
            if (new PieceCost(piece).mostCables() >= fewest) {
                add(new Part(piece.from(), piece.to(), piece.lengthM(), number, -1, -1));
            }
        }
    }

    private void add(Part part) {
        linksAt.get(part.from()).add(parts.size());
        linksAt.get(part.to()).add(parts.size());
        parts.add(part);
    }

    private void contract() {
        for (int place = 0; place < problem.places(); place++) {
            waiting.add(place);
        }
        while (!waiting.isEmpty()) {
            int place = waiting.remove();
            List<Integer> links = linksAt.get(place);
            if (!isEnd[place] && links.size() == 1) {
                waiting.add(remove(links.get(0), place));
            } else if (!isEnd[place] && links.size() == 2) {
                join(place, links.get(0), links.get(1));
            }
        }
    }

    /** Returns the place at its other end. */
    private int remove(int link, int place) {
        int other = parts.get(link).other(place);
        linksAt.get(place).remove((Integer) link);
        linksAt.get(other).remove((Integer) link);
        return other;
    }

    private void join(int place, int first, int second) {
        int from = remove(first, place);
        int to = remove(second, place);
        if (from == to) {
            waiting.add(from);
        } else {
            double lengthM = parts.get(first).lengthM() + parts.get(second).lengthM();
            add(new Part(from, to, lengthM, -1, first, second));
        }
    }

    private LinkNetwork network() {
        var nodeOf = new int[problem.places()];
        int nodes = 0;
        for (int place = 0; place < nodeOf.length; place++) {
            nodeOf[place] = isEnd[place] || !linksAt.get(place).isEmpty() ? nodes++ : -1;
        }
        int[] links = linksAt.stream()
                .flatMap(List::stream)
                .mapToInt(Integer::intValue)
                .sorted()
                .distinct()
                .toArray();
        List<LinkNetwork.Chain> chains = Arrays.stream(links)
                .mapToObj(parts::get)
                .map(part ->
                        new LinkNetwork.Chain(nodeOf[part.from()], nodeOf[part.to()], part.lengthM(), pieces(part)))
                .toList();
        return new LinkNetwork(nodeOf, nodes, chains);
    }

    /** Returns its pieces in the order in which they are passed from its first place. */
    private int[] pieces(Part whole) {
        var pieces = new ArrayList<Integer>();
        Deque<Part> open = new ArrayDeque<>();
        open.push(whole);
        int at = whole.from();
        while (!open.isEmpty()) {
            Part part = open.pop();
            if (part.piece() >= 0) {
                pieces.add(part.piece());
                at = part.other(at);
            } else {
                boolean isForward = part.from() == at;
                open.push(parts.get(isForward ? part.second() : part.first()));
                open.push(parts.get(isForward ? part.first() : part.second()));
            }
        }
        return pieces.stream().mapToInt(Integer::intValue).toArray();
    }
}
