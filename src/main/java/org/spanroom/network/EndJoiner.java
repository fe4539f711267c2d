package org.spanroom.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntConsumer;
import org.spanroom.model.network.NetworkSettings;

/**
 * Joins pieces of one duct that end at one place where no vault is.
 *
 * <p>Ends of one duct that are within the join tolerance of one another, directly or over others between them, are one
 * group. Exactly two make a joint; first those that coincide to a millimeter, then the rest within tolerance. More than two
 * are left apart and reported. Routes whose duct is not recorded are treated as pieces of one duct only by that same rule
 * among themselves. Ducts of one bank may be exactly upon each other: only ends of the same duct are ever compared.
 *
 * <p>Ends of one duct at the very same place are looked at once, by the first of them: a hundred thousand lines may begin at the origin
 * of a system if no better place is known.
 */
final class EndJoiner {
    private static final double SAME_POINT_M = 1e-3;
    private static final double LEAST_CELL_M = 10;
    private static final int UNNAMED = 0;

    private final List<OpenEnd> ends;
    private final NetworkSettings settings;
    private final GroundStep step = new GroundStep();
    private final PlaceGrid grid;
    private final int[] duct;
    private final int[] partner;
    private final int[] groupOf;
    private final boolean[] crowded;
    /** The next end of the same duct at the very same place, or -1; and whether an end is the first of those. */
    private final int[] nextThere;

    private final boolean[] firstThere;

    /** Takes the ends that are at no vault. */
    EndJoiner(List<OpenEnd> ends, NetworkSettings settings) {
        this.ends = ends;
        this.settings = settings;
        double radiusM = Math.max(settings.joinToleranceM(), settings.gapWarningM());
        grid = new PlaceGrid(Math.max(LEAST_CELL_M, 2 * radiusM), ends.size());
        duct = ductNumbers(ends);
        partner = new int[ends.size()];
        groupOf = new int[ends.size()];
        crowded = new boolean[ends.size()];
        nextThere = new int[ends.size()];
        firstThere = new boolean[ends.size()];
        Arrays.fill(partner, -1);
        Arrays.fill(nextThere, -1);
        place();
    }

    private void place() {
        int[] lastThere = new int[ends.size()];
        for (int end = 0; end < ends.size(); end++) {
            int first = firstAt(end);
            if (first < 0) {
                firstThere[end] = true;
                lastThere[end] = end;
                grid.add(end, ends.get(end).lonDeg(), ends.get(end).latDeg(), duct[end]);
            } else {
                nextThere[lastThere[first]] = end;
                lastThere[first] = end;
            }
        }
    }

    /** Returns the end met before that is at the very same place and is of the same duct; -1 if there is none. */
    private int firstAt(int end) {
        int[] found = {-1};
        visitNear(end, 0, other -> {
            if (ends.get(other).lonDeg() == ends.get(end).lonDeg()
                    && ends.get(other).latDeg() == ends.get(end).latDeg()) {
                found[0] = other;
            }
        });
        return found[0];
    }

    private static int[] ductNumbers(List<OpenEnd> ends) {
        Map<String, Integer> numbers = new HashMap<>();
        int[] duct = new int[ends.size()];
        for (int end = 0; end < duct.length; end++) {
            String name = ends.get(end).duct();
            duct[end] = name.isEmpty() ? UNNAMED : numbers.computeIfAbsent(name, any -> numbers.size() + 1);
        }
        return duct;
    }

    /** Joins all; returns the groups of more than two. */
    List<List<OpenEnd>> join() {
        groups(SAME_POINT_M).values().forEach(this::joinPair);
        List<List<OpenEnd>> ambiguous = new ArrayList<>();
        for (List<Integer> group :
                groups(Math.max(SAME_POINT_M, settings.joinToleranceM())).values()) {
            joinPair(group);
            if (group.size() > 2) {
                group.forEach(end -> crowded[end] = true);
                ambiguous.add(group.stream().map(ends::get).toList());
            }
        }
        return ambiguous;
    }

    private void joinPair(List<Integer> group) {
        if (group.size() == 2 && !isStub(ends.get(group.get(0)), ends.get(group.get(1)))) {
            partner[group.get(0)] = group.get(1);
            partner[group.get(1)] = group.get(0);
        }
    }

    /** Both ends of one line that is no longer than the tolerance are not a ring. */
    private boolean isStub(OpenEnd one, OpenEnd other) {
        return one.route() == other.route() && one.routeLengthM() <= 2 * settings.joinToleranceM();
    }

    /** Returns the end that an end was joined to, or -1. */
    int partner(int end) {
        return partner[end];
    }

    /** Returns the gap between an end and its partner. */
    double gapM(int end) {
        return distanceM(end, partner[end]);
    }

    /** Returns pairs of ends of one duct, still apart, that miss each other by little: each end with its nearest. */
    List<int[]> nearMisses() {
        SortedMap<Long, int[]> pairs = new TreeMap<>();
        for (int end = 0; end < ends.size(); end++) {
            int nearest = partner[end] >= 0 || crowded[end] ? -1 : nearestApart(end);
            if (nearest >= 0) {
                int first = Math.min(end, nearest);
                int second = Math.max(end, nearest);
                pairs.put((long) first << 32 | second, new int[] {first, second});
            }
        }
        return List.copyOf(pairs.values());
    }

    double distanceM(int a, int b) {
        OpenEnd first = ends.get(a);
        OpenEnd second = ends.get(b);
        return step.measure(first.lonDeg(), first.latDeg(), second.lonDeg(), second.latDeg());
    }

    private int nearestApart(int end) {
        int[] nearest = {-1};
        double[] leastM = {settings.gapWarningM()};
        visitNear(end, settings.gapWarningM(), first -> {
            double meters = distanceM(end, first);
            int other = ofAnotherRoute(first, ends.get(end).route());
            boolean apart = other >= 0 && partner[other] < 0;
            boolean nearer = meters < leastM[0] || (meters == leastM[0] && (nearest[0] < 0 || other < nearest[0]));
            if (apart && nearer && meters > settings.joinToleranceM()) {
                leastM[0] = meters;
                nearest[0] = other;
            }
        });
        return nearest[0];
    }

    /** Returns the first end at a place that is of another route; -1 if there is none. A route has two ends, so few are looked at. */
    private int ofAnotherRoute(int first, int route) {
        int end = first;
        while (end >= 0 && ends.get(end).route() == route) {
            end = nextThere[end];
        }
        return end;
    }

    /**
     * Returns the groups of ends not yet joined, two or more each, by their first end. Ends at the very same place are always in one
     * group, and so all joined or none.
     */
    private SortedMap<Integer, List<Integer>> groups(double withinM) {
        for (int end = 0; end < groupOf.length; end++) {
            groupOf[end] = end;
        }
        for (int end = 0; end < groupOf.length; end++) {
            if (partner[end] < 0 && firstThere[end]) {
                int one = end;
                for (int there = nextThere[end]; there >= 0; there = nextThere[there]) {
                    unite(one, there);
                }
                visitNear(one, withinM, other -> unite(one, other, withinM));
            }
        }
        SortedMap<Integer, List<Integer>> groups = new TreeMap<>();
        for (int end = 0; end < groupOf.length; end++) {
            if (first(end) != end) {
                int head = first(end);
                groups.computeIfAbsent(head, any -> new ArrayList<>(List.of(head)))
                        .add(end);
            }
        }
        return groups;
    }

    private void unite(int one, int other, double withinM) {
        if (other > one && partner[other] < 0 && first(one) != first(other) && distanceM(one, other) <= withinM) {
            unite(one, other);
        }
    }

    private void unite(int one, int other) {
        int low = Math.min(first(one), first(other));
        int high = Math.max(first(one), first(other));
        groupOf[high] = low;
    }

    private int first(int end) {
        int head = end;
        while (groupOf[head] != head) {
            groupOf[head] = groupOf[groupOf[head]];
            head = groupOf[head];
        }
        return head;
    }

    private void visitNear(int end, double radiusM, IntConsumer visitor) {
        OpenEnd place = ends.get(end);
        grid.visitAround(place.lonDeg(), place.latDeg(), radiusM, duct[end], other -> {
            if (other != end && duct[other] == duct[end]) {
                visitor.accept(other);
            }
        });
    }
}
