package org.spanroom.model.permit;

/**
 * A permit zone as a run uses it.
 *
 * @param rule what the settings say of its kind
 * @param source the words that findings use for the file or layer that it is from
 * @param applies whether it counts on the run date: it is neither over nor still to come, or the settings count such zones too
 * @param spans how many spans touch it or have a vault in it; none where it is over
 * @param lengthM meters of spans inside
 */
public record ZoneUse(Zone zone, ZoneKind rule, String source, boolean applies, long spans, double lengthM) {
    /** Returns a zone of which no span is known yet. */
    public static ZoneUse of(Zone zone, PermitSettings settings, String source) {
        boolean applies = !settings.isOver(zone) && !settings.isAwaited(zone);
        return new ZoneUse(zone, settings.kind(zone.kind()), source, applies, 0, 0);
    }

    /** Returns the same zone with what is known of the spans. */
    public ZoneUse counted(long touching, double insideM) {
        return new ZoneUse(zone, rule, source, applies, touching, insideM);
    }
}
