package org.spanroom.model.network;

import java.util.List;
import org.spanroom.model.permit.Zone;

/**
 * A vault and its use by the spans.
 *
 * @param mergedIds other vaults of the layer that are at the same place and are treated as this one
 * @param spanCount how many span ends are at the vault
 * @param zones the permit zones that it is in, in order of kind and id
 * @param needs what a crew prepares for there
 */
public record VaultUse(Vault vault, List<String> mergedIds, int spanCount, List<Zone> zones, VaultNeeds needs) {
    public VaultUse {
        mergedIds = List.copyOf(mergedIds);
        zones = List.copyOf(zones);
    }

    /** A vault of which neither zones nor needs are known. */
    public VaultUse(Vault vault, List<String> mergedIds, int spanCount) {
        this(vault, mergedIds, spanCount, List.of(), VaultNeeds.UNKNOWN);
    }

    public VaultUse with(List<Zone> otherZones, VaultNeeds otherNeeds) {
        return new VaultUse(vault, mergedIds, spanCount, otherZones, otherNeeds);
    }
}
