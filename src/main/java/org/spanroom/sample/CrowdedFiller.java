package org.spanroom.sample;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Invents ducts in which loose cables are beside as many innerducts as go in, each in a gap that really takes it. */
final class CrowdedFiller {
    /**
     * Gaps between 2, 3 and 4 equal circles in the smallest round bore that takes them, by the number of circles: widths in
     * their diameters, by Descartes' circle theorem; the four also have one between them, of the same width.
     */
    private static final double[] GAP_RATIOS = {0, 0, 0.666667, 0.482673, 0.414214};

    private static final int[] GAPS = {0, 0, 2, 3, 5};

    /** What was ever pulled in had a little play. */
    private static final double PLAY = 1.01;

    private static final int MOST_LOOSE = 4;

    /** So often the cables are as thick as can be: then the fill of the bore limits what recovery gains. */
    private static final double THICK_RATIO = 0.6;

    private final Chance chance;

    CrowdedFiller(Chance chance) {
        this.chance = chance;
    }

    /** Draws contents; empty where the bore takes no two innerducts with a cable beside them. */
    Optional<Filling> find(Bore bore, String service) {
        List<InnerductSize> sizes = InnerductSize.ALL.stream()
                .filter(size -> gaps(bore, size) > 0 && gapIn(bore, size) >= CableSize.SMALLEST.outsideIn() * PLAY)
                .toList();
        int most = sizes.stream()
                .mapToInt(size -> bore.roomFor(size.outsideIn()))
                .max()
                .orElse(0);
        List<InnerductSize> fullest = sizes.stream()
                .filter(size -> bore.roomFor(size.outsideIn()) == most)
                .toList();
        if (fullest.isEmpty()) {
            return Optional.empty();
        }
        InnerductSize size = chance.pick(chance.happens(0.5) ? fullest : sizes);
        return Optional.of(fill(bore, size, service));
    }

    private Filling fill(Bore bore, InnerductSize size, String service) {
        List<ListedItem> rows = new ArrayList<>();
        int count = bore.roomFor(size.outsideIn());
        CableSize inside = chance.happens(THICK_RATIO)
                ? CableSize.thickestFor(size.insideIn())
                : CableSize.drawFor(size.insideIn(), chance);
        int cables = 0;
        for (int i = 1; i <= count; i++) {
            rows.add(ListedItem.innerduct("I" + i, size, false));
            if (i == 1 || chance.happens(0.9)) {
                rows.add(ListedItem.cable("C" + ++cables, "I" + i, inside, service));
            }
        }
        double gapIn = gapIn(bore, size) / PLAY;
        List<CableSize> fitting = CableSize.ALL.stream()
                .filter(cable -> cable.outsideIn() <= gapIn)
                .toList();
        CableSize loose = chance.happens(THICK_RATIO) ? fitting.get(fitting.size() - 1) : chance.pick(fitting);
        // What was laid before the innerducts is often out of service.
        String looseService = chance.happens(0.15) ? "dead" : service;
        for (int left = chance.from(1, Math.min(MOST_LOOSE, gaps(bore, size))); left > 0; left--) {
            rows.add(ListedItem.cable("C" + ++cables, "", loose, looseService));
        }
        return Filling.listed(Filling.Kind.CROWDED, rows);
    }

    /** Returns how many gaps there are; a square bore is known to have one, between four. */
    private static int gaps(Bore bore, InnerductSize size) {
        int count = bore.roomFor(size.outsideIn());
        return bore.isSquare() ? (count == Bore.MOST_INNERDUCTS ? 1 : 0) : GAPS[count];
    }

    private static double gapIn(Bore bore, InnerductSize size) {
        return GAP_RATIOS[bore.roomFor(size.outsideIn())] * size.outsideIn();
    }
}
