package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import org.spanroom.sample.Street.Rank;

/**
 * Draws the streets of one district: a lattice of rows and columns, bent by the district's {@link Warp}, with vaults at
 * crossings and in the middle of long blocks.
 */
final class StreetPlanner {
    private static final int PURPOSE = 1;

    /** Ducts in an average bank, by which spans are estimated from legs. */
    private static final double DUCTS_PER_BANK = 4.8;

    /** Vaults in the middle of blocks give this many legs for each block's side. */
    private static final double LEGS_PER_SIDE = 1.1;

    private static final double SPARE_RATIO = 1.15;
    private static final int SPOKES = 12;
    private static final double LONGEST_TO_REPLACE_M = 125;

    private final District district;
    private final Chance chance;
    private final Warp warp;
    private final LegShapes shapes;
    private final List<Node> nodes = new ArrayList<>();
    private final List<Street> main = new ArrayList<>();
    private final List<Street> side = new ArrayList<>();

    private StreetPlanner(District district) {
        this.district = district;
        this.chance = district.chance(PURPOSE);
        this.warp = Warp.of(district.kind(), chance);
        this.shapes = new LegShapes(chance);
    }

    /** Returns the district's own streets, without links to others. */
    static StreetPlan draw(District district) {
        return new StreetPlanner(district).draw();
    }

    private StreetPlan draw() {
        double sides = district.targetSpans() * SPARE_RATIO / (DUCTS_PER_BANK * LEGS_PER_SIDE);
        return district.kind() == DistrictKind.RINGS ? rings(sides) : lattice(sides);
    }

    private StreetPlan lattice(double sides) {
        int blocks = Math.max(2, (int) Math.ceil((Math.sqrt(1 + 2 * sides) - 1) / 2));
        boolean oblong = district.kind() == DistrictKind.HARBOR && blocks > 4;
        double[] us = centered(steps(oblong ? blocks + 3 : blocks));
        double[] vs = centered(steps(oblong ? blocks - 2 : blocks));
        Node[][] grid = grid(us, vs);
        for (int j = 0; j < vs.length; j++) {
            List<Leg> legs = new ArrayList<>();
            for (int i = 1; i < us.length; i++) {
                legs.addAll(between(grid[i - 1][j], grid[i][j], sampled(us[i - 1], vs[j], us[i], vs[j])));
            }
            add(j == vs.length / 2, legs);
        }
        for (int i = 0; i < us.length; i++) {
            List<Leg> legs = new ArrayList<>();
            for (int j = 1; j < vs.length; j++) {
                legs.addAll(between(grid[i][j - 1], grid[i][j], sampled(us[i], vs[j - 1], us[i], vs[j])));
            }
            add(i == us.length / 2, legs);
        }
        int middleColumn = us.length / 2;
        int middleRow = vs.length / 2;
        var gates = new StreetPlan.Gates(
                grid[0][middleRow],
                grid[us.length - 1][middleRow],
                grid[middleColumn][0],
                grid[middleColumn][vs.length - 1]);
        addLoop(grid[1][1], grid[2][2]);
        return finished(gates);
    }

    private StreetPlan rings(double sides) {
        int rings = Math.max(2, (int) Math.ceil(sides / (2 * SPOKES)));
        double[] radii = new double[rings];
        for (int ring = 0; ring < rings; ring++) {
            radii[ring] = ring == 0 ? chance.between(115, 135) : radii[ring - 1] + chance.between(80, 110);
        }
        double[] bearings = new double[SPOKES + 1];
        for (int spoke = 0; spoke < SPOKES; spoke++) {
            // Every third spoke points to a neighboring district and is not shifted.
            double shift = spoke % 3 == 0 ? 0 : chance.between(-0.12, 0.12);
            bearings[spoke] = 2 * Math.PI * spoke / SPOKES + shift;
        }
        bearings[SPOKES] = 2 * Math.PI;
        Node[][] grid = grid(java.util.Arrays.copyOf(bearings, SPOKES), radii);
        Node middle = addNode(0, 0);
        for (int ring = 0; ring < rings; ring++) {
            List<Leg> legs = new ArrayList<>();
            for (int spoke = 0; spoke < SPOKES; spoke++) {
                DrawnLine way = sampled(bearings[spoke], radii[ring], bearings[spoke + 1], radii[ring]);
                legs.addAll(between(grid[spoke][ring], grid[(spoke + 1) % SPOKES][ring], way));
            }
            add(ring == rings - 1, legs);
        }
        for (int spoke = 0; spoke < SPOKES; spoke++) {
            List<Leg> legs = new ArrayList<>(between(middle, grid[spoke][0], shapes.straight(middle, grid[spoke][0])));
            for (int ring = 1; ring < rings; ring++) {
                Node from = grid[spoke][ring - 1];
                legs.addAll(between(from, grid[spoke][ring], shapes.straight(from, grid[spoke][ring])));
            }
            add(spoke % 6 == 0, legs);
        }
        addLoop(grid[1][0], grid[2][1]);
        int outer = rings - 1;
        return finished(new StreetPlan.Gates(grid[6][outer], grid[0][outer], grid[9][outer], grid[3][outer]));
    }

    private StreetPlan finished(StreetPlan.Gates gates) {
        List<Street> streets = new ArrayList<>(main);
        // In two streets, so that no bank runs through both.
        replaceOne(streets.subList(streets.size() - 2, streets.size() - 1), shapes::findTight);
        replaceOne(streets.subList(streets.size() - 1, streets.size()), shapes::findWinding);
        if (district.kind() == DistrictKind.OLD_QUARTER) {
            new ExpressPlanner(district, chance, shapes).find(nodes, main, side).ifPresent(streets::add);
        }
        chance.shuffle(side);
        // Loops come before the other side streets, so that every district has its own.
        side.stream().filter(street -> street.rank() == Rank.LOOP).forEach(streets::add);
        side.stream().filter(street -> street.rank() == Rank.SIDE).forEach(streets::add);
        return new StreetPlan(nodes, streets, gates);
    }

    /** Every district has a leg of each hard course, in the streets that get their ducts first. */
    private static void replaceOne(List<Street> streets, BiFunction<Node, Node, Optional<Leg>> course) {
        for (int i = 0; i < streets.size(); i++) {
            List<Leg> legs = new ArrayList<>(streets.get(i).legs());
            for (int at = 0; at < legs.size(); at++) {
                Leg leg = legs.get(at);
                boolean fits = leg.course() == Course.PLAIN && leg.lengthM() < LONGEST_TO_REPLACE_M;
                Optional<Leg> hard = fits ? course.apply(leg.from(), leg.to()) : Optional.empty();
                if (hard.isPresent()) {
                    legs.set(at, hard.get());
                    streets.set(i, new Street(streets.get(i).rank(), legs));
                    return;
                }
            }
        }
    }

    private Node[][] grid(double[] us, double[] vs) {
        Node[][] grid = new Node[us.length][vs.length];
        for (int i = 0; i < us.length; i++) {
            for (int j = 0; j < vs.length; j++) {
                grid[i][j] = addNode(warp.east(us[i], vs[j]), warp.north(us[i], vs[j]));
            }
        }
        return grid;
    }

    private Node addNode(double east, double north) {
        Node node = Node.in(district, nodes.size(), district.centerX() + east, district.centerY() + north);
        nodes.add(node);
        return node;
    }

    private void add(boolean isMain, List<Leg> legs) {
        (isMain ? main : side).add(new Street(isMain ? Rank.MAIN : Rank.SIDE, legs));
    }

    private void addLoop(Node corner, Node opposite) {
        double headingRad = StrictMath.atan2(opposite.y() - corner.y(), opposite.x() - corner.x());
        DrawnLine loop = shapes.loop(corner, headingRad, chance.between(16, 24));
        side.add(new Street(Rank.LOOP, List.of(new Leg(corner, corner, loop, Course.PLAIN))));
    }

    /** Returns the leg between two crossings, or two legs where a vault is in the middle of the block. */
    private List<Leg> between(Node a, Node b, DrawnLine bent) {
        Leg leg = shaped(a, b, bent);
        double lengthM = leg.lengthM();
        boolean split = lengthM > 290 || (lengthM > 240 ? chance.happens(0.8) : lengthM > 150 && chance.happens(0.3));
        if (!split || leg.course().hasCorners()) {
            return List.of(leg);
        }
        DrawnLine[] halves = leg.trace().cutAt(lengthM * chance.between(0.42, 0.58));
        Node middle = addNode(halves[1].x(0) - district.centerX(), halves[1].y(0) - district.centerY());
        return List.of(new Leg(a, middle, halves[0], Course.PLAIN), new Leg(middle, b, halves[1], Course.PLAIN));
    }

    private Leg shaped(Node a, Node b, DrawnLine bent) {
        if (chance.happens(0.055)) {
            Optional<Leg> crooked = shapes.findCrooked(a, b);
            if (crooked.isPresent()) {
                return crooked.get();
            }
        }
        boolean isStraight = bent.size() == 2;
        if (isStraight && chance.happens(0.12)) {
            return new Leg(a, b, shapes.sBend(a, b), Course.PLAIN);
        }
        if (isStraight && chance.happens(0.1)) {
            return new Leg(a, b, shapes.bow(a, b, chance.sign() * chance.between(0.5, 9)), Course.PLAIN);
        }
        return new Leg(a, b, isStraight ? shapes.straight(a, b) : bent, Course.PLAIN);
    }

    /** Returns the bent way between two places of the lattice, as chords; its two ends only where it is straight. */
    private DrawnLine sampled(double u0, double v0, double u1, double v1) {
        boolean curved = v0 == v1 ? warp.hasCurvedRows() : warp.hasCurvedColumns();
        double dx = warp.east(u1, v1) - warp.east(u0, v0);
        double dy = warp.north(u1, v1) - warp.north(u0, v0);
        int chords = curved ? Math.max(3, (int) Math.ceil(Math.sqrt(dx * dx + dy * dy) / chance.between(8, 18))) : 1;
        double[] xy = new double[2 * chords + 2];
        for (int i = 0; i <= chords; i++) {
            double u = u0 + (u1 - u0) * i / chords;
            double v = v0 + (v1 - v0) * i / chords;
            xy[2 * i] = district.centerX() + warp.east(u, v);
            xy[2 * i + 1] = district.centerY() + warp.north(u, v);
        }
        return DrawnLine.of(xy);
    }

    private double[] steps(int blocks) {
        double[] steps = new double[blocks];
        for (int i = 0; i < blocks; i++) {
            steps[i] = chance.happens(0.25) ? chance.between(60, 95) : chance.between(95, 175);
        }
        return steps;
    }

    private static double[] centered(double[] steps) {
        double[] places = new double[steps.length + 1];
        for (int i = 0; i < steps.length; i++) {
            places[i + 1] = places[i] + steps[i];
        }
        double middle = places[steps.length] / 2;
        for (int i = 0; i < places.length; i++) {
            places[i] -= middle;
        }
        return places;
    }
}
