package org.spanroom.model.effort;

import java.util.Map;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultKind;

/**
 * What the settings say of getting at a vault: whether its kind is entered, and whether its cover is in the roadway. Doubt is treated as
 * the harder case.
 */
public final class VaultAccess {
    private final Map<String, VaultKind> kinds;
    private final RateSettings surfaces;

    /** @param surfaces where the words for each surface are */
    public VaultAccess(Map<String, VaultKind> kinds, RateSettings surfaces) {
        this.kinds = Map.copyOf(kinds);
        this.surfaces = surfaces;
    }

    /** Returns whether crews enter a vault; one whose kind is not recorded, or not listed, is entered. */
    public boolean isEntered(Vault vault) {
        return VaultKind.of(kinds, vault.kind()).entered();
    }

    /** Returns whether a cover is in the roadway; one whose surface is not recorded, or a word that means none, is treated as in it. */
    public boolean isInRoadway(Vault vault) {
        String word = vault.site().surface();
        return !surfaces.knowsSurface(word) || surfaces.surfaceOf(word) == Surface.ROADWAY;
    }
}
