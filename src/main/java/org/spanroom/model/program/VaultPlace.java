package org.spanroom.model.program;

/**
 * A vault of the network.
 *
 * @param lonDeg longitude on WGS 84 where its spans end; NaN where no line is recorded
 * @param latDeg latitude
 */
public record VaultPlace(String id, double lonDeg, double latDeg) {}
