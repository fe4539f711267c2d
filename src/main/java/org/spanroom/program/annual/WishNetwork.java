package org.spanroom.program.annual;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.Piece;

/**
 * What the search of a plan asks about the network of its connections: links, each a chain of pieces that a way passes all or none of, and which
 * bins each task recovers. Immutable.
 */
final class WishNetwork {
    private final YearProblem problem;
    private final Connections connections;
    private final int[][] taskOf;
    private final int[][] piecesOfTask;
    private final int[][] binsOfTask;
    private final int[][] pieceAt;
    private final boolean[] isNode;
    private final int[] linkOf;
    private final List<Link> links = new ArrayList<>();
    private final int[][] linksAt;

    /**
     * Pieces one after the other.
     *
     * @param from its first place
     * @param to its last place
     * @param pieces from the first place to the last
     */
    @SuppressWarnings("ArrayRecordComponent") // Inside the search only; never changed or compared.
    record Link(int from, int to, int[] pieces, double lengthM) {
        int other(int place) {
            return place == from ? to : from;
        }
    }

    /** Creates from a problem with connections. */
    WishNetwork(YearProblem problem) {
        this.problem = problem;
        connections = problem.connections().orElseThrow();
        List<Piece> pieces = connections.network().pieces();
        taskOf = connections.taskOfBin().stream()
                .map(tasks -> tasks.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
        piecesOfTask = new int[problem.tasks().size()][];
        binsOfTask = new int[problem.tasks().size()][];
        indexTasks();
        int places = connections.network().places();
        pieceAt = lists(places, pieces.size(), piece -> List.of(
                pieces.get(piece).from(), pieces.get(piece).to()));
        isNode = new boolean[places];
        for (int place = 0; place < places; place++) {
            isNode[place] = pieceAt[place].length != 2;
        }
        for (Demand demand : connections.network().demands()) {
            isNode[demand.from()] = true;
            isNode[demand.to()] = true;
        }
        linkOf = new int[pieces.size()];
        Arrays.fill(linkOf, -1);
        contract();
        linksAt = lists(places, links.size(), link -> List.of(links.get(link).from(), links.get(link).to()));
    }

    private interface Ends {
        List<Integer> of(int number);
    }

    private static int[][] lists(int places, int count, Ends ends) {
        List<List<Integer>> at = new ArrayList<>();
        for (int place = 0; place < places; place++) {
            at.add(new ArrayList<>());
        }
        for (int number = 0; number < count; number++) {
            for (int place : ends.of(number)) {
                at.get(place).add(number);
            }
        }
        return at.stream()
                .map(list -> list.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
    }

    private void indexTasks() {
        Arrays.fill(piecesOfTask, new int[0]);
        Arrays.fill(binsOfTask, new int[0]);
        for (int piece = 0; piece < taskOf.length; piece++) {
            for (int bin = 0; bin < taskOf[piece].length; bin++) {
                int task = taskOf[piece][bin];
                if (task >= 0) {
                    piecesOfTask[task] = with(piecesOfTask[task], piece);
                    binsOfTask[task] = with(binsOfTask[task], bin);
                }
            }
        }
    }

    private static int[] with(int[] list, int last) {
        int[] longer = Arrays.copyOf(list, list.length + 1);
        longer[list.length] = last;
        return longer;
    }

    private void contract() {
        for (int place = 0; place < isNode.length; place++) {
            for (int piece : isNode[place] ? pieceAt[place] : new int[0]) {
                if (linkOf[piece] < 0) {
                    follow(place, piece);
                }
            }
        }
    }

    /** Chains that lead back to where they start are no link: no way needs them. */
    private void follow(int first, int firstPiece) {
        var chain = new ArrayList<Integer>();
        int place = first;
        int next = firstPiece;
        double lengthM = 0;
        while (true) {
            Piece piece = connections.network().pieces().get(next);
            chain.add(next);
            linkOf[next] = links.size();
            lengthM += piece.lengthM();
            place = piece.other(place);
            if (isNode[place]) {
                break;
            }
            next = pieceAt[place][0] == next ? pieceAt[place][1] : pieceAt[place][0];
        }
        links.add(new Link(
                first, place, chain.stream().mapToInt(Integer::intValue).toArray(), lengthM));
    }

    YearProblem problem() {
        return problem;
    }

    Connections connections() {
        return connections;
    }

    Piece piece(int piece) {
        return connections.network().pieces().get(piece);
    }

    int pieces() {
        return taskOf.length;
    }

    Demand demand(int demand) {
        return connections.network().demands().get(demand);
    }

    Wish wish(int demand) {
        return connections.wishes().get(demand);
    }

    int demands() {
        return connections.wishes().size();
    }

    /** Returns the task of a bin, or -1. */
    int taskOf(int piece, int bin) {
        return taskOf[piece][bin];
    }

    /** Returns the pieces of the bins that a task recovers, one for each bin; not to be changed. */
    int[] piecesOfTask(int task) {
        return piecesOfTask[task];
    }

    /** Returns the bins that a task recovers, in the order of {@link #piecesOfTask}; not to be changed. */
    int[] binsOfTask(int task) {
        return binsOfTask[task];
    }

    int links() {
        return links.size();
    }

    Link link(int link) {
        return links.get(link);
    }

    /** Returns the links that start or end at a place; not to be changed. */
    int[] linksAt(int place) {
        return linksAt[place];
    }

    /** Returns the link of a piece. */
    int linkOf(int piece) {
        return linkOf[piece];
    }

    /** Returns the links of a way of pieces. */
    int[] linksOf(List<Integer> way) {
        int[] passed = new int[0];
        for (int piece : way) {
            if (passed.length == 0 || passed[passed.length - 1] != linkOf[piece]) {
                passed = with(passed, linkOf[piece]);
            }
        }
        return passed;
    }

    int places() {
        return linksAt.length;
    }

    /** Returns the pieces of a way of links that starts at a place, in the order in which they are passed. */
    int[] piecesOf(int[] way, int first) {
        int[] passed = new int[0];
        int place = first;
        for (int number : way) {
            Link link = links.get(number);
            int length = link.pieces().length;
            int[] longer = Arrays.copyOf(passed, passed.length + length);
            for (int index = 0; index < length; index++) {
                longer[passed.length + index] = link.pieces()[place == link.from() ? index : length - 1 - index];
            }
            passed = longer;
            place = link.other(place);
        }
        return passed;
    }
}
