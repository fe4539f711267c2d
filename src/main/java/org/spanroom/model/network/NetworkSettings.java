package org.spanroom.model.network;

import org.spanroom.model.Check;
import org.spanroom.model.ValueSource;

/**
 * How drawn routes become spans. No published source gives these distances: they are common practice for layers digitised
 * at street scale, and {@code check} shows how the line ends of the data at hand are to their vaults.
 *
 * @param snapToleranceM a route is at a vault where it comes within this of the vault's point or footprint
 * @param joinToleranceM two ends of one duct that are within this of one another, no vault being there, are one
 * @param gapWarningM an end that misses a vault or another end by more than the tolerance and by no more than this is
 *     reported as a gap
 * @param vaultMergeM vaults within this of one with a smaller name are treated as that one
 * @param minimumSpanM cuts of one line that are nearer to one another along it are one cut, at the nearest vault
 * @param lengths which length a span has: as drawn, or as recorded for its routes
 * @param vaults which vault a route's end is at: the nearest in tolerance, or the one that the records name
 * @param recordedVaultReachM how far from a line's end a vault that the records name there may be to count, where
 *     {@code vaults} is recorded
 * @param lengthDifferenceRatio a recorded length is reported where it differs from the drawn one by more than this share
 *     of the drawn one, and by more than {@code lengthDifferenceM}
 */
public record NetworkSettings(
        double snapToleranceM,
        double joinToleranceM,
        double gapWarningM,
        double vaultMergeM,
        double minimumSpanM,
        ValueSource lengths,
        ValueSource vaults,
        double recordedVaultReachM,
        double lengthDifferenceRatio,
        double lengthDifferenceM) {
    public NetworkSettings {
        Check.within("snapToleranceM", snapToleranceM, 0.001, 1000);
        Check.within("joinToleranceM", joinToleranceM, 0, 1000);
        Check.within("gapWarningM", gapWarningM, 0, 1000);
        Check.within("vaultMergeM", vaultMergeM, 0, 1000);
        Check.within("minimumSpanM", minimumSpanM, 0.001, 1000);
        Check.within("recordedVaultReachM", recordedVaultReachM, 0, 1000);
        Check.notNegative("lengthDifferenceRatio", lengthDifferenceRatio);
        Check.notNegative("lengthDifferenceM", lengthDifferenceM);
    }
}
