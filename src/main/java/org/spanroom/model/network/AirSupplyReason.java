package org.spanroom.model.network;

import java.util.Locale;

/** Why a vault needs a continuous supply of air while crews are in it, or does not, or why that is unknown. */
public enum AirSupplyReason {
    /** It is in a part of a public right of way that is open to vehicular traffic: 29 CFR 1910.268(o)(2)(ii). */
    ROADWAY,
    /** Gas was found in it before: 29 CFR 1910.268(o)(2)(ii). */
    GAS_FOUND,
    /** No: its cover is beside the roadway, and no gas was found before. */
    OFF_ROADWAY_WITHOUT_GAS,
    /** No: crews work on it from the surface. */
    NOT_ENTERED,
    /** Unknown: its surface is not recorded, or by a word that has no meaning. */
    SURFACE_NOT_RECORDED,
    /** Unknown: its cover is beside the roadway, and whether gas was found before is not recorded. */
    GAS_NOT_RECORDED;

    /** Returns the word for it in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
