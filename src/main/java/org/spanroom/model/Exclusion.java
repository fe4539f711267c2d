package org.spanroom.model;

import java.util.Locale;

/** Why a span is not ranked: nothing can be recovered there, or nobody knows. The lower-case name is part of the output. */
public enum Exclusion {
    NO_INNERDUCT("no rigid innerduct lies in the duct"),
    NO_OUTER_DUCT("the innerduct is buried directly: no outer duct would stay"),
    CONTENTS_UNKNOWN("the records say nothing of what lies in the duct"),
    SERVICE_UNKNOWN("nobody knows whether a cable is live"),
    ALL_CABLES_DEAD("every cable is recorded as dead: remove the cables first, then the innerducts are plain scrap"),
    DUCT_COLLAPSED("the duct is recorded as collapsed"),
    DUCT_BLOCKED("the duct is recorded as blocked"),
    NO_ROOM_GAINED("nothing more fits after recovery than before");

    private final String explanation;

    Exclusion(String explanation) {
        this.explanation = explanation;
    }

    public String explanation() {
        return explanation;
    }

    /** Returns the word for this reason in columns. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }
}
