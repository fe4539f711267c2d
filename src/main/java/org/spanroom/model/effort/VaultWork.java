package org.spanroom.model.effort;

import java.util.OptionalDouble;
import org.spanroom.model.Check;

/**
 * What work at one of a span's vaults goes by.
 *
 * @param volumeM3 air inside, where it is recorded
 * @param wet whether water stands in it
 * @param rows the rates that hold at its kind of vault
 */
public record VaultWork(String vaultId, OptionalDouble volumeM3, boolean wet, RateRows rows) {
    public VaultWork {
        volumeM3.ifPresent(volume -> Check.positive("volumeM3", volume));
    }
}
