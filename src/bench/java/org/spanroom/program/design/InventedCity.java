package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * An invented city as a design problem: streets as a grid with gaps, cut into spans at vaults; banks of 1 to 6 ducts with 0 to 3
 * positions free now and up to 9 after recovery; new ducts on the same path at a cost by length. Costs and values are invented.
 */
public final class InventedCity {
    private static final int SPANS_OF_STREET = 4;
    private static final double STREETS_KEPT = 0.75;
    private static final int MOST_DUCTS = 6;
    private static final int MOST_NOW = 3;
    private static final int MOST_AFTER = 9;
    private static final double FULL_DUCTS = 0.5;
    private static final int MOST_NEW = 8;
    private static final double MUSTS = 0.3;
    private static final double FROM_HUB = 0.4;

    private final SplittableRandom random;
    private final List<Piece> pieces = new ArrayList<>();
    private int places;

    private InventedCity(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Returns a city of about so many spans and exactly so many connections. */
    public static DesignProblem drawn(int spans, int connections, long seed) {
        return new InventedCity(seed).city(spans, connections);
    }

    private DesignProblem city(int spans, int connections) {
        int side = (int) Math.max(2, Math.round(Math.sqrt(spans / (2 * STREETS_KEPT * SPANS_OF_STREET))));
        places = side * side;
        List<int[]> streets = streets(side);
        int drawn = 0;
        for (int[] street : streets) {
            int left = spans - drawn;
            int count = Math.min(left, 1 + random.nextInt(2 * SPANS_OF_STREET - 1));
            street(street[0], street[1], Math.max(1, count));
            drawn += Math.max(1, count);
        }
        int[] hubs = random.ints(Math.max(2, connections / 30), 0, places).toArray();
        List<Demand> demands =
                IntStream.range(0, connections).mapToObj(each -> demand(hubs)).toList();
        return new DesignProblem(places, pieces, demands);
    }

    /** Streets of a grid: first those of a tree that reaches every corner, then some of the others. */
    private List<int[]> streets(int side) {
        List<int[]> all = new ArrayList<>();
        for (int corner = 0; corner < side * side; corner++) {
            if (corner % side + 1 < side) {
                all.add(new int[] {corner, corner + 1});
            }
            if (corner + side < side * side) {
                all.add(new int[] {corner, corner + side});
            }
        }
        for (int last = all.size() - 1; last > 0; last--) {
            Collections.swap(all, last, random.nextInt(last + 1));
        }
        var next = new int[side * side];
        Arrays.setAll(next, corner -> corner);
        List<int[]> kept = new ArrayList<>();
        for (int[] street : all) {
            boolean joins = root(next, street[0]) != root(next, street[1]);
            next[root(next, street[0])] = root(next, street[1]);
            if (joins || random.nextDouble() < 2 * STREETS_KEPT - 1) {
                kept.add(street);
            }
        }
        return kept;
    }

    private static int root(int[] next, int corner) {
        int at = corner;
        while (next[at] != at) {
            at = next[at];
        }
        return at;
    }

    private void street(int from, int to, int spans) {
        int at = from;
        for (int span = 0; span < spans; span++) {
            int end = span == spans - 1 ? to : places++;
            pieces.add(piece(at, end));
            at = end;
        }
    }

    private Piece piece(int from, int to) {
        double lengthM = random.nextInt(40, 160);
        List<Bin> bins = IntStream.rangeClosed(1, 1 + random.nextInt(MOST_DUCTS))
                .mapToObj(duct -> bin(lengthM))
                .toList();
        var more = new NewDucts(6, 2_000 + lengthM * random.nextInt(90, 200), lengthM * 25, MOST_NEW);
        return new Piece(from, to, lengthM, bins, more);
    }

    private Bin bin(double lengthM) {
        int now = random.nextDouble() < FULL_DUCTS ? 0 : 1 + random.nextInt(MOST_NOW);
        int after = Math.max(now, random.nextInt(MOST_AFTER + 1));
        double money = after == now ? 0 : 600 + Math.round(lengthM * random.nextInt(5, 20));
        return new Bin(now, after, money);
    }

    private Demand demand(int[] hubs) {
        int from = random.nextDouble() < FROM_HUB ? hubs[random.nextInt(hubs.length)] : random.nextInt(places);
        int to = (from + 1 + random.nextInt(places - 1)) % places;
        double prize = random.nextDouble() < MUSTS ? Double.POSITIVE_INFINITY : 1_000.0 * random.nextInt(2, 150);
        return new Demand(from, to, 1 + random.nextInt(3), prize);
    }
}
