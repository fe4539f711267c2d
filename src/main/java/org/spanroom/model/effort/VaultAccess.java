package org.spanroom.model.effort;

import java.util.Map;
import org.spanroom.model.Answer;
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

    /** Returns whether crews enter a vault, by its recorded kind; a kind that is not listed is entered. */
    public Answer entered(Vault vault) {
        if (vault.kind().isBlank()) {
            return Answer.UNKNOWN;
        }
        return isEntered(vault) ? Answer.YES : Answer.NO;
    }

    /** Returns whether a cover is in the roadway, by the recorded word for its surface. */
    public Answer inRoadway(Vault vault) {
        String word = vault.site().surface();
        if (!surfaces.knowsSurface(word)) {
            return Answer.UNKNOWN;
        }
        return surfaces.surfaceOf(word) == Surface.ROADWAY ? Answer.YES : Answer.NO;
    }

    /** Returns whether a cover is in the roadway; one whose surface is not recorded, or a word that means none, is treated as in it. */
    public boolean isInRoadway(Vault vault) {
        return inRoadway(vault) != Answer.NO;
    }
}
