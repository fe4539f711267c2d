package org.spanroom.model.network;

import java.util.OptionalDouble;
import org.spanroom.model.Answer;
import org.spanroom.model.Check;

/**
 * What the records say of the work at a vault.
 *
 * @param volumeM3 air inside, which sets the ventilation time
 * @param water whether water stands in it, so that it must be pumped out
 * @param surface what its cover lies in: roadway, sidewalk, verge; or empty
 * @param cableHold whether a live cable can be held there: something to hold it by, and slack enough
 */
public record VaultSite(OptionalDouble volumeM3, Answer water, String surface, Answer cableHold) {
    /** Nothing is recorded. */
    public static final VaultSite UNKNOWN = new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, "", Answer.UNKNOWN);

    public VaultSite {
        volumeM3.ifPresent(volume -> Check.positive("volumeM3", volume));
    }
}
