package org.spanroom.crs;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import javax.measure.Unit;
import javax.measure.quantity.Length;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.operation.MathTransform;
import org.geotools.api.referencing.operation.TransformException;
import org.geotools.referencing.CRS;
import si.uom.SI;

/** From GeoTools's objects to ours: the transforms both ways, and what the system is called. */
final class Transforms {
    private static final double RIGHT_ANGLE_RAD = Math.PI / 2;

    private Transforms() {}

    /**
     * Returns the horizontal part of a GeoTools system as one of ours.
     *
     * @param prjText the text of a .prj file that it was read from, to be kept
     */
    static ReferenceSystem systemOf(CoordinateReferenceSystem any, OptionalInt code, Optional<String> prjText) {
        CoordinateReferenceSystem plane = horizontal(any);
        var description = new ReferenceSystem.Description(
                plane.getName().getCode(),
                code,
                WktWriter.ogc(plane, code),
                prjText.orElseGet(() -> EsriWkt.of(plane, code.isPresent())),
                unitLengthM(plane),
                Datums.caution(geographic(plane)),
                area(plane));
        return new ReferenceSystem(description, path(plane, code.isPresent()));
    }

    private static Optional<AreaOfUse> area(CoordinateReferenceSystem plane) {
        return Optional.ofNullable(CRS.getGeographicBoundingBox(plane))
                .map(box -> new AreaOfUse(
                        box.getWestBoundLongitude(),
                        box.getSouthBoundLatitude(),
                        box.getEastBoundLongitude(),
                        box.getNorthBoundLatitude()));
    }

    static CoordinateReferenceSystem horizontal(CoordinateReferenceSystem any) {
        CoordinateReferenceSystem plane = CRS.getHorizontalCRS(any);
        if (!(plane instanceof ProjectedCRS) && !(plane instanceof GeographicCRS)) {
            throw new IllegalArgumentException(
                    "'" + any.getName().getCode() + "' has no horizontal coordinates that can be put on a map");
        }
        return plane;
    }

    static GeographicCRS geographic(CoordinateReferenceSystem plane) {
        return plane instanceof ProjectedCRS projected ? projected.getBaseCRS() : (GeographicCRS) plane;
    }

    static OptionalDouble unitLengthM(CoordinateReferenceSystem plane) {
        if (plane instanceof GeographicCRS) {
            return OptionalDouble.empty();
        }
        Unit<Length> unit = plane.getCoordinateSystem().getAxis(0).getUnit().asType(Length.class);
        return OptionalDouble.of(unit.getConverterTo(SI.METRE).convert(1.0));
    }

    /** Returns the degrees in one unit of a geographic system; through the right angle, so that degrees give 1 exactly. */
    static double unitDeg(GeographicCRS geographic) {
        Unit<?> unit = geographic.getCoordinateSystem().getAxis(0).getUnit();
        double units = SI.RADIAN
                .getConverterTo(unit.asType(javax.measure.quantity.Angle.class))
                .convert(RIGHT_ANGLE_RAD);
        double deg = 90 / units;
        return Math.abs(deg - Math.rint(deg * 10) / 10) < 1e-9 ? Math.rint(deg * 10) / 10 : deg;
    }

    private static ReferenceSystem.Path path(CoordinateReferenceSystem plane, boolean ofDataset) {
        GeographicCRS geographic = geographic(plane);
        double unitDeg = unitDeg(geographic);
        double meridianDeg = meridianDeg(geographic, ofDataset);
        Optional<DatumShift> shift = (ofDataset
                        ? Datums.findShiftOfDataset(geographic)
                        : Datums.findShiftOfText(geographic))
                .map(found -> new DatumShift(found, geographic.getDatum().getEllipsoid()));
        if (plane instanceof GeographicCRS) {
            boolean nothingToDo = shift.isEmpty() && unitDeg == 1 && meridianDeg == 0;
            return nothingToDo
                    ? ReferenceSystem.Path.NONE
                    : new PlanePath(Optional.empty(), Optional.empty(), unitDeg, meridianDeg, shift);
        }
        try {
            MathTransform projection = CRS.findMathTransform(geographic, plane, true);
            return new PlanePath(
                    Optional.of(projection.inverse()), Optional.of(projection), unitDeg, meridianDeg, shift);
        } catch (FactoryException | TransformException e) {
            throw new IllegalArgumentException(
                    "no transformation is known from '" + plane.getName().getCode() + "' to WGS 84"
                            + DefinitionParser.inParentheses(String.valueOf(e.getMessage())),
                    e);
        }
    }

    /**
     * Returns the longitude of the prime meridian. WKT 1 leaves open in which unit it is written; programs agree on degrees also where
     * the system itself is in grads, and so GeoTools's reading of a text is wrong.
     */
    static double meridianDeg(GeographicCRS geographic, boolean ofDataset) {
        var meridian = geographic.getDatum().getPrimeMeridian();
        if (!ofDataset) {
            return meridian.getGreenwichLongitude();
        }
        double deg = Math.toDegrees(
                meridian.getAngularUnit().getConverterTo(SI.RADIAN).convert(meridian.getGreenwichLongitude()));
        return Math.rint(deg * 1e12) / 1e12;
    }
}
