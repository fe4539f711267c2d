package org.spanroom.input;

import java.util.Optional;

/**
 * Watches the ordinates of a layer for the usual mistakes about them: latitude first, degrees taken for lengths, lengths taken for
 * degrees. It judges by most features, so that a few bad ones raise no alarm about the layer.
 */
final class OrdinateSuspicion {
    private static final double MOST_LATITUDE_DEG = 90;
    private static final double MOST_LONGITUDE_DEG = 180;

    /** Beyond the polar circles there are few cities; a layer there may well have latitude and longitude exchanged. */
    private static final double POLAR_CIRCLE_DEG = 66.6;

    private final boolean geographic;
    private long seen;
    private long exchanged;
    private long polar;
    private long degrees;
    private long lengths;

    OrdinateSuspicion(boolean geographic) {
        this.geographic = geographic;
    }

    /** Notes the first vertex of a part, in the layer's own ordinates. */
    void see(double x, double y) {
        seen++;
        double sizeX = Math.abs(x);
        double sizeY = Math.abs(y);
        exchanged += sizeY > MOST_LATITUDE_DEG && sizeY <= MOST_LONGITUDE_DEG && sizeX <= MOST_LATITUDE_DEG ? 1 : 0;
        polar += sizeY > POLAR_CIRCLE_DEG && sizeY <= MOST_LATITUDE_DEG && sizeX < POLAR_CIRCLE_DEG ? 1 : 0;
        degrees += sizeX <= MOST_LONGITUDE_DEG && sizeY <= MOST_LATITUDE_DEG ? 1 : 0;
        lengths += sizeX > 2 * MOST_LONGITUDE_DEG || sizeY > 2 * MOST_LONGITUDE_DEG ? 1 : 0;
    }

    /** Finds what is to be said about the layer. */
    Optional<String> find() {
        if (geographic && most(lengths)) {
            return Optional.of("most ordinates are too large for degrees: is the layer in a projected system? "
                    + "Give it with --crs EPSG:code");
        }
        if (geographic && most(exchanged)) {
            return Optional.of("most latitudes lie beyond 90 degrees: longitude and latitude seem to be exchanged");
        }
        if (geographic && most(polar)) {
            return Optional.of("most features lie beyond a polar circle: perhaps longitude and latitude are exchanged");
        }
        if (!geographic && most(degrees)) {
            return Optional.of("most ordinates look like degrees although the reference system is projected: "
                    + "perhaps it should be --crs EPSG:4326");
        }
        return Optional.empty();
    }

    private boolean most(long count) {
        return 2 * count > seen;
    }
}
