package org.spanroom.model.network;

import java.util.OptionalDouble;
import org.spanroom.model.Answer;
import org.spanroom.model.Check;

/**
 * What the records say of the work at a vault.
 *
 * @param volumeM3 air inside, which sets the ventilation time
 * @param water whether it has standing water, so that it must be pumped out
 * @param surface what its cover is in: roadway, sidewalk, verge; or empty
 * @param cableHold whether a live cable can be held there: something to hold it by, and slack enough
 * @param cableSlackM length of each live cable that is stored there and can be drawn out of the vault, where none is recorded of
 *     the duct
 */
public record VaultSite(
        OptionalDouble volumeM3, Answer water, String surface, Answer cableHold, OptionalDouble cableSlackM) {
    /** Nothing is recorded. */
    public static final VaultSite UNKNOWN = new VaultSite(OptionalDouble.empty(), Answer.UNKNOWN, "", Answer.UNKNOWN);

    public VaultSite {
        volumeM3.ifPresent(volume -> Check.positive("volumeM3", volume));
        cableSlackM.ifPresent(slack -> Check.notNegative("cableSlackM", slack));
    }

    /** A vault of which no slack is recorded. */
    public VaultSite(OptionalDouble volumeM3, Answer water, String surface, Answer cableHold) {
        this(volumeM3, water, surface, cableHold, OptionalDouble.empty());
    }
}
