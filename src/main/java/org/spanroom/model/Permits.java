package org.spanroom.model;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What permits a span needs, and which a new build on the same path would need besides.
 *
 * @param touches the zones that the span or one of its vaults touches, in order of kind and id
 * @param recoveryNeeds keys of the permits that recovering still needs, sorted
 * @param avoided keys of the permits that a new build would need and recovering does not, sorted
 * @param nightOnly whether recovering is allowed at night only: one of the vaults, where crews work, lies in such a zone
 * @param cutBannedM metres on which no new trench may be cut on the day that the run is made for
 * @param recoveryLeadDays days until all permits of recovering are there, if they are asked for together
 * @param newBuildLeadDays likewise for a new build, without waiting for the end of a ban
 */
public record Permits(
        List<ZoneTouch> touches,
        List<String> recoveryNeeds,
        List<String> avoided,
        boolean nightOnly,
        double cutBannedM,
        int recoveryLeadDays,
        int newBuildLeadDays) {
    /** No zones are known. */
    public static final Permits NONE = new Permits(List.of(), List.of(), List.of(), false, 0);

    public Permits {
        Check.notNegative("cutBannedM", cutBannedM);
        touches = List.copyOf(touches);
        recoveryNeeds = List.copyOf(recoveryNeeds);
        avoided = List.copyOf(avoided);
    }

    /** Permits of which it is not known how long they take. */
    public Permits(
            List<ZoneTouch> touches,
            List<String> recoveryNeeds,
            List<String> avoided,
            boolean nightOnly,
            double cutBannedM) {
        this(touches, recoveryNeeds, avoided, nightOnly, cutBannedM, 0, 0);
    }

    /** Returns the metres of the span inside any zone; where zones overlap they count once. */
    public double lengthM() {
        return lengthM(touch -> true);
    }

    /** Returns the metres inside zones of one kind; where these overlap they count once. */
    public double lengthM(String kind) {
        return lengthM(touch -> touch.zone().kind().equals(kind));
    }

    /** Returns the metres inside the zones of some touches; where these overlap they count once. */
    public double lengthM(Predicate<ZoneTouch> wanted) {
        return Stretch.coveredM(touches.stream()
                .filter(wanted)
                .flatMap(touch -> touch.stretches().stream())
                .toList());
    }

    /** Returns whether a ban on cutting lies on the span that has no last day. */
    public boolean cutBannedForGood() {
        return touches.stream()
                .anyMatch(touch -> touch.lengthM() > 0
                        && touch.rule().cutBan()
                        && touch.zone().until().isEmpty());
    }

    /** Finds the last day of the bans on cutting along the span, unless one of them has none. */
    public Optional<LocalDate> findCutBannedUntil() {
        return cutBannedForGood()
                ? Optional.empty()
                : touches.stream()
                        .filter(touch -> touch.lengthM() > 0 && touch.rule().cutBan())
                        .flatMap(touch -> touch.zone().until().stream())
                        .max(Comparator.naturalOrder());
    }
}
