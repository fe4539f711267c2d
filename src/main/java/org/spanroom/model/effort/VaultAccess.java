package org.spanroom.model.effort;

import java.util.Map;
import org.spanroom.model.Answer;
import org.spanroom.model.FewAnswers;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultKind;

/**
 * What the settings say of getting at a vault: whether its kind is entered, and whether its cover is in the roadway. Doubt is treated as
 * the harder case.
 */
public final class VaultAccess {
    private final FewAnswers<String, VaultKind> kinds;
    private final FewAnswers<String, Answer> roadwayByWord;

    /** @param surfaces where the words for each surface are */
    public VaultAccess(Map<String, VaultKind> kinds, RateSettings surfaces) {
        Map<String, VaultKind> known = Map.copyOf(kinds);
        this.kinds = new FewAnswers<>(recorded -> VaultKind.of(known, recorded));
        roadwayByWord = new FewAnswers<>(word -> inRoadway(surfaces, word));
    }

    /** Returns whether crews enter a vault; one whose kind is not recorded, or not listed, is entered. */
    public boolean isEntered(Vault vault) {
        return kinds.of(vault.kind()).entered();
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
        return roadwayByWord.of(vault.site().surface());
    }

    private static Answer inRoadway(RateSettings surfaces, String word) {
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
