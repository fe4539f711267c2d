package org.spanroom.model.network;

import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.Check;
import org.spanroom.model.Line;

/**
 * A line drawn in the GIS along one duct: one part of one feature of the routes layer.
 *
 * @param sequence place of this part in the order of reading, from 0; what makes runs repeatable
 * @param id the owner's name of the route, or the feature's number where it has none
 * @param lonLat the drawn line, degrees on WGS 84, with elevations in meters where the file has them
 * @param recordedLengthM the length that the records give for the whole route
 * @param fromVaultId the vault that the records name at the first vertex
 * @param toVaultId the vault that the records name at the last vertex
 * @param positionQuality the recorded word for how well the position is known, or empty
 * @param ends what the records say of the duct at those two vaults
 */
public record Route(
        int sequence,
        String id,
        Duct duct,
        Line lonLat,
        OptionalDouble recordedLengthM,
        Optional<String> fromVaultId,
        Optional<String> toVaultId,
        String positionQuality,
        RouteEnds ends) {
    public Route {
        Check.notNegative("sequence", sequence);
        Check.notBlank("id", id);
    }

    /** A route of whose duct nothing is recorded at the vaults. */
    public Route(
            int sequence,
            String id,
            Duct duct,
            Line lonLat,
            OptionalDouble recordedLengthM,
            Optional<String> fromVaultId,
            Optional<String> toVaultId,
            String positionQuality) {
        this(sequence, id, duct, lonLat, recordedLengthM, fromVaultId, toVaultId, positionQuality, RouteEnds.UNKNOWN);
    }

    /** Returns the vault that the records name at one end: A is the first vertex. */
    public Optional<String> vaultId(SpanEnd end) {
        return end == SpanEnd.A ? fromVaultId : toVaultId;
    }
}
