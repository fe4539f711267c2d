package org.spanroom.program.annual;

import java.util.List;

/** Why no plan does every must, or none was found, or which connections that have to be served a plan leaves out. */
public sealed interface Shortage {
    /**
     * A must has no year: none is possible, or in each of them it alone exceeds a limit.
     *
     * @param task the must
     */
    record NoYear(int task) implements Shortage {}

    /**
     * The musts that have to be done within some years use more than there is in them, however they are spread.
     *
     * @param firstYear the first of these years
     * @param lastYear the last of them
     * @param resource what is short
     * @param least what they use at least, set-ups shared as far as possible
     * @param limit the sum of the limits of these years
     */
    record MustsExceed(int firstYear, int lastYear, int resource, double least, double limit) implements Shortage {}

    /**
     * No plan that holds every must within the limits was found: in the nearest to one, this is exceeded.
     *
     * @param year a year
     * @param resource what is short in it
     * @param used what is used there
     * @param limit what there is
     * @param isProven whether it is proven that there is no plan
     */
    record NotFound(int year, int resource, double used, double limit, boolean isProven) implements Shortage {}

    /**
     * No way takes the cables of a connection that has to be served by its last year, whatever is done.
     *
     * @param demand the connection
     */
    record NoWay(int demand) implements Shortage {}

    /**
     * The plan that was found does not serve a connection that has to be served: on the way of least price, this is short. It is not proven that no plan serves it.
     *
     * @param demand the connection
     * @param shortBy of each resource, how much more would be used than there is in the years up to its last one; all 0 where that is enough in sum, but not in the single years
     */
    record NotServed(int demand, List<Double> shortBy) implements Shortage {
        public NotServed {
            shortBy = List.copyOf(shortBy);
        }
    }
}
