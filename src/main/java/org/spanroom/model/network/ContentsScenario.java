package org.spanroom.model.network;

import org.spanroom.model.Check;
import org.spanroom.model.Counted;

/**
 * How much may be in a duct whose contents are not recorded. A count that is recorded stays in every scenario.
 *
 * @param innerductCount how many rigid innerducts
 * @param cableCount how many cables, one in each innerduct, the rest loose
 * @param chanceRatio the chance that a duct is like this, for the simulation
 */
public record ContentsScenario(int innerductCount, int cableCount, double chanceRatio) {
    private static final int MOST = 100;

    public ContentsScenario {
        demandCount("innerductCount", innerductCount);
        demandCount("cableCount", cableCount);
        Check.within("chanceRatio", chanceRatio, 0, 1);
    }

    /** Returns the same scenario with other counts. */
    public ContentsScenario withCounts(int innerducts, int cables) {
        return new ContentsScenario(innerducts, cables, chanceRatio);
    }

    /**
     * Returns the same scenario for a duct that takes only this many innerducts, one of them at least: a duct is not treated as empty. Where
     * each cable has an innerduct, none is left without.
     */
    public ContentsScenario within(int mostInnerducts) {
        int innerducts = Math.min(innerductCount, Math.max(1, mostInnerducts));
        return withCounts(innerducts, cableCount <= innerductCount ? Math.min(cableCount, innerducts) : cableCount);
    }

    /** Returns the counts in words, such as {@code 3 innerducts and 1 cable}. */
    public String inWords() {
        return Counted.of(innerductCount, "innerduct") + " and " + Counted.of(cableCount, "cable");
    }

    private static void demandCount(String name, int count) {
        if (count < 0 || count > MOST) {
            throw new IllegalArgumentException(name + " must be from 0 to " + MOST + ", was " + count);
        }
    }
}
