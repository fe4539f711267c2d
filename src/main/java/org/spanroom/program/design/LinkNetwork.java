package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The network that a search looks at: links between places, each a chain of pieces that a way passes all or none of. Exact: no
 * way that a design could need is lost. Immutable.
 */
final class LinkNetwork {
    private final int[] nodeOf;
    private final int[] from;
    private final int[] to;
    private final double[] lengthM;
    private final int[][] pieces;
    private final int[] start;
    private final int[] linkAt;
    private final int nodes;

    /**
     * Creates.
     *
     * @param nodeOf of each place its node, -1 where none is left
     * @param links for each the pieces, in order from its first to its second node
     */
    LinkNetwork(int[] nodeOf, int nodes, List<Chain> links) {
        this.nodeOf = nodeOf.clone();
        this.nodes = nodes;
        from = links.stream().mapToInt(Chain::from).toArray();
        to = links.stream().mapToInt(Chain::to).toArray();
        lengthM = links.stream().mapToDouble(Chain::lengthM).toArray();
        pieces = links.stream().map(chain -> chain.pieces().clone()).toArray(int[][]::new);
        start = new int[nodes + 1];
        linkAt = new int[2 * links.size()];
        index();
    }

    /**
     * Pieces one after the other.
     *
     * @param from its first node
     * @param to its last node
     */
    @SuppressWarnings(
            "ArrayRecordComponent") // Inside the search only, where objects would cost too much; never changed or
    // compared.
    record Chain(int from, int to, double lengthM, int[] pieces) {}

    private void index() {
        for (int link = 0; link < from.length; link++) {
            start[from[link] + 1]++;
            start[to[link] + 1]++;
        }
        for (int node = 0; node < nodes; node++) {
            start[node + 1] += start[node];
        }
        int[] next = Arrays.copyOf(start, nodes);
        for (int link = 0; link < from.length; link++) {
            linkAt[next[from[link]]++] = link;
            linkAt[next[to[link]]++] = link;
        }
    }

    int nodes() {
        return nodes;
    }

    int links() {
        return from.length;
    }

    /** Returns the node of a place, -1 where the place was dropped: no demand starts or ends there. */
    int node(int place) {
        return nodeOf[place];
    }

    int other(int link, int node) {
        return from[link] == node ? to[link] : from[link];
    }

    double lengthM(int link) {
        return lengthM[link];
    }

    /** Returns the pieces from the link's first node to its second; not to be changed. */
    int[] pieces(int link) {
        return pieces[link];
    }

    int from(int link) {
        return from[link];
    }

    /** Returns where the links of a node start in {@link #linkAt}; they end where those of the next node start. */
    int start(int node) {
        return start[node];
    }

    int linkAt(int index) {
        return linkAt[index];
    }

    /** Returns the pieces of a way of links that starts at a node, in the order in which they are passed. */
    List<Integer> piecesOf(int[] way, int first) {
        var passed = new ArrayList<Integer>();
        int node = first;
        for (int link : way) {
            int[] chain = pieces[link];
            for (int index = 0; index < chain.length; index++) {
                passed.add(node == from[link] ? chain[index] : chain[chain.length - 1 - index]);
            }
            node = other(link, node);
        }
        return passed;
    }
}
