package org.spanroom.program.bound;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * Joins links to trunks at vaults of two links at which few demands end.
 *
 * <p>A bound that prices each trunk by itself is higher than one that prices each link: it sees that what leaves one link must enter the next one.
 * It tries all sides by which the demands that end inside can leave, so their number is limited.
 */
final class Absorption {
    private static final int ENDS_OF_VAULT = 2;

    private final List<@Nullable Trunk> trunks = new ArrayList<>();
    private final List<TreeSet<Integer>> trunksOf = new ArrayList<>();
    private final List<List<Trunk.End>> endsAt = new ArrayList<>();
    private final int endsOfTrunk;

    private Absorption(int places, int endsOfTrunk) {
        this.endsOfTrunk = endsOfTrunk;
        for (int place = 0; place < places; place++) {
            trunksOf.add(new TreeSet<>());
            endsAt.add(new ArrayList<>());
        }
    }

    /**
     * Makes trunks of links.
     *
     * @param endsOfTrunk most ends of demands inside a trunk; 0 for a trunk of each link
     */
    static List<Trunk> of(ReducedNetwork network, List<RootedDemand> demands, int endsOfTrunk) {
        var absorption = new Absorption(network.places(), endsOfTrunk);
        for (int d = 0; d < demands.size(); d++) {
            absorption.endsAt.get(demands.get(d).root()).add(new Trunk.End(d, 0, true));
            absorption.endsAt.get(demands.get(d).target()).add(new Trunk.End(d, 0, false));
        }
        network.links().forEach(link -> absorption.add(Trunk.of(link)));
        for (int most = 1; most <= ENDS_OF_VAULT; most++) {
            for (int place = 0; place < network.places(); place++) {
                absorption.tryJoinAt(place, most);
            }
        }
        return absorption.trunks.stream().filter(Objects::nonNull).toList();
    }

    private void tryJoinAt(int place, int most) {
        List<Trunk> sides = trunksOf.get(place).stream().map(trunks::get).toList();
        int here = endsAt.get(place).size();
        if (here == 0 || here > most || sides.size() != 2) {
            return;
        }
        Trunk before = sides.get(0);
        Trunk after = sides.get(1);
        if (before.from() == before.to() || after.from() == after.to()) {
            return;
        }
        Trunk joined = (before.to() == place ? before : before.reversed())
                .followedBy(after.from() == place ? after : after.reversed(), endsAt.get(place));
        long demands = joined.ends().stream().map(Trunk.End::demand).distinct().count();
        if (joined.ends().size() <= endsOfTrunk && demands == joined.ends().size()) {
            for (int side : List.copyOf(trunksOf.get(place))) {
                drop(side);
            }
            add(joined);
        }
    }

    private void add(Trunk trunk) {
        trunksOf.get(trunk.from()).add(trunks.size());
        trunksOf.get(trunk.to()).add(trunks.size());
        trunks.add(trunk);
    }

    private void drop(int number) {
        Trunk trunk = trunks.get(number);
        if (trunk != null) {
            trunksOf.get(trunk.from()).remove(number);
            trunksOf.get(trunk.to()).remove(number);
            trunks.set(number, null);
        }
    }
}
