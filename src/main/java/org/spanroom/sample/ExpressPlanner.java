package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.sample.Street.Rank;

/** Draws the line that runs slantwise under a district's streets, with vaults of its own and none where it crosses others. */
final class ExpressPlanner {
    private static final double CLEAR_OF_VAULTS_M = 8;
    private static final double CLEAR_OF_LINES_M = 4;
    private static final double LONGEST_LEG_M = 240;
    private static final int ATTEMPTS = 40;

    private final District district;
    private final Chance chance;
    private final LegShapes shapes;

    ExpressPlanner(District district, Chance chance, LegShapes shapes) {
        this.district = district;
        this.chance = chance;
        this.shapes = shapes;
    }

    /** Finds a way that keeps clear of all vaults, and adds its own vaults to the nodes; empty if there is none. */
    Optional<Street> find(List<Node> nodes, List<Street> main, List<Street> side) {
        List<Leg> others = new ArrayList<>();
        main.forEach(street -> others.addAll(street.legs()));
        side.forEach(street -> others.addAll(street.legs()));
        for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
            Optional<Street> street = attempt(nodes, others);
            if (street.isPresent()) {
                List<Leg> legs = street.get().legs();
                nodes.add(legs.get(0).from());
                legs.forEach(leg -> nodes.add(leg.to()));
                return street;
            }
        }
        return Optional.empty();
    }

    private Optional<Street> attempt(List<Node> nodes, List<Leg> others) {
        double reachM = 12 * Math.sqrt(district.targetSpans());
        double bearingRad = Math.PI / 4 + chance.between(-0.2, 0.2);
        double aside = chance.between(-60, 60);
        double dx = reachM * StrictMath.cos(bearingRad);
        double dy = reachM * StrictMath.sin(bearingRad);
        Node a = node(nodes.size(), -dx - aside, -dy + aside);
        Node b = node(nodes.size(), dx - aside, dy + aside);
        DrawnLine rest = shapes.bow(a, b, chance.sign() * chance.between(5, 70));
        int legs = (int) Math.ceil(rest.lengthM() / LONGEST_LEG_M);
        double legM = rest.lengthM() / legs;
        List<Leg> line = new ArrayList<>();
        Node from = a;
        for (int i = 1; i <= legs; i++) {
            DrawnLine[] cut = i < legs ? rest.cutAt(legM) : new DrawnLine[] {rest, rest};
            int last = cut[0].size() - 1;
            Node to = Node.in(district, nodes.size() + i, cut[0].x(last), cut[0].y(last));
            Leg leg = new Leg(from, to, cut[0], Course.PLAIN);
            if (!isClear(leg, nodes, others)) {
                return Optional.empty();
            }
            line.add(leg);
            from = to;
            rest = cut[1];
        }
        return Optional.of(new Street(Rank.EXPRESS, line));
    }

    private boolean isClear(Leg leg, List<Node> nodes, List<Leg> others) {
        for (Node node : nodes) {
            if (leg.trace().distance(node.x(), node.y()) < CLEAR_OF_VAULTS_M) {
                return false;
            }
        }
        for (Leg other : others) {
            if (other.trace().distance(leg.to().x(), leg.to().y()) < CLEAR_OF_LINES_M
                    || other.trace().distance(leg.from().x(), leg.from().y()) < CLEAR_OF_LINES_M) {
                return false;
            }
        }
        return true;
    }

    private Node node(int number, double east, double north) {
        return Node.in(district, number, district.centerX() + east, district.centerY() + north);
    }
}
