package org.spanroom.output;

import org.spanroom.model.rank.RankTotals;

/** A chunk of spans in the order of the ranking, with their rows in every table, on its way to the files. Used again and again. */
interface SpanRows {
    /**
     * Makes the rows of some spans; for one thread.
     *
     * @param fromPlace the first place in the ranking, from 0
     * @param toPlace the place after the last
     */
    void fill(int fromPlace, int toPlace);

    /** Moves the rows to the end of their files, and returns counts and sums over their spans; for one thread at a time, in order. */
    RankTotals append();
}
