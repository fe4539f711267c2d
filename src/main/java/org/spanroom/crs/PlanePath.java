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
    private static final double LARGEST_CORRECTION_DEG = 1e-6;

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
     * Some inverses are series that miss by up to a millimetre where the projection itself is exact: the place found is projected
     * again and moved by what is missing.
     */
    private static void unproject(MathTransform inverse, MathTransform projection, double[] pairs) {
        transform(inverse, pairs);
        double[] again = pairs.clone();
        transform(projection, again);
        transform(inverse, again);
        for (int at = 0; at < pairs.length; at++) {
            double missing = pairs[at] - again[at];
            if (Math.abs(missing) < LARGEST_CORRECTION_DEG) {
                pairs[at] += missing;
            }
        }
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
