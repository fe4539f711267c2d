package org.spanroom.model.network;

import java.util.List;
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
        String positionQuality) {
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

    /** Returns the same span with another duct. */
    public Span withDuct(Duct other) {
        return with(id, other);
    }

    /** Returns the same span under another name. */
    public Span withId(String otherId) {
        return with(otherId, duct);
    }

    private Span with(String otherId, Duct otherDuct) {
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
                positionQuality);
    }
}
