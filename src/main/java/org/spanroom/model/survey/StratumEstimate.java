package org.spanroom.model.survey;

import org.spanroom.model.Check;

/**
 * How well a share of one stratum, such as that of spans that would give room, is known once some of its spans have been looked at.
 *
 * @param stratum its name
 * @param seen how many of its spans have been seen
 * @param spans how many it has
 * @param marginRatio half the width of the 95 percent interval of such a share, at its widest
 */
public record StratumEstimate(String stratum, int seen, int spans, double marginRatio) {
    /** A share is known to within half of everything before anything is seen. */
    public static final double MOST_RATIO = 0.5;

    public StratumEstimate {
        Check.within("marginRatio", marginRatio, 0, MOST_RATIO);
    }
}
