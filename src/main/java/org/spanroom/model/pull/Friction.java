package org.spanroom.model.pull;

import java.util.Locale;

/** The states of a duct that friction is calculated for; always all three. The lower-case name is part of the output. */
public enum Friction {
    LUBRICATED,
    DRY,
    /** Silt, or lubricant that has dried. */
    BAD;

    /** Returns the word for this state in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
