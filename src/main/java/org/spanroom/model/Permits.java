package org.spanroom.model;

import java.util.List;

/**
 * What permits a span needs, and which a new build on the same path would need besides.
 *
 * @param touches the zones that the span or one of its vaults touches, in order of kind and id
 * @param recoveryNeeds keys of the permits that recovering still needs, sorted
 * @param avoided keys of the permits that a new build would need and recovering does not, sorted
 * @param nightOnly whether work on the span is allowed at night only
 * @param cutBannedM metres on which no new trench may be cut on the day that the run is made for
 */
public record Permits(
        List<ZoneTouch> touches,
        List<String> recoveryNeeds,
        List<String> avoided,
        boolean nightOnly,
        double cutBannedM) {
    /** No zones are known. */
    public static final Permits NONE = new Permits(List.of(), List.of(), List.of(), false, 0);

    public Permits {
        Check.notNegative("cutBannedM", cutBannedM);
        touches = List.copyOf(touches);
        recoveryNeeds = List.copyOf(recoveryNeeds);
        avoided = List.copyOf(avoided);
    }
}
