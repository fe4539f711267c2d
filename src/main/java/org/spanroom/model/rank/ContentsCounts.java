package org.spanroom.model.rank;

import org.spanroom.model.network.ContentsSource;

/**
 * How many spans of a run rest on recorded, on assumed and on unknown contents.
 *
 * @param recorded spans with recorded contents, ranked or not
 * @param assumed spans with an assumed count of innerducts or cables
 * @param unknown spans of whose contents nothing is recorded and nothing assumed
 * @param ranked ranked spans in total
 * @param rankedAssumed ranked spans with an assumed count
 * @param rankedInnerductsAssumed ranked spans whose count of innerducts is assumed
 */
public record ContentsCounts(
        long recorded, long assumed, long unknown, long ranked, long rankedAssumed, long rankedInnerductsAssumed) {
    public static final ContentsCounts NONE = new ContentsCounts(0, 0, 0, 0, 0, 0);

    /** Returns these counts with one more span. */
    public ContentsCounts plus(ContentsSource source, boolean isRanked, boolean innerductsAssumed) {
        boolean isAssumed = source == ContentsSource.ASSUMED;
        return new ContentsCounts(
                recorded + (source == ContentsSource.RECORDED ? 1 : 0),
                assumed + (isAssumed ? 1 : 0),
                unknown + (source == ContentsSource.UNKNOWN ? 1 : 0),
                ranked + (isRanked ? 1 : 0),
                rankedAssumed + (isRanked && isAssumed ? 1 : 0),
                rankedInnerductsAssumed + (isRanked && isAssumed && innerductsAssumed ? 1 : 0));
    }

    /** Returns these counts and others as one. */
    public ContentsCounts plus(ContentsCounts other) {
        return new ContentsCounts(
                recorded + other.recorded,
                assumed + other.assumed,
                unknown + other.unknown,
                ranked + other.ranked,
                rankedAssumed + other.rankedAssumed,
                rankedInnerductsAssumed + other.rankedInnerductsAssumed);
    }

    public long spans() {
        return recorded + assumed + unknown;
    }

    /** Returns whether the ranking rests on assumed contents: those of more than half of its spans. */
    public boolean isAssumption() {
        return 2 * rankedAssumed > ranked;
    }

    /** Returns whether nothing is known of the contents of most spans, and nothing assumed. */
    public boolean isMostlyUnknown() {
        return 2 * unknown > spans();
    }
}
