package org.spanroom.model.effort;

import java.util.OptionalDouble;
import org.spanroom.model.Check;

/**
 * What work at one of a span's vaults is based on.
 *
 * @param volumeM3 air inside, where it is recorded
 * @param wet whether it has standing water
 * @param entered whether crews climb into it, so that it is ventilated and its air tested
 * @param innerductsToCut innerducts that come out and run uncut through it, so that they are cut there first
 * @param rows the rates that apply at its kind of vault
 */
public record VaultWork(
        String vaultId, OptionalDouble volumeM3, boolean wet, boolean entered, int innerductsToCut, RateRows rows) {
    public VaultWork {
        volumeM3.ifPresent(volume -> Check.positive("volumeM3", volume));
        Check.notNegative("innerductsToCut", innerductsToCut);
    }

    /** A vault through which no innerduct that comes out runs uncut. */
    public VaultWork(String vaultId, OptionalDouble volumeM3, boolean wet, boolean entered, RateRows rows) {
        this(vaultId, volumeM3, wet, entered, 0, rows);
    }
}
