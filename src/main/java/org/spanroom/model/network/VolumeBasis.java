package org.spanroom.model.network;

import java.util.Locale;

/** What the volume of a vault rests on. */
public enum VolumeBasis {
    /** The records give it. */
    RECORDED,
    /** Inside length, width and height are recorded. */
    INSIDE_SIZE,
    /** The config assumes it for vaults without one. */
    ASSUMED,
    /** Neither is known. */
    UNKNOWN;

    /** Returns the word for it in columns; empty where the volume is unknown. */
    public String key() {
        return this == UNKNOWN ? "" : name().toLowerCase(Locale.ROOT);
    }
}
