package org.spanroom.model.bore;

import java.util.Locale;

/** What is known of whether circles go side by side into a bore. The lower-case name is part of the output. */
public enum PackingOutcome {
    /** An arrangement is known, and no circle in it overlaps another or the wall by more than 1e-6 mm. */
    FITS,
    /** A bound proves that there is no arrangement. */
    DOES_NOT_FIT,
    /** Neither an arrangement nor a proof was found. */
    UNDECIDED;

    /** Returns the word for this outcome in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
