package org.spanroom.crs;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.measure.UnitConverter;
import javax.measure.quantity.Length;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.cs.CoordinateSystemAxis;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import si.uom.SI;

/** From GeoTools's objects to ours: transforms both ways, and what the system is called. */
final class Transforms {
    private Transforms() {}

    /**
     * Returns the horizontal part of a GeoTools system as one of ours.
     *
     * @param sourceText the definition that it was read from, kept where it is one for .prj files
     */
    static ReferenceSystem systemOf(CoordinateReferenceSystem any, OptionalInt code, Optional<String> sourceText) {
        CoordinateReferenceSystem plane = horizontal(any);
        var description = new ReferenceSystem.Description(
                plane.getName().getCode(),
                code,
                WktWriter.ogc(plane, code),
                sourceText.orElseGet(() -> WktWriter.esri(plane)),
                unitLengthM(plane),
                DatumNames.caution(plane));
        return new ReferenceSystem(description, path(plane));
    }

    static CoordinateReferenceSystem horizontal(CoordinateReferenceSystem any) {
        CoordinateReferenceSystem plane = CRS.getHorizontalCRS(any);
        if (!(plane instanceof ProjectedCRS) && !(plane instanceof GeographicCRS)) {
            throw new IllegalArgumentException(
                    "'" + any.getName().getCode() + "' has no horizontal coordinates that can be put on a map");
        }
        return plane;
    }

    static OptionalDouble unitLengthM(CoordinateReferenceSystem plane) {
        if (plane instanceof GeographicCRS) {
            return OptionalDouble.empty();
        }
        UnitConverter toMetres = plane.getCoordinateSystem()
                .getAxis(0)
                .getUnit()
                .asType(Length.class)
                .getConverterTo(SI.METRE);
        return OptionalDouble.of(toMetres.convert(1.0));
    }

    static ReferenceSystem.Path path(CoordinateReferenceSystem plane) {
        try {
            MathTransform there = CRS.findMathTransform(plane, DefaultGeographicCRS.WGS84, true);
            return new GeoToolsPath(there, there.inverse(), northingFirst(plane));
        } catch (FactoryException | TransformException e) {
            throw new IllegalArgumentException(
                    "no way is known from '" + plane.getName().getCode() + "' to WGS 84: "
                            + DefinitionParser.abridged(String.valueOf(e.getMessage())),
                    e);
        }
    }

    /** At the poles both axes point the same way and only their names tell them apart. */
    private static boolean northingFirst(CoordinateReferenceSystem plane) {
        return switch (CRS.getAxisOrder(plane)) {
            case NORTH_EAST -> true;
            case EAST_NORTH -> false;
            default -> {
                CoordinateSystemAxis first = plane.getCoordinateSystem().getAxis(0);
                String name = first.getName().getCode().toLowerCase(Locale.ROOT);
                yield name.contains("north") || name.contains("latitude") || name.equals("y");
            }
        };
    }

    /** A pair of GeoTools transforms, with the order of ordinates put right around them. */
    private record GeoToolsPath(MathTransform there, MathTransform back, boolean northingFirst)
            implements ReferenceSystem.Path {
        @Override
        public void toLonLat(double[] pairs) {
            swapIfNeeded(pairs);
            transform(there, pairs);
        }

        @Override
        public void fromLonLat(double[] pairs) {
            transform(back, pairs);
            swapIfNeeded(pairs);
        }

        private void swapIfNeeded(double[] pairs) {
            if (northingFirst) {
                for (int at = 0; at < pairs.length; at += 2) {
                    double first = pairs[at];
                    pairs[at] = pairs[at + 1];
                    pairs[at + 1] = first;
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
}
