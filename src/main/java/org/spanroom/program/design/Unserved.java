package org.spanroom.program.design;

/**
 * Why a demand is not served.
 *
 * @param leastMoney what serving it would cost at least: on top of the design for {@link Reason#NOT_WORTH_IT} if there is room, else on
 *     an empty network; infinite where no way takes it
 */
public record Unserved(Reason reason, double leastMoney) {
    /** What keeps a demand from being served. */
    public enum Reason {
        /** No pieces that could take any cable join its places. */
        NO_WAY,
        /** On every way some piece has no bin that takes all its cables together, whatever is recovered or built. */
        TOO_MANY_CABLES,
        /** Serving it costs more than its prize. */
        NOT_WORTH_IT,
        /** It could be served alone; with the demands that are served there is no room left. */
        CROWDED_OUT
    }
}
