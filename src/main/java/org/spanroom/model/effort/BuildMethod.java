package org.spanroom.model.effort;

import java.util.Locale;

/** How a new duct would be laid. */
public enum BuildMethod {
    /** Nothing would be built, since nothing is gained. */
    NONE,
    OPEN_TRENCH,
    BORING,
    /** Boring where no trench may be cut, a trench elsewhere. */
    TRENCH_AND_BORING;

    /** Returns the word for this method in columns; empty for none. */
    public String key() {
        return this == NONE ? "" : name().toLowerCase(Locale.ROOT);
    }
}
