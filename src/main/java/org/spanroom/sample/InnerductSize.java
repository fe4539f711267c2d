package org.spanroom.sample;

import java.util.List;

/**
 * A size of rigid HDPE innerduct, in inches: IPS outside diameters with the minimum walls of ASTM D3035.
 *
 * @param wallIn outside diameter over SDR, rounded to 0.001 in
 */
record InnerductSize(double outsideIn, double sdr, double wallIn) {
    static final InnerductSize ONE_11 = new InnerductSize(1.315, 11, 0.120);
    static final InnerductSize ONE = new InnerductSize(1.315, 13.5, 0.097);
    static final InnerductSize ONE_AND_QUARTER_11 = new InnerductSize(1.660, 11, 0.151);
    static final InnerductSize ONE_AND_QUARTER = new InnerductSize(1.660, 13.5, 0.123);
    static final InnerductSize ONE_AND_HALF_11 = new InnerductSize(1.900, 11, 0.173);
    static final InnerductSize ONE_AND_HALF = new InnerductSize(1.900, 13.5, 0.141);

    static final List<InnerductSize> ALL =
            List.of(ONE_11, ONE, ONE_AND_QUARTER_11, ONE_AND_QUARTER, ONE_AND_HALF_11, ONE_AND_HALF);

    /** Returns the name of its row in the shipped catalog. */
    String catalogName() {
        String nominal = outsideIn < 1.5 ? "1" : outsideIn < 1.8 ? "1-1/4" : "1-1/2";
        return (sdr == 11 ? "sdr11 " : "sdr13.5 ") + nominal + " in";
    }

    double insideIn() {
        return outsideIn - 2 * wallIn;
    }
}
