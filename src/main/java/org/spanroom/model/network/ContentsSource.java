package org.spanroom.model.network;

import java.util.Locale;

/** Where it is known from what is in a duct. */
public enum ContentsSource {
    /** The data counts the innerducts and cables, or lists them. */
    RECORDED,
    /** The number of innerducts or of cables is the configured one, because the data has none. */
    ASSUMED,
    /** Nothing is recorded and nothing is assumed. */
    UNKNOWN;

    private final String key = name().toLowerCase(Locale.ROOT);

    /** Returns the word for it in columns. */
    public String key() {
        return key;
    }
}
