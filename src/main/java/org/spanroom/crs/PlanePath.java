package org.spanroom.crs;

import java.util.Optional;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;

/**
 * The way from a plane to WGS 84 in three steps: undo the projection, turn to degrees from Greenwich, shift the datum.
 *
 * @param toGeographic GeoTools's inverse of the projection; empty for a geographic system
 * @param fromGeographic the projection
 * @param unitDeg degrees in one unit of the geographic system: 1, or 0.9 for grads
 * @param meridianDeg longitude of the prime meridian
 */
record PlanePath(
        Optional<MathTransform> toGeographic,
        Optional<MathTransform> fromGeographic,
        double unitDeg,
        double meridianDeg,
        Optional<DatumShift> shift)
        implements ReferenceSystem.Path {
    /** Meters or feet, whichever the plane has. */
    private static final double GOOD_ENOUGH_UNITS = 3e-7;

    private static final double LARGEST_CORRECTION_UNITS = 1;

    /**
     * So far from where it should be projected to, a place found belongs to other ordinates than those given, which are outside the
     * projection. The library itself says so only while Java's assertions are on.
     */
    private static final double NO_PLACE_UNITS = 1000;

    private static final double STEP_DEG = 1e-5;
    private static final int MOST_REPEATS = 2;

    @Override
    public void toLonLat(double[] pairs) {
        toGeographic.ifPresent(inverse -> unproject(inverse, fromGeographic.orElseThrow(), pairs));
        for (int at = 0; at < pairs.length; at += 2) {
            pairs[at] = pairs[at] * unitDeg + meridianDeg;
            pairs[at + 1] *= unitDeg;
        }
        if (shift.isPresent()) {
            for (int at = 0; at < pairs.length; at += 2) {
                shift.get().toWgs84(pairs, at);
            }
        }
    }

    @Override
    public void fromLonLat(double[] pairs) {
        if (shift.isPresent()) {
            for (int at = 0; at < pairs.length; at += 2) {
                shift.get().fromWgs84(pairs, at);
            }
        }
        for (int at = 0; at < pairs.length; at += 2) {
            pairs[at] = (pairs[at] - meridianDeg) / unitDeg;
            pairs[at + 1] /= unitDeg;
        }
        fromGeographic.ifPresent(transform -> transform(transform, pairs));
    }

    /**
     * Some inverses are series that miss by up to a millimeter where the projection itself is exact: the places found are projected
     * again and moved by what is missing (Newton's method; the derivatives at the first vertex serve for all, since what
     * is missing is tiny).
     */
    private static void unproject(MathTransform inverse, MathTransform projection, double[] pairs) {
        double[] wanted = pairs.clone();
        transform(inverse, pairs);
        for (int repeat = 0; repeat < MOST_REPEATS; repeat++) {
            double[] missing = pairs.clone();
            transform(projection, missing);
            double worst = 0;
            for (int at = 0; at < pairs.length; at++) {
                missing[at] = wanted[at] - missing[at];
                if (Math.abs(missing[at]) > NO_PLACE_UNITS) {
                    pairs[at] = Double.NaN;
                    missing[at] = 0;
                }
                worst = Math.abs(missing[at]) > worst ? Math.abs(missing[at]) : worst;
            }
            if (worst < GOOD_ENOUGH_UNITS || worst > LARGEST_CORRECTION_UNITS) {
                return;
            }
            move(projection, pairs, missing);
        }
    }

    private static void move(MathTransform projection, double[] pairs, double[] missing) {
        int first = firstFinite(pairs);
        double[] at = {
            pairs[first],
            pairs[first + 1],
            pairs[first] + STEP_DEG,
            pairs[first + 1],
            pairs[first],
            pairs[first + 1] + STEP_DEG
        };
        transform(projection, at);
        double xByLon = (at[2] - at[0]) / STEP_DEG;
        double yByLon = (at[3] - at[1]) / STEP_DEG;
        double xByLat = (at[4] - at[0]) / STEP_DEG;
        double yByLat = (at[5] - at[1]) / STEP_DEG;
        double determinant = xByLon * yByLat - xByLat * yByLon;
        for (int i = 0; i < pairs.length; i += 2) {
            double lon = (missing[i] * yByLat - missing[i + 1] * xByLat) / determinant;
            double lat = (missing[i + 1] * xByLon - missing[i] * yByLon) / determinant;
            if (Double.isFinite(lon) && Double.isFinite(lat)) {
                pairs[i] += lon;
                pairs[i + 1] += lat;
            }
        }
    }

    private static int firstFinite(double[] pairs) {
        int at = 0;
        while (at + 2 < pairs.length && !Double.isFinite(pairs[at] + pairs[at + 1])) {
            at += 2;
        }
        return at;
    }

    private static void transform(MathTransform transform, double[] pairs) {
        double[] result = new double[pairs.length];
        try {
            transform.transform(pairs, 0, result, 0, pairs.length / 2);
        } catch (TransformException | RuntimeException e) {
            transformOneByOne(transform, pairs, result);
        }
        System.arraycopy(result, 0, pairs, 0, pairs.length);
    }

    /** The whole array fails with its worst vertex; this saves the others. */
    private static void transformOneByOne(MathTransform transform, double[] pairs, double[] result) {
        for (int at = 0; at < pairs.length; at += 2) {
            try {
                transform.transform(pairs, at, result, at, 1);
            } catch (TransformException | RuntimeException e) {
                result[at] = Double.NaN;
                result[at + 1] = Double.NaN;
            }
        }
    }
}
