package org.spanroom.finding;

/** Where on the ground a finding lies, degrees on WGS 84. */
public record Place(double lonDeg, double latDeg) {}
