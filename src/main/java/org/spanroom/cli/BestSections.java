package org.spanroom.cli;

import java.util.Locale;
import org.spanroom.model.rank.RankedSection;

/** How a list of the best sections is worded: one span for each, and how many further ranked spans the section has. */
final class BestSections {
    private BestSections() {}

    /**
     * Returns the line above such a list.
     *
     * @param sections how many have a ranked span
     */
    static String title(long sections) {
        return String.format(
                Locale.ROOT,
                "The best of %,d sections, each with its best span (more: other ranked spans of the section):",
                sections);
    }

    /** Returns how many ranked spans a section has apart from its best one; nothing where it has no other. */
    static String more(RankedSection section) {
        int others = section.counts().ranked() - 1;
        return others > 0 ? "+" + others : "";
    }
}
