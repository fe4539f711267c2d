package org.spanroom.program;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    private final Map<List<Integer>, Optional<Gap.Ends>> ends = new HashMap<>();
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
            return new Gap(true, widest(from, to), Optional.empty());
        }
        BitSet toSide = reach(to, section -> true);
        List<Integer> islands = List.of(fromSide.nextSetBit(0), toSide.nextSetBit(0));
        return new Gap(false, 0, ends.computeIfAbsent(islands, none -> nearest(fromSide, toSide)));
    }

    /** Returns whether some way takes so many cables together. */
    boolean isJoined(int from, int to, int cables) {
        return reached.computeIfAbsent(List.of(from, cables), none -> reach(from, wide(cables)))
                .get(to);
    }

    /** Returns the most cables that fit through one duct, free, recovered or new, of each section of some way. */
    private int widest(int from, int to) {
        int fits = 0;
        int most = network.sections().stream()
                .mapToInt(GapFinder::widthPositions)
                .max()
                .orElse(0);
        while (fits < most) {
            int middle = fits + (most - fits + 1) / 2;
            if (reach(from, wide(middle)).get(to)) {
                fits = middle;
            } else {
                most = middle - 1;
            }
        }
        return fits;
    }

    private static Predicate<SectionOffer> wide(int cables) {
        return section -> widthPositions(section) >= cables;
    }

    private static int widthPositions(SectionOffer section) {
        return Math.max(section.widthPositions(), section.newDuct().positions());
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

    /** Finds the nearest ends of two islands; vaults without a place are left out. */
    private Optional<Gap.Ends> nearest(BitSet fromSide, BitSet toSide) {
        List<Integer> fromPlaced = placed(fromSide);
        List<Integer> toPlaced = placed(toSide);
        if (fromPlaced.isEmpty() || toPlaced.isEmpty()) {
            return Optional.empty();
        }
        boolean swap = fromPlaced.size() < toPlaced.size();
        List<Integer> few = swap ? fromPlaced : toPlaced;
        double scale = Math.cos(Math.toRadians(network.vaults().get(few.get(0)).latDeg()));
        var tree = new STRtree();
        (swap ? toPlaced : fromPlaced).forEach(vault -> tree.insert(new Envelope(coordinate(vault, scale)), vault));
        var best = new Gap.Ends(0, 0, Double.POSITIVE_INFINITY);
        for (int vault : few) {
            Coordinate at = coordinate(vault, scale);
            int near = (Integer) tree.nearestNeighbour(
                    new Envelope(at),
                    vault,
                    (a, b) -> coordinate((Integer) a.getItem(), scale)
                            .distance(coordinate((Integer) b.getItem(), scale)));
            double gapM = coordinate(near, scale).distance(at);
            if (gapM < best.gapM()) {
                best = new Gap.Ends(swap ? vault : near, swap ? near : vault, gapM);
            }
        }
        return Optional.of(best);
    }

    private List<Integer> placed(BitSet side) {
        return side.stream()
                .filter(vault -> !Double.isNaN(network.vaults().get(vault).lonDeg()))
                .boxed()
                .toList();
    }

    /** Returns a place in meters on a plane that is true near one latitude: enough within a city. */
    private Coordinate coordinate(int vault, double scale) {
        VaultPlace place = network.vaults().get(vault);
        return new Coordinate(place.lonDeg() * scale * M_PER_DEG, place.latDeg() * M_PER_DEG);
    }
}
