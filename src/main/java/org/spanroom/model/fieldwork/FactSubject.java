package org.spanroom.model.fieldwork;

import java.util.Locale;

/** What a fact is about. */
public enum FactSubject {
    SPAN,
    VAULT;

    /** Returns the name of the column that holds the subject's id. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
