package org.spanroom.model.rank;

import java.util.Locale;

/** Something about a span that has not been measured and could be. The lower-case name is part of the output. */
public enum Unknown {
    /** How hard the innerduct slides. */
    FRICTION("Try a short pull by hand or with a gauge on each innerduct; look for silt, water and dried lubricant."),
    /** The inside diameter of the duct, or the diameter of its cables, is assumed. */
    SIZES("Measure the bore and each cable's outside diameter at the duct mouth."),
    /** There may be more in the duct than the records say. */
    CONTENTS("Count innerducts and cables at the duct mouth and read the cable tags."),
    /** The duct may be blocked or crushed between the vaults. */
    CONDITION("Rod an empty innerduct or push a camera through, and note where it stops.");

    private final String whatToLookAt;

    Unknown(String whatToLookAt) {
        this.whatToLookAt = whatToLookAt;
    }

    /** Returns one or two sentences for the crew that goes there. */
    public String whatToLookAt() {
        return whatToLookAt;
    }

    /** Returns the word for this in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
