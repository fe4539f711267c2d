package org.spanroom.sample;

import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.spanroom.output.table.Shape;

/**
 * One feature of the vaults layer, in the city's plane.
 *
 * @param link true where it is between two districts
 * @param fittings what is known of the inside
 * @param drawn false for a feature without geometry
 */
record VaultFeature(
        int district,
        boolean link,
        String id,
        String kind,
        OptionalDouble elevationM,
        Fittings fittings,
        double x,
        double y,
        boolean drawn) {
    /** What is recorded of a vault's inside and its cover, each as written or empty. */
    record Fittings(String volume, String water, String surface, String hold, OptionalInt slackFt, CrewFacts crew) {}

    VaultFeature movedBy(double dx, double dy) {
        return new VaultFeature(district, link, id, kind, elevationM, fittings, x + dx, y + dy, drawn);
    }

    VaultFeature withId(String otherId) {
        return new VaultFeature(district, link, otherId, kind, elevationM, fittings, x, y, drawn);
    }

    VaultFeature withoutElevation() {
        return new VaultFeature(district, link, id, kind, OptionalDouble.empty(), fittings, x, y, drawn);
    }

    VaultFeature notDrawn() {
        return new VaultFeature(district, link, id, kind, elevationM, fittings, x, y, false);
    }

    Shape shape() {
        return drawn ? Shape.point(CityPlane.lonDeg(x), CityPlane.latDeg(y)) : Shape.EMPTY;
    }
}
