package org.spanroom.model.rank;

import java.util.List;
import org.spanroom.model.Check;
import org.spanroom.model.network.Vault;

/**
 * Something to go and look at, because knowing it may change the top of the ranking.
 *
 * @param unknown what is not known
 * @param topRatio chance that the span belongs to the top, as far as is known
 * @param changeRatio chance by which the decision for or against the span would be wrong less often, once this is known
 * @param vault where to look
 * @param cautions what the crew must watch for at this vault
 */
public record FieldCheck(
        RankedSpan span, Unknown unknown, double topRatio, double changeRatio, Vault vault, List<String> cautions) {
    public FieldCheck {
        Check.within("topRatio", topRatio, 0, 1);
        Check.within("changeRatio", changeRatio, 0, 1);
        cautions = List.copyOf(cautions);
    }
}
