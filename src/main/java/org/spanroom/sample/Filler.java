package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Invents what lies in a duct: only what really goes in, by the published sizes of the smallest bores that take it. */
final class Filler {
    private static final double MOST_LOOSE_FILL = 0.4;

    private final Chance chance;

    Filler(Chance chance) {
        this.chance = chance;
    }

    /**
     * A set of innerducts of unlike sizes.
     *
     * @param neededIn diameter of the smallest round bore that takes it; sums for two, else recomputed by a solver and
     *     checked against Descartes' circle theorem where that applies
     */
    private record UnlikeSet(double neededIn, List<InnerductSize> innerducts) {}

    private static final List<UnlikeSet> UNLIKE_SETS = List.of(
            new UnlikeSet(2.975, List.of(InnerductSize.ONE_AND_QUARTER, InnerductSize.ONE)),
            new UnlikeSet(3.215, List.of(InnerductSize.ONE_AND_HALF_11, InnerductSize.ONE_11)),
            new UnlikeSet(
                    3.584059,
                    List.of(
                            InnerductSize.ONE_AND_QUARTER,
                            InnerductSize.ONE_AND_QUARTER,
                            InnerductSize.ONE,
                            InnerductSize.ONE)),
            new UnlikeSet(
                    3.813385,
                    List.of(
                            InnerductSize.ONE_AND_QUARTER_11,
                            InnerductSize.ONE_AND_QUARTER_11,
                            InnerductSize.ONE_AND_QUARTER_11,
                            InnerductSize.ONE_11)),
            new UnlikeSet(
                    3.861953,
                    List.of(
                            InnerductSize.ONE_AND_HALF,
                            InnerductSize.ONE_AND_HALF,
                            InnerductSize.ONE,
                            InnerductSize.ONE)),
            new UnlikeSet(
                    3.936778,
                    List.of(InnerductSize.ONE_AND_HALF, InnerductSize.ONE_AND_HALF, InnerductSize.ONE_AND_QUARTER)));

    /** Draws contents that suit a load. */
    Filling fill(Bore bore, Bank.Load load) {
        return switch (load) {
            case ORDINARY -> fill(bore);
            case HEAVY -> fillHeavily(bore);
            case LIGHT -> chance.happens(0.2) ? fill(bore) : single(bore, CableSize.SMALLEST);
            case THICK -> chance.happens(0.2) ? fill(bore) : single(bore, CableSize.HEAVIEST);
        };
    }

    /** One innerduct of a size that goes into every bore here. */
    private static Filling single(Bore bore, CableSize cable) {
        boolean large = bore.roomFor(InnerductSize.ONE_AND_HALF.outsideIn()) > 0 && cable.equals(CableSize.SMALLEST);
        InnerductSize size = large ? InnerductSize.ONE_AND_HALF_11 : InnerductSize.ONE_AND_QUARTER;
        return new Filling(1, Optional.of(size), 1, Optional.of(cable), "live", List.of());
    }

    /** Draws ordinary contents. */
    Filling fill(Bore bore) {
        return switch (chance.pickWeighted(14, 6, 34, 30, 9, 7)) {
            case 0 -> Filling.NOTHING;
            case 1 -> innerducts(bore, 0);
            case 2 -> innerducts(bore, 1);
            case 3 -> innerducts(bore, chance.between(0.25, 0.9));
            case 4 -> loose(bore);
            default -> mixed(bore);
        };
    }

    /** Draws as many innerducts as go in, each with the heaviest cable that it takes. */
    private Filling fillHeavily(Bore bore) {
        InnerductSize size = bore.roomFor(InnerductSize.ONE_AND_HALF.outsideIn()) >= 2
                ? InnerductSize.ONE_AND_HALF
                : InnerductSize.ONE_AND_QUARTER;
        int count = bore.roomFor(size.outsideIn());
        CableSize cable = CableSize.HEAVIEST;
        if (count == 0) {
            return loose(bore);
        }
        return new Filling(count, Optional.of(size), count, Optional.of(cable), "live", List.of());
    }

    /** Draws an innerduct that lies in the ground without a duct around it. */
    Filling buriedDirectly() {
        InnerductSize size = chance.pick(InnerductSize.ALL);
        boolean used = chance.happens(0.7);
        Optional<CableSize> cable = used ? Optional.of(CableSize.drawFor(size.insideIn(), chance)) : Optional.empty();
        return new Filling(1, Optional.of(size), used ? 1 : 0, cable, used ? service() : "", List.of());
    }

    /** Draws contents of unlike items, so that only the table can describe them. */
    Filling mixed(Bore bore) {
        List<InnerductSize> set = unlikeSet(bore);
        List<ListedItem> rows = new ArrayList<>();
        int cables = 0;
        for (int i = 0; i < set.size(); i++) {
            String item = "I" + (i + 1);
            rows.add(ListedItem.innerduct(item, set.get(i), chance.happens(0.3)));
            double insideIn = set.get(i).insideIn();
            if (chance.happens(0.1) && insideIn > 1) {
                // Two thin cables in one innerduct: 0.8 in beside each other leave play in every size here.
                rows.add(ListedItem.cable("C" + ++cables, item, CableSize.SMALLEST, service()));
                rows.add(ListedItem.cable("C" + ++cables, item, CableSize.SMALLEST, service()));
            } else if (chance.happens(0.7)) {
                rows.add(ListedItem.cable("C" + ++cables, item, CableSize.drawFor(insideIn, chance), service()));
            }
        }
        if (set.isEmpty()) {
            for (int i = 0; i < 2; i++) {
                rows.add(ListedItem.cable(
                        "C" + ++cables, "", CableSize.drawFor(bore.insideIn() / 2, chance), service()));
            }
        }
        return summarised(set, cables, rows);
    }

    private static Filling summarised(List<InnerductSize> set, int cables, List<ListedItem> rows) {
        Optional<InnerductSize> first = set.stream().findFirst();
        Optional<ListedItem> cable =
                rows.stream().filter(row -> row.kind().equals("cable")).findFirst();
        return new Filling(
                set.size(),
                first,
                cables,
                cable.map(row -> new CableSize(row.outsideIn(), row.massLbKft().orElseThrow())),
                cable.map(ListedItem::service).orElse(""),
                rows);
    }

    private List<InnerductSize> unlikeSet(Bore bore) {
        if (bore.isSquare()) {
            // Four of the larger size go in, so these do.
            boolean four = bore.roomFor(InnerductSize.ONE_AND_QUARTER.outsideIn()) == 4;
            return four ? UNLIKE_SETS.get(2).innerducts() : List.of();
        }
        List<UnlikeSet> fitting =
                UNLIKE_SETS.stream().filter(set -> bore.takes(set.neededIn())).toList();
        return fitting.isEmpty() ? List.of() : chance.pick(fitting).innerducts();
    }

    private Filling innerducts(Bore bore, double usedRatio) {
        List<InnerductSize> sizes = InnerductSize.ALL.stream()
                .filter(size -> bore.roomFor(size.outsideIn()) >= 2)
                .toList();
        InnerductSize size = sizes.isEmpty() ? InnerductSize.ONE_AND_QUARTER : chance.pick(sizes);
        int most = bore.roomFor(size.outsideIn());
        int count = most > 2 && chance.happens(0.25) ? most - 1 : most;
        int cables = (int) Math.round(count * usedRatio);
        if (cables == 0) {
            return new Filling(count, Optional.of(size), 0, Optional.empty(), "", List.of());
        }
        CableSize cable = CableSize.drawFor(size.insideIn(), chance);
        return new Filling(count, Optional.of(size), cables, Optional.of(cable), service(), List.of());
    }

    private Filling loose(Bore bore) {
        CableSize cable = CableSize.drawFor(bore.insideIn() / 2, chance);
        int room = (int) (MOST_LOOSE_FILL * bore.areaIn2() / cable.areaIn2());
        int count = Math.max(1, Math.min(chance.from(1, 4), room));
        return new Filling(0, Optional.empty(), count, Optional.of(cable), service(), List.of());
    }

    private String service() {
        return switch (chance.pickWeighted(90, 5, 5)) {
            case 0 -> "live";
            case 1 -> "dead";
            default -> "unknown";
        };
    }
}
