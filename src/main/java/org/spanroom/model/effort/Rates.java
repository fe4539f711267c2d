package org.spanroom.model.effort;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;

/**
 * The rates as used in a calculation: their values, or one draw of them.
 *
 * <p>A drawing takes each rate from its range with the median at its value, the same for all spans. Each key has a stream of
 * its own, made from the seed, the key's name and the number of the sample, so that a rate more changes no other draw; the
 * rows of one key, for other kinds of vaults and zones, are drawn at the same share of their ranges.
 */
public final class Rates {
    private static final RateKey[] KEYS = RateKey.values();
    private static final long FNV_OFFSET = 0xcbf29ce484222325L;
    private static final long FNV_PRIME = 0x100000001b3L;
    private static final int STRATA = 64;

    private final List<Row> rows;
    private final double[] inUnit;

    private record Row(String vaultKind, String zoneKind, RateKey key, Rate rate) {}

    private Rates(List<Row> rows, double[] inUnit) {
        this.rows = rows;
        this.inUnit = inUnit;
    }

    /** Returns the rates at their values. */
    public static Rates of(RateSettings settings) {
        var rows = new ArrayList<Row>();
        for (RateKey key : KEYS) {
            rows.add(new Row("", "", key, settings.rate(key)));
        }
        settings.byZoneKind().forEach(row -> rows.add(new Row("", row.kind(), row.rate(), row.there())));
        settings.byVaultKind().forEach(row -> rows.add(new Row(row.kind(), "", row.rate(), row.there())));
        return new Rates(
                List.copyOf(rows),
                rows.stream().mapToDouble(row -> row.rate().value()).toArray());
    }

    /** Returns one drawing of these rates; the same for the same seed and sample. */
    public Rates sampled(long seed, int sample) {
        double[] drawnInUnit = new double[inUnit.length];
        for (int i = 0; i < drawnInUnit.length; i++) {
            Row row = rows.get(i);
            drawnInUnit[i] = row.rate().quantileInUnit(shareRatio(row.key(), seed, sample));
        }
        return new Rates(rows, drawnInUnit);
    }

    /**
     * Returns which rows apply at a vault of a kind, or, where the kind is empty, along a span.
     *
     * @param zoneKinds kinds of the permit zones that the span touches
     */
    @SuppressWarnings("EnumOrdinal") // packed in the order of the constants, in memory only
    public RateRows rows(Collection<String> zoneKinds, String vaultKind) {
        int[] rowByKey = new int[KEYS.length];
        for (RateKey key : KEYS) {
            rowByKey[key.ordinal()] = key.ordinal();
        }
        boolean[] ofVault = new boolean[KEYS.length];
        for (int i = KEYS.length; i < rows.size(); i++) {
            Row row = rows.get(i);
            int key = row.key().ordinal();
            boolean vaultRow = !row.vaultKind().isEmpty();
            boolean holds = vaultRow
                    ? alike(row.vaultKind(), vaultKind)
                    : zoneKinds.stream().anyMatch(kind -> alike(row.zoneKind(), kind));
            if (holds && (outranks(vaultRow, ofVault[key], rowByKey[key] == key) || costlier(i, rowByKey[key]))) {
                rowByKey[key] = i;
                ofVault[key] = vaultRow;
            }
        }
        return new RateRows(rowByKey);
    }

    /** Returns the rate in its unit. */
    public double inUnit(RateKey key, RateRows at) {
        return inUnit[at.row(key)];
    }

    /** Returns the rates of all rows, in the order that {@link RateRows} names; not to be changed. */
    double[] inUnitByRow() {
        return inUnit;
    }

    /** Returns the rate with its range and source. */
    public Rate rate(RateKey key, RateRows at) {
        return rows.get(at.row(key)).rate();
    }

    /** Any row comes before the standard one, and one of the vault's kind before one of a zone's. */
    private static boolean outranks(boolean vaultRow, boolean vaultRowBefore, boolean standardBefore) {
        return standardBefore || (vaultRow && !vaultRowBefore);
    }

    private boolean costlier(int row, int before) {
        return rows.get(row)
                .key()
                .isCostlier(
                        rows.get(row).rate().value(), rows.get(before).rate().value());
    }

    private static boolean alike(String kind, String other) {
        return kind.strip().equalsIgnoreCase(other.strip());
    }

    /**
     * Returns a number from 0 to 1 with one of each {@value #STRATA} samples in each of as many equal parts: stratified in every rate, in an
     * order of its own (Latin hypercube: McKay, Beckman and Conover 1979, from memory).
     */
    private static double shareRatio(RateKey key, long seed, int sample) {
        long stream = stream(key, seed);
        long own = number(stream, sample);
        int first = sample - sample % STRATA;
        int part = 0;
        for (int other = first; other < first + STRATA; other++) {
            part += Long.compareUnsigned(number(stream, other), own) < 0 ? 1 : 0;
        }
        return (part + (mix(own) >>> 11) * 0x1.0p-53) / STRATA;
    }

    private static long stream(RateKey key, long seed) {
        long hash = FNV_OFFSET;
        for (int i = 0; i < key.name().length(); i++) {
            hash = (hash ^ key.name().charAt(i)) * FNV_PRIME;
        }
        return mix(mix(seed) ^ hash);
    }

    /** A number by the mixing function of SplitMix64 (Steele, Lea and Flood, OOPSLA 2014; from memory); no two of a stream are equal. */
    private static long number(long stream, int sample) {
        return mix(stream + 0x9e3779b97f4a7c15L * (sample + 1L));
    }

    private static long mix(long value) {
        long z = value + 0x9e3779b97f4a7c15L;
        z = (z ^ (z >>> 30)) * 0xbf58476d1ce4e5b9L;
        z = (z ^ (z >>> 27)) * 0x94d049bb133111ebL;
        return z ^ (z >>> 31);
    }
}
