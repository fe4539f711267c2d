package org.spanroom.model.effort;

/**
 * Spans that follow one another done in one shift, work at a shared vault counted once.
 *
 * @param siteHours of all of them together
 * @param savedHours less than the sum of each done alone in one shift
 * @param fitsWindow whether they fit into one shift
 */
public record SharedShift(double siteHours, double savedHours, boolean fitsWindow) {}
