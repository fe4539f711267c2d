package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;

/**
 * Draws networks like those of a city: streets on a grid with gaps, each of one to four sections, banks of one to six ducts, and
 * demands of one to three cables, half of them from a few hubs.
 */
final class DrawnNetwork {
    private final Random random;
    private final List<Piece> pieces = new ArrayList<>();
    private int places;

    private DrawnNetwork(long seed) {
        random = new Random(seed);
    }

    static DesignProblem draw(long seed, int sections, int demands, double mustRatio) {
        return new DrawnNetwork(seed).problem(sections, demands, mustRatio);
    }

    private DesignProblem problem(int sections, int demandCount, double mustRatio) {
        int side = (int) Math.max(2, Math.round(Math.sqrt(sections / 4.25)));
        places = side * side;
        for (int row = 0; row < side; row++) {
            for (int column = 0; column < side; column++) {
                int here = row * side + column;
                if (column + 1 < side) {
                    street(here, here + 1);
                }
                if (row + 1 < side) {
                    street(here, here + side);
                }
            }
        }
        var demands = new ArrayList<Demand>();
        int hubs = Math.max(2, sections / 1000);
        while (demands.size() < demandCount) {
            int from = random.nextBoolean() ? random.nextInt(hubs) * (side * side / hubs) : random.nextInt(places);
            int to = random.nextInt(places);
            if (from != to) {
                int cables = 1 + Math.min(2, (int) (random.nextDouble() * random.nextDouble() * 4));
                double prize =
                        random.nextDouble() < mustRatio ? Double.POSITIVE_INFINITY : 5000 + random.nextInt(100_000);
                demands.add(new Demand(from, to, cables, prize));
            }
        }
        return new DesignProblem(places, pieces, demands);
    }

    private void street(int from, int to) {
        if (random.nextDouble() < 0.15) {
            return;
        }
        int sections = 1 + random.nextInt(4);
        int before = from;
        for (int section = 1; section <= sections; section++) {
            int after = section == sections ? to : places++;
            pieces.add(section(before, after));
            before = after;
        }
    }

    private Piece section(int from, int to) {
        double lengthM = 40 + random.nextInt(160);
        var bins = new ArrayList<Bin>();
        int ducts = 1 + random.nextInt(6);
        for (int duct = 0; duct < ducts; duct++) {
            int now = random.nextDouble() < 0.6 ? 0 : random.nextInt(4);
            int after = Math.max(now, random.nextInt(10));
            bins.add(new Bin(now, after, after > now ? Math.round(1500 + lengthM * (8 + random.nextInt(25))) : 0));
        }
        var built = new NewDucts(9, Math.round(5000 + lengthM * 150), Math.round(lengthM * 20), 8);
        return new Piece(from, to, lengthM, bins, built);
    }
}
