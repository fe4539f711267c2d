package org.spanroom.network;

/**
 * An end of a route that is at no vault.
 *
 * @param route number of the route
 * @param side 0 for the first vertex, 1 for the last
 * @param duct the recorded duct, or empty where none is recorded
 */
record OpenEnd(int route, int side, double lonDeg, double latDeg, String duct, double routeLengthM) {}
