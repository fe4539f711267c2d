package org.spanroom.sample;

/**
 * Says which banks have a sound empty duct, so that their sections are 5 to 10 in a hundred in a city of any size: a bank may
 * have one as long as no more than the aim of all sections so far have one. How many a full city has is common practice, no
 * source.
 */
final class SpareSchedule {
    /** Share of sections that is aimed at; banks come in runs of up to seven sections, so that it is met from below. */
    private static final double AIM_RATIO = 0.08;

    private static final int PURPOSE = 14;

    private final Chance chance;
    private long sections;
    private long withSpare;

    SpareSchedule(long seed) {
        this.chance = Chance.of(seed, PURPOSE);
    }

    /**
     * Counts the sections of a bank and returns whether it has an empty duct.
     *
     * @param suits whether it may have one
     */
    boolean next(int ofBank, boolean suits) {
        sections += ofBank;
        boolean drawn = chance.happens(0.5);
        boolean due = suits && drawn && withSpare + ofBank <= AIM_RATIO * sections;
        if (due) {
            withSpare += ofBank;
        }
        return due;
    }
}
