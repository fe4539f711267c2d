package org.spanroom.model;

import java.util.Locale;

/** What the records say to a question of yes or no. */
public enum Answer {
    YES,
    NO,
    /** Nothing is recorded. */
    UNKNOWN;

    /** Returns the word for this answer in columns; empty where nothing is recorded. */
    public String key() {
        return this == UNKNOWN ? "" : name().toLowerCase(Locale.ROOT);
    }
}
