package org.spanroom.pipeline;

/**
 * Of how many things a page has a row each; sums and counts are of all.
 *
 * @param spans up to so many spans it shows them all
 * @param bestSpans of more spans it shows so many, the best
 * @param findings how many findings it has on its map
 */
record ReportLimits(int spans, int bestSpans, int findings) {
    /** What a browser shows without delay, in a file that can be sent. */
    static final ReportLimits SHIPPED = new ReportLimits(100_000, 20_000, 20_000);

    /** Returns how many spans of a run are shown. */
    long shown(long ofSpans) {
        return ofSpans > spans ? bestSpans : ofSpans;
    }
}
