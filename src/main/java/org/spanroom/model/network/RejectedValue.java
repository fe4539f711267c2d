package org.spanroom.model.network;

import org.spanroom.model.Check;

/**
 * A value that was recorded and could not be used: it is unknown, and yet it was recorded.
 *
 * @param name key of the term, or what else was rejected
 * @param recorded as it was recorded
 * @param why in one phrase
 */
public record RejectedValue(String name, String recorded, String why) {
    /** Name of a whole row of the contents table. */
    public static final String CONTENTS_ROW = "contents_row";

    public RejectedValue {
        Check.notBlank("name", name);
    }

    /** Returns whether it is a whole row of the contents table. */
    public boolean isContents() {
        return name.equals(CONTENTS_ROW);
    }

    /** Returns all of it, for people. */
    public String words() {
        return "recorded as '" + recorded + "' but rejected: " + why;
    }
}
