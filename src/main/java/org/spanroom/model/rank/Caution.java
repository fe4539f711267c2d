package org.spanroom.model.rank;

/**
 * A condition to check before work on a span that is no reason to leave it out.
 *
 * @param key the word in columns
 * @param explanation the same for people, in one phrase, with what is recorded
 */
public record Caution(String key, String explanation) {
    /** The key of the caution that a pull fails at both ends unless well lubricated; such spans are counted apart. */
    public static final String PULL_DOUBTFUL = "pull_doubtful";

    /** Key of the caution that an innerduct must pass a bend tighter than its minimum radius. */
    public static final String INNERDUCT_RADIUS = "innerduct_radius";
}
