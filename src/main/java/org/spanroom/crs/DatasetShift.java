package org.spanroom.crs;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.geotools.api.referencing.FactoryException;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.referencing.CRS;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.datum.BursaWolfParameters;
import org.geotools.referencing.datum.DefaultGeodeticDatum;

/**
 * The shift to WGS 84 that the EPSG dataset holds for a geographic system, always as a position vector transformation.
 *
 * <p>It is taken from the operation that GeoTools chooses rather than from its datum object: of an operation by coordinate frame
 * rotation that object turns the sign of the first angle only, where all three must turn (seen in 33.1; 72 m in the Netherlands).
 */
final class DatasetShift {
    private static final Pattern OPERATION = Pattern.compile(
            "(INVERSE_MT\\[)?PARAM_MT\\[\"(Coordinate Frame Rotation|Position Vector|Geocentric translations|Molodenski)[^\"]*\"");

    private static final Pattern PARAMETER =
            Pattern.compile("PARAMETER\\[\"(dx|dy|dz|ex|ey|ez|ppm)\", ([-+0-9.eE]+)\\]");

    private DatasetShift() {}

    static Optional<BursaWolfParameters> find(GeographicCRS geographic) {
        try {
            String chain = CRS.findMathTransform(geographic, DefaultGeographicCRS.WGS84, true)
                    .toWKT()
                    .replaceAll("\\s+", " ");
            Matcher operation = OPERATION.matcher(chain);
            if (!operation.find()) {
                return Optional.empty();
            }
            boolean inverse = operation.group(1) != null;
            boolean frame = operation.group(2).startsWith("Coordinate");
            return Optional.of(read(chain, operation.end(), inverse ? -1 : 1, frame ? -1 : 1))
                    .filter(shift -> !shift.isIdentity());
        } catch (FactoryException e) {
            return Optional.empty();
        }
    }

    /** Turning every sign reverses a shift up to terms of second order, millimeters for shifts of some hundred meters. */
    private static BursaWolfParameters read(String chain, int from, int sign, int turnSign) {
        var shift = new BursaWolfParameters(DefaultGeodeticDatum.WGS84);
        Matcher parameter = PARAMETER.matcher(chain);
        for (int at = from; parameter.find(at); at = parameter.end()) {
            double value = sign * Double.parseDouble(parameter.group(2));
            switch (parameter.group(1)) {
                case "dx" -> shift.dx = value;
                case "dy" -> shift.dy = value;
                case "dz" -> shift.dz = value;
                case "ex" -> shift.ex = turnSign * value;
                case "ey" -> shift.ey = turnSign * value;
                case "ez" -> shift.ez = turnSign * value;
                default -> shift.ppm = value;
            }
        }
        return shift;
    }
}
