package org.spanroom.model.learn;

/**
 * What opened ducts say of one chance, in all ducts or in one stratum.
 *
 * @param chance its word
 * @param stratum name of the stratum; empty for all ducts
 * @param looked in how many opened ducts it showed whether the event is there
 * @param events in how many it was
 * @param beforeRatio the chance before: of the settings, or of all ducts
 * @param afterRatio the chance after
 */
public record ChanceChange(
        String chance, String stratum, int looked, int events, double beforeRatio, double afterRatio) {}
