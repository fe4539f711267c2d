package org.spanroom.rank;

import java.util.Locale;

/** An absolute quantity of a span that its score judges. The lower-case name is the key in the config and in columns. */
enum Criterion {
    /** Cables that find a place afterwards and did not before. */
    ROOM_GAINED("cables", 0),
    /** How short of space the span is now: places that a cable could take today; the fewer the shorter. */
    SHORTAGE("free places", 0),
    /** How far the tightest limit of the pull is used up from the end that is worked from; above 100 the pull fails. */
    EASE_PULL("percent used", 2),
    /** All turning between the vaults, which makes every pull harder, that of the new cables too. */
    EASE_BENDS("degrees", 2),
    /** Where water must be dealt with: the duct, and each of the two vaults. */
    EASE_WATER("wet places", 0),
    /** What makes work at the two vaults hard: each for its kind and for what its cover lies in. */
    EASE_ACCESS("drawbacks", 0),
    /** Money saved over new build on the same path for each unit of money spent on recovering. */
    SAVING("saved per spent", 3),
    /** Permits that a new build on the same path would need and recovering does not. */
    PERMITS_AVOIDED("permits", 0),
    /** How much of what matters is recorded rather than assumed, how well placed, how new. */
    KNOWLEDGE("percent", 2),
    /** Metres that one set-up at two vaults gives room on. */
    LENGTH("m", 3);

    private final String unit;
    private final int decimals;

    Criterion(String unit, int decimals) {
        this.unit = unit;
        this.decimals = decimals;
    }

    /** Returns a quantity as the column shows it, so that whoever scores from the columns gets the same score. */
    double rounded(double quantity) {
        double scale = 1;
        for (int i = 0; i < decimals; i++) {
            scale *= 10;
        }
        double rounded = Math.round(Math.abs(quantity) * scale) / scale;
        return quantity < 0 ? 0.0 - rounded : rounded;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    String unit() {
        return unit;
    }
}
