package org.spanroom.model.pull;

import java.util.Locale;

/** Why one end of a span is proposed to pull from. */
public enum EndReason {
    ONLY_END("at the other end it is not possible"),
    LEAST_USED("its tightest limit is used less than that of the other end"),
    BETTER_SITE(
            "its vault lies off the roadway, or takes the machine, and its tightest limit is used hardly more than that of the"
                    + " other end"),
    LESS_FORCE("the tightest limits are used as far at both ends; it takes less force here"),
    ALIKE("both ends are alike; it is the first by the name of its vault");

    private final String explanation;

    EndReason(String explanation) {
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
