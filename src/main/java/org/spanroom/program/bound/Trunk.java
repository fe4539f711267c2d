package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.List;

/**
 * Links one after the other between two places, with demands that end at the vaults between them.
 *
 * @param from a place
 * @param to another place, or the same one where the trunk returns
 * @param parts costs of the links, in order from {@code from} to {@code to}
 * @param ends the demands that end between them
 */
record Trunk(int from, int to, List<CountCost> parts, List<End> ends) {
    Trunk {
        parts = List.copyOf(parts);
        ends = List.copyOf(ends);
    }

    /**
     * One end of a demand inside a trunk.
     *
     * @param demand its number
     * @param position how many parts lie before it
     * @param isRoot whether its way starts there; else it ends there
     */
    record End(int demand, int position, boolean isRoot) {}

    static Trunk of(Link link) {
        return new Trunk(link.from(), link.to(), List.of(link.cost()), List.of());
    }

    int other(int place) {
        return place == from ? to : from;
    }

    /** Returns the first part that a demand passes which uses the trunk in one direction only as far as its end there. */
    int firstPart(End end, boolean forward) {
        return forward == end.isRoot() ? end.position() : 0;
    }

    /** Returns the number of the part after the last one that such a demand passes. */
    int afterLastPart(End end, boolean forward) {
        return forward == end.isRoot() ? parts.size() : end.position();
    }

    /** Returns the same trunk seen from its other side. */
    Trunk reversed() {
        var backwards = new ArrayList<CountCost>();
        for (int i = parts.size() - 1; i >= 0; i--) {
            backwards.add(parts.get(i));
        }
        List<End> turned = ends.stream()
                .map(end -> new End(end.demand(), parts.size() - end.position(), end.isRoot()))
                .toList();
        return new Trunk(to, from, backwards, turned);
    }

    /** Returns this trunk followed by one that starts where it ends, with the demands that end at the place between. */
    Trunk followedBy(Trunk next, List<End> between) {
        var allParts = new ArrayList<>(parts);
        allParts.addAll(next.parts);
        var allEnds = new ArrayList<>(ends);
        between.forEach(end -> allEnds.add(new End(end.demand(), parts.size(), end.isRoot())));
        next.ends.forEach(end -> allEnds.add(new End(end.demand(), end.position() + parts.size(), end.isRoot())));
        return new Trunk(from, next.to, allParts, allEnds);
    }
}
