package org.spanroom.pull;

/**
 * What one innerduct in its turn weighs, carries and moves.
 *
 * @param cableNPerM weight of its cables on the innerduct's wall; negative where they float
 * @param bodyNPerM weight of innerduct and cables on the duct's wall; negative where they float
 * @param neighborNPerM weight of the duct's other contents that rests on it
 * @param wedgeRatio factor on the friction at the duct's wall
 * @param hasCable false for an empty innerduct: an ordinary pull without hold force
 * @param liveShareRatio the largest share of the hold force that falls on a live cable; 0 where none is live
 * @param liveDiameterMm outside diameter of the thickest live cable; 0 where none is live
 */
record Load(
        double cableNPerM,
        double bodyNPerM,
        double neighborNPerM,
        double wedgeRatio,
        boolean hasCable,
        double liveShareRatio,
        double liveDiameterMm) {

    /** Returns the force per meter with which body and neighbors press on the wall, of the sign of the body's weight. */
    double pressNPerM() {
        return Math.copySign(Math.abs(bodyNPerM) + neighborNPerM, bodyNPerM);
    }
}
