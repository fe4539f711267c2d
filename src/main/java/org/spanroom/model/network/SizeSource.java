package org.spanroom.model.network;

import java.util.Locale;

/** Where a size is from, the most certain first. */
public enum SizeSource {
    /** The data gives the size itself. */
    RECORDED,
    /** The data names a row of the catalog. */
    CATALOG,
    /** The data gives nothing usable, so that the configured default is used. */
    ASSUMED;

    /** Returns the word for it in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
