package org.spanroom.model.effort;

import java.util.Locale;

/** What a new trench would be cut through. */
public enum Surface {
    ROADWAY,
    SIDEWALK,
    VERGE;

    /** Returns the word for this surface in columns and config. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
