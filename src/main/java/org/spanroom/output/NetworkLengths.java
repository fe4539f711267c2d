package org.spanroom.output;

import org.spanroom.model.network.Network;

/**
 * The account of all drawn length, in meters on the ground.
 *
 * @param remaindersM length that is not assigned to a span
 */
public record NetworkLengths(double routesM, double spansM, double remaindersM) {
    static NetworkLengths of(Network network) {
        return new NetworkLengths(network.routeLengthM(), network.spanLengthM(), network.remainderLengthM());
    }
}
