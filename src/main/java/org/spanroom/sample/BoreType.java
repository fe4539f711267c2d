package org.spanroom.sample;

import java.util.List;
import java.util.Locale;

/**
 * Types of duct with the inside diameters of their sizes, in inches.
 *
 * <p>Sources: NEC Chapter 9 Table 4 for schedule 40, schedule 80, EB and rigid steel; telephone type C from the values of NEMA
 * TC 10 (outside diameter 4.350, wall 0.150); DB-60 from outside diameters and walls as a data sheet prints them for 3 and 6 in,
 * from memory for 4 and 5 in; clay from Hawkins Electrical Guide, volume 4, figure 975 ("about 3-1/2 in"); HDPE SDR 13.5 of
 * IPS outside diameter with the average wall (2, 3 and 4 in) or the minimum wall (5 and 6 in) of ASTM D3035.
 */
enum BoreType {
    SCHEDULE_40(
            "PVC",
            "schedule 40",
            "round",
            1978,
            2019,
            List.of(2.047, 3.042, 3.521, 3.998, 5.016, 6.031),
            "PVC Schedule 40",
            "pvc40",
            "2, 3, 3-1/2, 4, 5, 6"),
    SCHEDULE_80(
            "PVC",
            "schedule 80",
            "round",
            1980,
            2019,
            List.of(1.913, 2.864, 3.326, 3.786, 4.768, 5.709),
            "PVC Schedule 80",
            "pvc80",
            "2, 3, 3-1/2, 4, 5, 6"),
    ENCASED_BURIAL(
            "PVC",
            "type EB",
            "round",
            1972,
            2010,
            List.of(2.221, 3.330, 3.804, 4.289, 5.316, 6.336),
            "PVC type EB",
            "pvc-eb",
            "2, 3, 3-1/2, 4, 5, 6"),
    DIRECT_BURIAL(
            "PVC", "type DB", "round", 1975, 2012, List.of(3.316, 4.258, 5.259, 6.261), "DB-60", "db60", "3, 4, 5, 6"),
    TELEPHONE_C(
            "PVC",
            "telephone type C",
            "round",
            1966,
            1994,
            List.of(4.050),
            "telephone type C",
            "telephone type C",
            "4"),
    RIGID_STEEL(
            "steel",
            "rigid steel",
            "round",
            1932,
            1995,
            List.of(2.083, 3.090, 3.570, 4.050, 5.073, 6.093),
            "rigid steel",
            "rmc",
            "2, 3, 3-1/2, 4, 5, 6"),
    CLAY("clay", "clay tile", "square", 1908, 1946, List.of(3.5), "vitrified clay", "clay", "3-1/2"),
    HDPE(
            "HDPE",
            "SDR 13.5",
            "round",
            1994,
            2021,
            List.of(2.002, 2.951, 3.794, 4.739, 5.643),
            "HDPE SDR 13.5",
            "hdpe sdr13.5",
            "2, 3, 4");

    private final String material;
    private final String word;
    private final String shape;
    private final int firstYear;
    private final int lastYear;

    @SuppressWarnings("ImmutableEnumChecker") // made by List.of
    private final List<Double> insideIn;

    private final String catalogType;
    private final String catalogName;
    private final String tradeSizes;

    BoreType(
            String material,
            String word,
            String shape,
            int firstYear,
            int lastYear,
            List<Double> insideIn,
            String catalogType,
            String catalogName,
            String tradeSizes) {
        this.material = material;
        this.word = word;
        this.shape = shape;
        this.firstYear = firstYear;
        this.lastYear = lastYear;
        this.insideIn = insideIn;
        this.catalogType = catalogType;
        this.catalogName = catalogName;
        this.tradeSizes = tradeSizes;
    }

    /**
     * Returns the ways in which a catalog's row of this type and bore may be written, the row's own name first; none for a size
     * that the shipped catalog does not have.
     */
    List<String> catalogNames(Bore bore) {
        List<String> sizes = List.of(tradeSizes.split(", ", -1));
        int index = insideIn.indexOf(bore.insideIn());
        if (index < 0 || index >= sizes.size()) {
            return List.of();
        }
        String size = sizes.get(index);
        String shaped = this == CLAY ? catalogName + " " + bore.shape() : catalogName;
        return List.of(
                shaped + " " + size + " in",
                catalogType + ", " + size + "\"",
                size.replace('-', ' ') + " inch " + catalogType,
                (catalogType + " " + size + "in").toUpperCase(Locale.ROOT));
    }

    String material() {
        return material;
    }

    String word() {
        return word;
    }

    /** Draws a year in which such ducts were laid. */
    int year(Chance chance) {
        return chance.from(firstYear, lastYear);
    }

    /** Draws a bore of this type; most are 4 in, and clay was made round as well as square. */
    Bore bore(Chance chance) {
        if (this == CLAY) {
            return new Bore(chance.happens(0.6) ? "square" : "round", insideIn.get(0));
        }
        int[] weights = insideIn.stream()
                .mapToInt(inside -> inside > 3.7 && inside < 4.5 ? 60 : inside < 2.5 ? 9 : inside < 3.7 ? 17 : 10)
                .toArray();
        return new Bore(shape, insideIn.get(chance.pickWeighted(weights)));
    }

    /** Draws one of the two largest bores of this type. */
    Bore largeBore(Chance chance) {
        int last = insideIn.size() - 1;
        return new Bore(this == CLAY ? "square" : shape, insideIn.get(Math.max(0, last - chance.below(2))));
    }
}
