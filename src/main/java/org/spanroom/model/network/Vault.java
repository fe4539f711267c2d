package org.spanroom.model.network;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.model.Check;
import org.spanroom.model.Line;
import org.spanroom.model.Term;

/**
 * An access point where a duct can be opened: maintenance hole, handhole, vault.
 *
 * @param sequence place in the order of reading, from 0
 * @param lonDeg longitude on WGS 84 of the point, or of a point inside the footprint
 * @param latDeg latitude on WGS 84, in degrees
 * @param footprint the outer rings of the drawn outline, closed, longitude and latitude in degrees; empty for a point
 * @param kind the recorded kind, or empty
 * @param site what the records say of the work there
 * @param facts what they say of it for the crew only
 * @param rejected values that were recorded and could not be used
 */
public record Vault(
        int sequence,
        String id,
        double lonDeg,
        double latDeg,
        List<Line> footprint,
        OptionalDouble elevationM,
        String kind,
        VaultSite site,
        VaultFacts facts,
        List<RejectedValue> rejected) {
    public Vault {
        Check.notBlank("id", id);
        Check.finite("lonDeg", lonDeg);
        Check.within("latDeg", latDeg, -90, 90);
        footprint = List.copyOf(footprint);
        rejected = List.copyOf(rejected);
    }

    /** Returns the value that was recorded for a term and could not be used. */
    public Optional<RejectedValue> findRejected(Term term) {
        return rejected.stream()
                .filter(value -> term.key().equals(value.name()))
                .findFirst();
    }

    /** A vault of which nothing is recorded for the crew only, all of whose recorded values could be used. */
    public Vault(
            int sequence,
            String id,
            double lonDeg,
            double latDeg,
            List<Line> footprint,
            OptionalDouble elevationM,
            String kind,
            VaultSite site) {
        this(sequence, id, lonDeg, latDeg, footprint, elevationM, kind, site, VaultFacts.UNKNOWN, List.of());
    }

    /** A vault of whose site nothing is recorded. */
    public Vault(
            int sequence,
            String id,
            double lonDeg,
            double latDeg,
            List<Line> footprint,
            OptionalDouble elevationM,
            String kind) {
        this(sequence, id, lonDeg, latDeg, footprint, elevationM, kind, VaultSite.UNKNOWN);
    }
}
