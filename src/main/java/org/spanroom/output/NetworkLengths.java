package org.spanroom.output;

import org.spanroom.model.network.Network;

/**
 * The account of all drawn length, in metres on the ground.
 *
 * @param remaindersM what lies in no span
 */
public record NetworkLengths(double routesM, double spansM, double remaindersM) {
    static NetworkLengths of(Network network) {
        return new NetworkLengths(network.routeLengthM(), network.spanLengthM(), network.remainderLengthM());
    }
}
