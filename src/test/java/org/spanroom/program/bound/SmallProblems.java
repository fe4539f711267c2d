package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;

/** Draws networks so small that every design can be tried, with all that is odd: pieces side by side, of no cost, without room, dead ends. */
final class SmallProblems {
    private SmallProblems() {}

    static DesignProblem draw(long seed) {
        var random = new Random(seed);
        int places = 2 + random.nextInt(5);
        var pieces = new ArrayList<Piece>();
        int count = 1 + random.nextInt(places + 3);
        for (int i = 0; i < count; i++) {
            int from = random.nextInt(places);
            int to = random.nextInt(places);
            if (from != to) {
                pieces.add(piece(random, from, to));
            }
        }
        var demands = new ArrayList<Demand>();
        int demandCount = 1 + random.nextInt(4);
        int hub = random.nextInt(places);
        for (int d = 0; d < demandCount; d++) {
            int from = random.nextInt(3) == 0 ? random.nextInt(places) : hub;
            int to = random.nextInt(places);
            if (from != to) {
                boolean turned = random.nextBoolean();
                demands.add(new Demand(turned ? to : from, turned ? from : to, 1 + random.nextInt(3), prize(random)));
            }
        }
        return new DesignProblem(places, pieces, demands);
    }

    private static double prize(Random random) {
        return switch (random.nextInt(5)) {
            case 0 -> random.nextInt(10);
            case 1 -> random.nextDouble() * 100;
            default -> Double.POSITIVE_INFINITY;
        };
    }

    private static Piece piece(Random random, int from, int to) {
        List<Bin> bins = new ArrayList<>();
        int ducts = random.nextInt(4);
        for (int duct = 0; duct < ducts; duct++) {
            int now = Math.max(0, random.nextInt(7) - 3);
            int after = now + random.nextInt(4);
            bins.add(new Bin(now, after, after == now || random.nextInt(6) == 0 ? 0 : money(random)));
        }
        NewDucts more = random.nextInt(3) == 0
                ? NewDucts.NONE
                : new NewDucts(1 + random.nextInt(4), money(random), random.nextInt(20), random.nextInt(3));
        return new Piece(from, to, 1, bins, more);
    }

    /** Whole amounts meet, broken ones do not. */
    private static double money(Random random) {
        return random.nextBoolean() ? random.nextInt(40) : random.nextDouble() * 40;
    }
}
