package org.spanroom.rank;

import java.util.Locale;

/** An absolute quantity of a span that its score judges. The lower-case name is the key in the config and in columns. */
enum Criterion {
    /** Cables that find a place afterwards and did not before. */
    ROOM_GAINED("cables"),
    /** How short of space the span is now: places that a cable could take today; the fewer the shorter. */
    SHORTAGE("free places"),
    /** How far the tightest limit of the pull is used up from the end that is worked from; above 100 the pull fails. */
    EASE_PULL("percent used"),
    /** All turning between the vaults, which makes every pull harder, that of the new cables too. */
    EASE_BENDS("degrees"),
    /** Where water must be dealt with: the duct, and each of the two vaults. */
    EASE_WATER("wet places"),
    /** What makes work at the two vaults hard: each for its kind and for what its cover lies in. */
    EASE_ACCESS("drawbacks"),
    /** Money saved over new build on the same path for each unit of money spent on recovering. */
    SAVING("saved per spent"),
    /** Permits that a new build on the same path would need and recovering does not. */
    PERMITS_AVOIDED("permits"),
    /** How much of what matters is recorded rather than assumed, how well placed, how new. */
    KNOWLEDGE("percent"),
    /** Metres that one set-up at two vaults gives room on. */
    LENGTH("m");

    private final String unit;

    Criterion(String unit) {
        this.unit = unit;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    String unit() {
        return unit;
    }
}
