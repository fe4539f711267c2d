package org.spanroom.model.pull;

import java.util.Locale;

/** Why one end of a span is proposed to pull from. */
public enum EndReason {
    ONLY_END("the pull fails at the other end"),
    LEAST_USED("its tightest limit is used less than at the other end"),
    BETTER_SITE(
            "its vault is off the roadway, or the machine fits in it, and its tightest limit is used only slightly more than at the"
                    + " other end"),
    LESS_FORCE("the tightest limits are used equally at both ends; the pull takes less force here"),
    BOTH_EQUAL("both ends are the same; this is the first by vault name");

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
