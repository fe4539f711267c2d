package org.spanroom.crs;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.geotools.api.referencing.crs.CoordinateReferenceSystem;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.crs.ProjectedCRS;
import org.geotools.api.referencing.datum.Ellipsoid;
import org.geotools.referencing.crs.DefaultGeographicCRS;
import org.geotools.referencing.datum.BursaWolfParameters;
import org.geotools.referencing.datum.DefaultGeodeticDatum;

/**
 * The names that .prj files give to datums, with the EPSG code of the geographic system on each.
 *
 * <p>A .prj file names its datum but says nothing of the shift to WGS 84, without which positions would be off by up to some
 * hundred metres. The names and codes are those that GDAL writes for the code (a test compares them); the ellipsoid of file
 * and dataset must agree before the dataset's shift is used.
 */
final class DatumNames {
    private static final double SAME_AXIS_RATIO = 1e-6;
    private static final double GLOBAL_AXIS_SPREAD_M = 3.0;

    /** The datum's name without "D_" or "GCS_", against the geographic system's code. */
    private static final Map<String, Integer> CODE_BY_NAME = codeByName();

    private DatumNames() {}

    private static Map<String, Integer> codeByName() {
        String table =
                """
                WGS_1984 4326, WGS_1972 4322, North_American_1983 4269, North_American_1927 4267,
                North_American_1983_HARN 4152, North_American_1983_CSRS 4617, NAD_1983_2011 6318,
                NAD_1983_NSRS2007 4759, ETRS_1989 4258, European_1950 4230, OSGB_1936 4277, TM65 4299, IRENET95 4173,
                Deutsches_Hauptdreiecksnetz 4314, Amersfoort 4289, MGI 4312, NTF 4275, RGF_1993 4171, Belge_1972 4313,
                Belge_1950 4215, CH1903 4149, CH1903+ 4150, S_JTSK 4156, Monte_Mario 4265, Pulkovo_1942 4284,
                Pulkovo_1995 4200, Hungarian_1972 4237, Dealul_Piscului_1930 4316, RT_1990 4124, SWEREF99 4619,
                NGO_1948 4273, Tokyo 4301, JGD_2000 4612, JGD_2011 6668, Korean_2000 4737, Hong_Kong_1980 4611,
                Hu_Tzu_Shan 4236, Kertau 4245, Luzon_1911 4253, Indian_1975 4240, Australian_1966 4202,
                Australian_1984 4203, GDA_1994 4283, GDA2020 7844, New_Zealand_1949 4272, NZGD_2000 4167, Cape 4222,
                Hartebeesthoek_1994 4148, Arc_1960 4210, Arc_1950 4209, Adindan 4201, Merchich 4261, Minna 4263,
                South_American_1969 4618, SIRGAS_2000 4674, Provisional_S_American_1956 4248, Campo_Inchauspe 4221,
                Chos_Malal_1914 4160, Puerto_Rico 4139, Old_Hawaiian 4135
                """;
        var codes = new TreeMap<String, Integer>();
        for (String entry : table.strip().split(",\\s*", -1)) {
            String[] nameAndCode = entry.split(" ", -1);
            codes.put(nameAndCode[0].toLowerCase(Locale.ROOT), Integer.valueOf(nameAndCode[1]));
        }
        return codes;
    }

    /** Returns the names and codes, lower case, for the test that compares them with GDAL's. */
    static Map<String, Integer> all() {
        return Map.copyOf(CODE_BY_NAME);
    }

    static GeographicCRS geographic(CoordinateReferenceSystem plane) {
        return plane instanceof ProjectedCRS projected
                ? projected.getBaseCRS()
                : (GeographicCRS) plane;
    }

    /** Returns whether the system is plain degrees on WGS 84, so that nothing has to be computed. */
    static boolean isWgs84Degrees(CoordinateReferenceSystem plane) {
        if (!(plane instanceof GeographicCRS geographic)
                || !(DefaultGeodeticDatum.isWGS84(geographic.getDatum()) || plainName(geographic).equals("wgs_1984"))) {
            return false;
        }
        return geographic.getDatum().getPrimeMeridian().getGreenwichLongitude() == 0
                && sameEllipsoid(geographic, DefaultGeographicCRS.WGS84)
                && geographic
                        .getCoordinateSystem()
                        .getAxis(0)
                        .getUnit()
                        .equals(DefaultGeographicCRS.WGS84.getCoordinateSystem().getAxis(0).getUnit());
    }

    /** Finds the shift to WGS 84 that a text without one should have had; empty where it has one or needs none. */
    static Optional<BursaWolfParameters> findShift(CoordinateReferenceSystem plane) {
        GeographicCRS geographic = geographic(plane);
        if (hasShift(geographic)) {
            return Optional.empty();
        }
        return Optional.ofNullable(CODE_BY_NAME.get(plainName(geographic)))
                .map(code -> geographic(EpsgDataset.decode(code)))
                .filter(known -> sameEllipsoid(known, geographic))
                .flatMap(known -> firstShift((DefaultGeodeticDatum) known.getDatum()));
    }

    private static Optional<BursaWolfParameters> firstShift(DefaultGeodeticDatum datum) {
        return Optional.ofNullable(datum.getBursaWolfParameters(DefaultGeodeticDatum.WGS84));
    }

    /** Returns the text with TOWGS84 put in where WKT 1 wants it: in the datum, after the ellipsoid. */
    static String withShift(String text, BursaWolfParameters shift) {
        int ellipsoid = text.toUpperCase(Locale.ROOT).indexOf("SPHEROID");
        int depth = 0;
        for (int at = ellipsoid; at >= 0 && at < text.length(); at++) {
            char c = text.charAt(at);
            depth += "[(".indexOf(c) >= 0 ? 1 : "])".indexOf(c) >= 0 ? -1 : 0;
            if (depth == 0 && "])".indexOf(c) >= 0) {
                return text.substring(0, at + 1) + ",TOWGS84["
                        + List.of(shift.dx, shift.dy, shift.dz, shift.ex, shift.ey, shift.ez, shift.ppm).toString()
                                .replaceAll("[\\[\\] ]", "")
                        + "]" + text.substring(at + 1);
            }
        }
        return text;
    }

    /** Returns a warning where the datum's shift to WGS 84 is not known although there must be one. */
    static Optional<String> caution(CoordinateReferenceSystem plane) {
        GeographicCRS geographic = geographic(plane);
        boolean fine = hasShift(geographic)
                || CODE_BY_NAME.containsKey(plainName(geographic))
                || isGlobal(geographic.getDatum().getEllipsoid());
        return fine
                ? Optional.empty()
                : Optional.of("the shift of datum '" + geographic.getDatum().getName().getCode()
                        + "' to WGS 84 is not known: positions may be off by some hundred metres");
    }

    /** Datums on GRS 80 and WGS 84 are those of the satellite age, within some metres of WGS 84 itself. */
    private static boolean isGlobal(Ellipsoid ellipsoid) {
        return Math.abs(ellipsoid.getSemiMajorAxis() - 6378137) < GLOBAL_AXIS_SPREAD_M
                && Math.abs(ellipsoid.getInverseFlattening() - 298.257) < 0.01;
    }

    private static boolean hasShift(GeographicCRS geographic) {
        return geographic.getDatum() instanceof DefaultGeodeticDatum datum
                && datum.getBursaWolfParameters().length > 0;
    }

    private static boolean sameEllipsoid(GeographicCRS one, GeographicCRS other) {
        Ellipsoid a = one.getDatum().getEllipsoid();
        Ellipsoid b = other.getDatum().getEllipsoid();
        return Math.abs(a.getSemiMajorAxis() / b.getSemiMajorAxis() - 1) < SAME_AXIS_RATIO
                && Math.abs(a.getSemiMinorAxis() / b.getSemiMinorAxis() - 1) < SAME_AXIS_RATIO;
    }

    private static String plainName(GeographicCRS geographic) {
        return geographic
                .getDatum()
                .getName()
                .getCode()
                .replaceFirst("^D_", "")
                .replace(' ', '_')
                .toLowerCase(Locale.ROOT);
    }
}
