package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Invents what is in a duct: only what really goes in, by the published sizes of the smallest bores that take it. */
final class Filler {
    private static final double MOST_LOOSE_FILL = 0.4;

    /** Innerducts of a few sizes are common, of others rare: weights in the order of {@link InnerductSize#ALL}. */
    private static final int[] SIZE_WEIGHTS = {2, 3, 3, 6, 1, 2};

    private static final double LEAST_ROOMY_IN = 2.8;

    private final Chance chance;
    private final CrowdedFiller crowded;
    private final SleeveFiller sleeves;

    Filler(Chance chance) {
        this.chance = chance;
        this.crowded = new CrowdedFiller(chance);
        this.sleeves = new SleeveFiller(chance);
    }

    /** Draws contents of a duct that suit its bank; nothing is left in it where it is not fit for use. */
    Filling fill(Bank bank) {
        Bore bore = bank.bore();
        return switch (bank.load()) {
            case ORDINARY -> fill(bore, bank.use());
            case HEAVY -> fillHeavily(bore);
            case LIGHT -> chance.happens(0.2) ? fill(bore) : single(bore, CableSize.SMALLEST);
            case THICK -> chance.happens(0.2) ? fill(bore) : single(bore, CableSize.HEAVIEST);
        };
    }

    /** One innerduct of a size that goes into every bore here. */
    private static Filling single(Bore bore, CableSize cable) {
        boolean large = bore.roomFor(InnerductSize.ONE_AND_HALF.outsideIn()) > 0 && cable.equals(CableSize.SMALLEST);
        InnerductSize size = large ? InnerductSize.ONE_AND_HALF_11 : InnerductSize.ONE_AND_QUARTER;
        return Filling.of(Filling.Kind.FULL, 1, size, 1, cable, "live");
    }

    private Filling fill(Bore bore, Bank.Use use) {
        return switch (use) {
            case CROWDED -> chance.happens(0.65) ? crowded(bore) : fill(bore);
            case SLEEVED -> chance.happens(0.6) ? sleeves.fill(bore, service()) : fill(bore);
            case PLAIN -> fill(bore);
        };
    }

    /** Draws ordinary contents. */
    Filling fill(Bore bore) {
        return switch (chance.pickWeighted(2, 5, 36, 23, 10, 9, 7, 6, 2)) {
            case 0 -> Filling.NOTHING;
            case 1 -> innerducts(bore, 0);
            case 2 -> full(bore);
            case 3 -> innerducts(bore, chance.between(0.25, 0.9));
            case 4 -> roomy(bore);
            case 5 -> loose(bore);
            case 6 -> mixed(bore);
            case 7 -> crowded(bore);
            default -> sleeves.fill(bore, service());
        };
    }

    /** Draws as many innerducts as go in, or one less, each with a cable. */
    Filling full(Bore bore) {
        return innerducts(bore, 1);
    }

    /** Draws one or two innerducts that leave most of the bore free. */
    Filling roomy(Bore bore) {
        if (bore.insideIn() < LEAST_ROOMY_IN) {
            return full(bore);
        }
        List<InnerductSize> sizes = InnerductSize.ALL.stream()
                .filter(size -> size.outsideIn() < 0.47 * bore.insideIn() && bore.roomFor(size.outsideIn()) >= 2)
                .toList();
        InnerductSize size = sizes.isEmpty() ? InnerductSize.ONE : chance.pick(sizes);
        int most = Math.max(1, Math.min(2, bore.roomFor(size.outsideIn()) - 1));
        int count = chance.from(1, most);
        int cables = chance.happens(0.85) ? count : count - 1;
        CableSize cable = CableSize.drawFor(size.insideIn(), chance);
        return Filling.of(Filling.Kind.ROOMY, count, size, cables, cable, service());
    }

    private Filling crowded(Bore bore) {
        String service = service();
        return crowded.find(bore, service).orElseGet(() -> full(bore));
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
        return Filling.of(Filling.Kind.FULL, count, size, count, cable, "live");
    }

    /** Draws an innerduct that is in the ground without a duct around it. */
    Filling buriedDirectly() {
        InnerductSize size = chance.pick(InnerductSize.ALL);
        boolean used = chance.happens(0.7);
        CableSize cable = CableSize.drawFor(size.insideIn(), chance);
        Filling.Kind kind = used ? Filling.Kind.FULL : Filling.Kind.UNUSED;
        return Filling.of(kind, 1, size, used ? 1 : 0, cable, service());
    }

    /** Draws contents of unlike items, so that only the table can describe them. */
    Filling mixed(Bore bore) {
        List<InnerductSize> set = UnlikeSet.draw(bore, chance);
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
        return Filling.listed(Filling.Kind.MIXED, rows);
    }

    private Filling innerducts(Bore bore, double usedRatio) {
        InnerductSize size = size(bore);
        int most = bore.roomFor(size.outsideIn());
        int count = most > 2 && chance.happens(0.25) ? most - 1 : most;
        int cables = (int) Math.round(count * usedRatio);
        Filling.Kind kind =
                cables == 0 ? Filling.Kind.UNUSED : cables == count ? Filling.Kind.FULL : Filling.Kind.PARTLY;
        return Filling.of(kind, count, size, cables, CableSize.drawFor(size.insideIn(), chance), service());
    }

    /** Draws a size of which at least two go in; of 1-1/4 in, one goes into every bore here. */
    private InnerductSize size(Bore bore) {
        int[] weights = new int[SIZE_WEIGHTS.length];
        int total = 0;
        for (int i = 0; i < weights.length; i++) {
            boolean fits = bore.roomFor(InnerductSize.ALL.get(i).outsideIn()) >= 2;
            weights[i] = fits ? SIZE_WEIGHTS[i] : 0;
            total += weights[i];
        }
        return total == 0 ? InnerductSize.ONE_AND_QUARTER : InnerductSize.ALL.get(chance.pickWeighted(weights));
    }

    private Filling loose(Bore bore) {
        CableSize cable = CableSize.drawFor(bore.insideIn() / 2, chance);
        int room = (int) (MOST_LOOSE_FILL * bore.areaIn2() / cable.areaIn2());
        int count = Math.max(1, Math.min(chance.from(1, 4), room));
        return new Filling(Filling.Kind.LOOSE, 0, Optional.empty(), count, Optional.of(cable), service(), List.of());
    }

    private String service() {
        return switch (chance.pickWeighted(90, 5, 5)) {
            case 0 -> "live";
            case 1 -> "dead";
            default -> "unknown";
        };
    }
}
