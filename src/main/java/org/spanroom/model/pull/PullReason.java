package org.spanroom.model.pull;

import java.util.Locale;

/** Why an innerduct has its place in the order of pulling. */
public enum PullReason {
    /** Nothing else is there to pull. */
    ONLY_ONE("the only innerduct"),
    /** It moves no cable, and the rest lie looser once it is out. */
    EMPTY("empty: it moves no cable and leaves the others looser"),
    /** The heavier ones come when fewer neighbors rest on them. */
    LIGHTEST("least loaded of those left: the others follow when fewer neighbors rest on them"),
    LAST("last: no other innerduct rests on it");

    private final String explanation;

    PullReason(String explanation) {
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
