package org.spanroom.model.pull;

import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SpanEnd;

/**
 * One innerduct in its turn, pulled from either end.
 *
 * @param turn its place in the order of pulling, from 1
 * @param neighborNPerM weight of the other contents that rests on it in its turn
 * @param wedgeRatio factor on its friction where it is wedged between two supports; 1 where it is free
 */
public record InnerductPull(
        int turn,
        Innerduct innerduct,
        PullReason reason,
        double neighborNPerM,
        double wedgeRatio,
        EndPull fromA,
        EndPull fromB) {

    public EndPull from(SpanEnd pullingEnd) {
        return pullingEnd == SpanEnd.A ? fromA : fromB;
    }
}
