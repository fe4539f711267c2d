package org.spanroom.model.permit;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What permits a span needs, and which more a new build on the same path would need.
 *
 * @param touches the zones that count and that the span or one of its vaults touches, in order of kind and id
 * @param recoveryNeeds keys of the permits that recovering still needs, sorted
 * @param recoveryEverywhere keys of those that every recovery needs, by the settings, sorted
 * @param avoided keys of the permits that a new build would need and recovering does not, sorted
 * @param rules the rules that the span is under, and how far
 * @param recoveryLeadDays days until all permits of recovering are there, if they are requested together
 * @param newBuildLeadDays the same for a new build, without waiting for the end of a ban
 * @param issuedByCrew keys of permits that the crew issues itself on the day, by the settings, whether needed here or not, sorted
 * @param toCome the zones that do not count yet, in the same order; nothing else here depends on them
 */
public record Permits(
        List<ZoneTouch> touches,
        List<String> recoveryNeeds,
        List<String> recoveryEverywhere,
        List<String> avoided,
        Map<ZoneRule, RuledPart> rules,
        int recoveryLeadDays,
        int newBuildLeadDays,
        List<String> issuedByCrew,
        List<ZoneTouch> toCome) {
    /** No zones are known. */
    public static final Permits NONE = new Permits(List.of(), List.of(), List.of(), Map.of());

    public Permits {
        touches = List.copyOf(touches);
        recoveryNeeds = List.copyOf(recoveryNeeds);
        recoveryEverywhere = List.copyOf(recoveryEverywhere);
        avoided = List.copyOf(avoided);
        rules = Map.copyOf(rules);
        issuedByCrew = List.copyOf(issuedByCrew);
        toCome = List.copyOf(toCome);
    }

    /** Permits where no zone is to come and none is needed everywhere. */
    public Permits(
            List<ZoneTouch> touches,
            List<String> recoveryNeeds,
            List<String> avoided,
            Map<ZoneRule, RuledPart> rules,
            int recoveryLeadDays,
            int newBuildLeadDays) {
        this(
                touches,
                recoveryNeeds,
                List.of(),
                avoided,
                rules,
                recoveryLeadDays,
                newBuildLeadDays,
                List.of(),
                List.of());
    }

    /** Permits of which it is not known how long they take. */
    public Permits(
            List<ZoneTouch> touches, List<String> recoveryNeeds, List<String> avoided, Map<ZoneRule, RuledPart> rules) {
        this(touches, recoveryNeeds, avoided, rules, 0, 0);
    }

    /** Returns the permits that recovering needs here and not everywhere, sorted. */
    public List<String> recoveryNeedsHere() {
        return recoveryNeeds.stream()
                .filter(permit -> !recoveryEverywhere.contains(permit))
                .toList();
    }

    /** Returns the permits of recovering that have to be applied for, sorted. */
    public List<String> recoveryAppliedFor() {
        return recoveryNeeds.stream()
                .filter(permit -> !issuedByCrew.contains(permit))
                .toList();
    }

    /** Returns the permits of recovering that the crew issues itself on the day, sorted. */
    public List<String> recoveryIssuedByCrew() {
        return recoveryNeeds.stream().filter(issuedByCrew::contains).toList();
    }

    /** Returns the meters of the span inside any zone; where zones overlap they count once. */
    public double lengthM() {
        return lengthM(touch -> true);
    }

    /** Returns the meters inside zones of one kind; where these overlap they count once. */
    public double lengthM(String kind) {
        return lengthM(touch -> touch.zone().kind().equals(kind));
    }

    private double lengthM(Predicate<ZoneTouch> wanted) {
        return coveredM(touches.stream().filter(wanted).toList());
    }

    /** Returns the meters inside the zones of some touches; where these overlap they count once. */
    static double coveredM(List<ZoneTouch> touches) {
        return Stretch.coveredM(
                touches.stream().flatMap(touch -> touch.stretches().stream()).toList());
    }

    /** Returns whether the span is under a rule at all. */
    public boolean isUnder(ZoneRule rule) {
        return rules.containsKey(rule);
    }

    /** Finds how far the span is under a rule. */
    public Optional<RuledPart> findPart(ZoneRule rule) {
        return Optional.ofNullable(rules.get(rule));
    }
}
