package org.spanroom.input;

import java.util.Arrays;
import java.util.Optional;
import org.spanroom.crs.ReferenceSystem;

/**
 * Watches the ordinates of a layer for the usual mistakes about them: latitude first, degrees treated as lengths, lengths treated as
 * degrees. It judges by most features, so that a few bad ones raise no alarm about the layer.
 */
final class OrdinateSuspicion {
    private static final double MOST_LATITUDE_DEG = 90;
    private static final double MOST_LONGITUDE_DEG = 180;

    /** Beyond the polar circles there are few cities; a layer there may well have latitude and longitude exchanged. */
    private static final double POLAR_CIRCLE_DEG = 66.6;

    /** What to do about a layer whose two ordinates seem to be exchanged. */
    static final String REMEDY = "Change its axis_order in the config, or export it with longitude or easting first";

    /** Vertices that are kept, evenly over the file: enough to judge the whole layer by. */
    private static final int SAMPLE = 1024;

    private final ReferenceSystem crs;
    private final boolean geographic;
    private final double[] sample = new double[2 * SAMPLE];
    private int kept;
    private long stride = 1;
    private long seen;
    private long exchanged;
    private long polar;
    private long degrees;
    private long lengths;

    OrdinateSuspicion(ReferenceSystem crs) {
        this.crs = crs;
        this.geographic = crs.isGeographic();
    }

    /** Notes the first vertex of a part, in the layer's own ordinates. */
    void see(double x, double y) {
        if ((seen & (stride - 1)) == 0) {
            keep(x, y);
        }
        seen++;
        double sizeX = Math.abs(x);
        double sizeY = Math.abs(y);
        exchanged += sizeY > MOST_LATITUDE_DEG && sizeY <= MOST_LONGITUDE_DEG && sizeX <= MOST_LATITUDE_DEG ? 1 : 0;
        polar += sizeY > POLAR_CIRCLE_DEG && sizeY <= MOST_LATITUDE_DEG && sizeX < POLAR_CIRCLE_DEG ? 1 : 0;
        degrees += sizeX <= MOST_LONGITUDE_DEG && sizeY <= MOST_LATITUDE_DEG ? 1 : 0;
        lengths += sizeX > 2 * MOST_LONGITUDE_DEG || sizeY > 2 * MOST_LONGITUDE_DEG ? 1 : 0;
    }

    /** Keeps every n-th vertex, n doubling whenever the sample is full; so which ones depends only on the file. */
    private void keep(double x, double y) {
        if (kept == SAMPLE) {
            kept = SAMPLE / 2;
            stride *= 2;
            for (int i = 0; i < kept; i++) {
                sample[2 * i] = sample[4 * i];
                sample[2 * i + 1] = sample[4 * i + 1];
            }
        }
        sample[2 * kept] = x;
        sample[2 * kept + 1] = y;
        kept++;
    }

    /** Finds what to report about the layer. */
    Optional<String> find() {
        if (geographic && most(lengths)) {
            return Optional.of("most ordinates are too large for degrees: the layer may be in a projected system. "
                    + "Give it with --crs EPSG:code");
        }
        if (geographic && most(exchanged)) {
            return Optional.of(
                    "most latitudes are beyond 90 degrees: longitude and latitude seem to be swapped. " + REMEDY);
        }
        if (geographic && most(polar)) {
            return Optional.of(
                    "most features are beyond a polar circle: longitude and latitude may be swapped. " + REMEDY);
        }
        if (!geographic && most(degrees)) {
            return Optional.of("most ordinates look like degrees although the reference system is projected: "
                    + "it may have to be --crs EPSG:4326");
        }
        return outside();
    }

    /** Looks where the places would be as they are, and with their ordinates exchanged. */
    private Optional<String> outside() {
        if (kept == 0 || 2 * farOutside(crs, false) <= kept) {
            return Optional.empty();
        }
        String found = "most features are far outside the area of use of " + crs.name() + ": ";
        return Optional.of(found
                + (2 * farOutside(crs, true) <= kept
                        ? "the two ordinates seem to be swapped (it has easting or longitude first). " + REMEDY
                        : "it may be another system; give it with --crs EPSG:code"));
    }

    /** Returns true if most places are far outside the area of a system, and would not with the ordinates exchanged. */
    boolean fitsOnlyExchanged(ReferenceSystem system) {
        return kept > 0 && 2 * farOutside(system, false) > kept && 2 * farOutside(system, true) <= kept;
    }

    /** Returns where the places lie, as they are or with the two ordinates exchanged. */
    Optional<Spread> spread(boolean exchanged) {
        return Spread.of(places(exchanged));
    }

    private int farOutside(ReferenceSystem system, boolean exchanged) {
        double[] places = places(exchanged);
        int outside = 0;
        for (int i = 0; i < places.length; i += 2) {
            outside += Double.isNaN(places[i]) || system.isFarOutside(places[i], places[i + 1]) ? 1 : 0;
        }
        return outside;
    }

    private double[] places(boolean exchanged) {
        double[] places = Arrays.copyOf(sample, 2 * kept);
        for (int i = 0; exchanged && i < places.length; i += 2) {
            places[i] = sample[i + 1];
            places[i + 1] = sample[i];
        }
        crs.toLonLat(places, 2);
        return places;
    }

    private boolean most(long count) {
        return 2 * count > seen;
    }
}
