package org.spanroom.model.network;

import java.util.List;
import java.util.OptionalDouble;
import org.spanroom.model.Check;
import org.spanroom.model.Line;

/**
 * One duct between two consecutive vaults: the unit of work, of scoring and of cost.
 *
 * @param id stable from run to run on the same data, unique within a run
 * @param duct attributes of the piece of which least had to be assumed; of equals the first
 * @param routeIds the routes that the span consists of, in order from {@code from} to {@code to}
 * @param from the vault where {@code lonLat} begins
 * @param lonLat the drawn line between the vaults, degrees on WGS 84
 * @param ground the same vertices in meters east and north of the first (and up, where elevations are known); each
 *     step has its true ground length
 * @param lengthM the length that counts: drawn, or recorded where the config says so
 * @param drawnLengthM ground length of the drawn line
 * @param fromOffsetM distance on the ground from the line's beginning to vault {@code from}, 0 inside a footprint
 * @param fromFacts what is recorded of the duct at vault {@code from}
 */
public record Span(
        String id,
        Duct duct,
        List<String> routeIds,
        Vault from,
        Vault to,
        Line lonLat,
        Line ground,
        double lengthM,
        double drawnLengthM,
        double fromOffsetM,
        double toOffsetM,
        String positionQuality,
        EndFacts fromFacts,
        EndFacts toFacts) {
    public Span {
        Check.notBlank("id", id);
        Check.positive("lengthM", lengthM);
        Check.positive("drawnLengthM", drawnLengthM);
        routeIds = List.copyOf(routeIds);
        if (lonLat.size() != ground.size()) {
            throw new IllegalArgumentException(
                    "lonLat and ground must have the same vertices, were " + lonLat.size() + " and " + ground.size());
        }
    }

    /** A span of whose duct nothing is recorded at the vaults. */
    public Span(
            String id,
            Duct duct,
            List<String> routeIds,
            Vault from,
            Vault to,
            Line lonLat,
            Line ground,
            double lengthM,
            double drawnLengthM,
            double fromOffsetM,
            double toOffsetM,
            String positionQuality) {
        this(
                id,
                duct,
                routeIds,
                from,
                to,
                lonLat,
                ground,
                lengthM,
                drawnLengthM,
                fromOffsetM,
                toOffsetM,
                positionQuality,
                EndFacts.UNKNOWN,
                EndFacts.UNKNOWN);
    }

    /** Returns what is recorded of the duct at one of its vaults. */
    public EndFacts factsAt(SpanEnd end) {
        return end == SpanEnd.A ? fromFacts : toFacts;
    }

    /** Returns the length of each live cable that can be drawn out at one end: as recorded of this duct, else of the vault. */
    public OptionalDouble slackM(SpanEnd end) {
        OptionalDouble ownM = factsAt(end).slackM();
        return ownM.isPresent() ? ownM : end.vaultOf(this).site().cableSlackM();
    }

    /** Returns the same span with another duct, and with what is recorded of it at the vaults. */
    public Span withDuct(Duct other, EndFacts otherFromFacts, EndFacts otherToFacts) {
        return with(id, other, otherFromFacts, otherToFacts);
    }

    /** Returns the same span with another duct. */
    public Span withDuct(Duct other) {
        return with(id, other, fromFacts, toFacts);
    }

    /** Returns the same span under another name. */
    public Span withId(String otherId) {
        return with(otherId, duct, fromFacts, toFacts);
    }

    private Span with(String otherId, Duct otherDuct, EndFacts otherFromFacts, EndFacts otherToFacts) {
        return new Span(
                otherId,
                otherDuct,
                routeIds,
                from,
                to,
                lonLat,
                ground,
                lengthM,
                drawnLengthM,
                fromOffsetM,
                toOffsetM,
                positionQuality,
                otherFromFacts,
                otherToFacts);
    }
}
