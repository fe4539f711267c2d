package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.spanroom.sample.Street.Rank;

/** Draws the streets that lead from a district to those west and south of it, so that the city holds together. */
final class LinkPlanner {
    private static final int PURPOSE = 2;
    private static final double LONGEST_LEG_M = 285;
    private static final double LONG_LEG_M = 378;
    private static final double STEEP_RATIO = 0.12;

    private final CityLayout layout;
    private final District district;
    private final StreetPlan plan;
    private final Chance chance;
    private final LegShapes shapes;
    private int nextNode;

    LinkPlanner(CityLayout layout, District district, StreetPlan plan) {
        this.layout = layout;
        this.district = district;
        this.plan = plan;
        this.chance = district.chance(PURPOSE);
        this.shapes = new LegShapes(chance);
        this.nextNode = plan.nodes().size();
    }

    /** Returns one street to each neighbor that is before this district in the layout. */
    List<Street> links() {
        List<Street> links = new ArrayList<>();
        Optional<Node> west = layout.findWest(district)
                .map(other -> StreetPlanner.draw(other).gates().east());
        west.ifPresent(gate -> links.add(link(gate, plan.gates().west())));
        Optional<Node> south = layout.findSouth(district)
                .map(other -> StreetPlanner.draw(other).gates().north());
        south.ifPresent(gate -> links.add(link(gate, plan.gates().south())));
        return links;
    }

    private Street link(Node from, Node to) {
        DrawnLine rest = shapes.bow(from, to, chance.sign() * chance.between(3, 40));
        double wholeM = rest.lengthM();
        int count = (int) Math.ceil(wholeM / LONGEST_LEG_M);
        // Here and there the vaults were put where the ground allowed, farther apart than 1200 ft.
        boolean uneven = count == 2 && wholeM > LONG_LEG_M + 60 && chance.happens(0.35);
        double legM = uneven ? LONG_LEG_M : wholeM / count;
        List<Leg> legs = new ArrayList<>();
        Node start = from;
        for (int i = 1; i < count; i++) {
            DrawnLine[] cut = rest.cutAt(legM);
            double share = 1 - cut[1].lengthM() / wholeM;
            double groundM = from.groundM() + share * (to.groundM() - from.groundM());
            Node end = new Node(district.number(), nextNode++, cut[1].x(0), cut[1].y(0), groundM, true);
            legs.add(leg(start, end, cut[0]));
            start = end;
            rest = cut[1];
        }
        legs.add(leg(start, to, rest));
        return new Street(Rank.LINK, legs);
    }

    /** Some stretches of a link go round obstacles: the longest spans are where bends matter most. */
    private Leg leg(Node start, Node end, DrawnLine drawn) {
        if (Math.abs(end.groundM() - start.groundM()) > STEEP_RATIO * drawn.lengthM()) {
            return new Leg(start, end, drawn, Course.STEEP);
        }
        if (chance.happens(0.3)) {
            Optional<Leg> crooked = shapes.findCrooked(start, end);
            if (crooked.isPresent()) {
                return crooked.get();
            }
        }
        return new Leg(start, end, drawn, drawn.lengthM() > LONGEST_LEG_M ? Course.LONG : Course.PLAIN);
    }
}
