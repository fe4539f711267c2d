package org.spanroom.program;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.Gap;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.VaultPlace;

/** Finds why no way joins two vaults: where the gap in the network is, or how many cables fit through at most. */
public final class GapFinder {
    /** Mean radius of the earth times one degree (IUGG mean radius 6 371 008.8 m, from memory); enough for a distance shown in meters. */
    private static final double M_PER_DEG = 111_195.08;

    private final DuctNetwork network;
    private final Map<List<Integer>, BitSet> reached = new HashMap<>();
    private final List<List<Integer>> sectionsAt = new ArrayList<>();

    public GapFinder(DuctNetwork network) {
        this.network = network;
        network.vaults().forEach(vault -> sectionsAt.add(new ArrayList<>()));
        for (int number = 0; number < network.sections().size(); number++) {
            sectionsAt.get(network.sections().get(number).from()).add(number);
            sectionsAt.get(network.sections().get(number).to()).add(number);
        }
    }

    /** Finds what separates two vaults that no way joins. */
    public Gap find(int from, int to) {
        BitSet fromSide = reach(from, section -> true);
        if (fromSide.get(to)) {
            return new Gap(widest(from, to), from, to, 0);
        }
        return nearest(fromSide, reach(to, section -> true));
    }

    /** Returns whether some way takes so many cables together. */
    boolean isJoined(int from, int to, int cables) {
        return reached.computeIfAbsent(List.of(from, cables), none -> reach(from, wide(cables)))
                .get(to);
    }

    /** Returns the most cables that fit through one duct, free, recovered or new, of each section of some way. */
    private int widest(int from, int to) {
        int cables = 0;
        while (reach(from, wide(cables + 1)).get(to)) {
            cables++;
        }
        return cables;
    }

    private static Predicate<SectionOffer> wide(int cables) {
        return section -> Math.max(section.widthPositions(), section.newDuct().positions()) >= cables;
    }

    private BitSet reach(int start, Predicate<SectionOffer> passes) {
        var reached = new BitSet();
        var open = new ArrayDeque<Integer>();
        reached.set(start);
        open.add(start);
        while (!open.isEmpty()) {
            int vault = open.remove();
            for (int number : sectionsAt.get(vault)) {
                SectionOffer section = network.sections().get(number);
                int other = section.other(vault);
                if (!reached.get(other) && passes.test(section)) {
                    reached.set(other);
                    open.add(other);
                }
            }
        }
        return reached;
    }

    private Gap nearest(BitSet fromSide, BitSet toSide) {
        boolean swap = fromSide.cardinality() < toSide.cardinality();
        BitSet many = swap ? toSide : fromSide;
        BitSet few = swap ? fromSide : toSide;
        var tree = new STRtree();
        many.stream().forEach(vault -> tree.insert(new Envelope(coordinate(vault)), vault));
        var best = new Gap(0, fromSide.nextSetBit(0), toSide.nextSetBit(0), Double.POSITIVE_INFINITY);
        for (int vault = few.nextSetBit(0); vault >= 0; vault = few.nextSetBit(vault + 1)) {
            Coordinate at = coordinate(vault);
            int near = (Integer) tree.nearestNeighbour(
                    new Envelope(at),
                    vault,
                    (a, b) -> coordinate((Integer) a.getItem()).distance(coordinate((Integer) b.getItem())));
            double gapM = coordinate(near).distance(at);
            if (gapM < best.gapM()) {
                best = new Gap(0, swap ? vault : near, swap ? near : vault, gapM);
            }
        }
        return best;
    }

    /** Returns a place in meters on a plane that is true near the first vault: enough within a city. */
    private Coordinate coordinate(int vault) {
        VaultPlace place = network.vaults().get(vault);
        double scale = Math.cos(Math.toRadians(network.vaults().get(0).latDeg()));
        return new Coordinate(place.lonDeg() * scale * M_PER_DEG, place.latDeg() * M_PER_DEG);
    }
}
