package org.spanroom.model;

import java.util.List;

/**
 * A vault and what the spans make of it.
 *
 * @param mergedIds other vaults of the layer that lie at the same place and count as this one
 * @param spanCount how many span ends lie at the vault
 */
public record VaultUse(Vault vault, List<String> mergedIds, int spanCount) {
    public VaultUse {
        mergedIds = List.copyOf(mergedIds);
    }
}
