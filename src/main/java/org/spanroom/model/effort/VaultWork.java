package org.spanroom.model.effort;

import java.util.OptionalDouble;
import org.spanroom.model.Check;

/**
 * What work at one of a span's vaults is based on.
 *
 * @param volumeM3 air inside, where it is recorded
 * @param wet whether it has standing water
 * @param entered whether crews climb into it, so that it is ventilated and its air tested
 * @param rows the rates that apply at its kind of vault
 */
public record VaultWork(String vaultId, OptionalDouble volumeM3, boolean wet, boolean entered, RateRows rows) {
    public VaultWork {
        volumeM3.ifPresent(volume -> Check.positive("volumeM3", volume));
    }
}
