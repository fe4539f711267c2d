package org.spanroom.crs;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import org.geotools.api.referencing.crs.GeographicCRS;
import org.geotools.api.referencing.datum.Ellipsoid;
import org.geotools.referencing.datum.BursaWolfParameters;
import org.geotools.referencing.datum.DefaultGeodeticDatum;

/**
 * Which shift leads from a datum to WGS 84, and what .prj files call it.
 *
 * <p>A .prj file names its datum but says nothing of the shift, without which positions would be off by up to some hundred
 * meters. Names and codes are those that GDAL writes (a test compares them); the ellipsoids of file and dataset must agree
 * before the dataset's shift is used.
 */
final class Datums {
    private static final double SAME_AXIS_RATIO = 1e-6;
    private static final double WGS84_SEMI_MAJOR_M = 6378137;
    private static final double WGS84_INVERSE_FLATTENING = 298.257223563;

    /** Datums that coincide with WGS 84 for maps, so that the dataset need not be opened to learn it. */
    private static final Set<String> SAME_AS_WGS84 = Set.of(
            "wgs_1984",
            "world_geodetic_system_1984",
            "wgs_84",
            "north_american_1983",
            "north_american_datum_1983",
            "nad83",
            "etrs_1989",
            "etrs89",
            "european_terrestrial_reference_system_1989");

    /** Name in .prj files, and code of the geographic system on the datum. */
    private static final String PRJ_NAMES = """
            WGS_1984 4326, WGS_1972 4322, North_American_1983 4269, North_American_1927 4267,
            North_American_1983_HARN 4152, North_American_1983_CSRS 4617, NAD_1983_2011 6318, NAD_1983_NSRS2007 4759,
            ETRS_1989 4258, European_1950 4230, OSGB_1936 4277, TM65 4299, IRENET95 4173,
            Deutsches_Hauptdreiecksnetz 4314, Amersfoort 4289, MGI 4312, NTF 4275, RGF_1993 4171, Belge_1972 4313,
            Belge_1950 4215, CH1903 4149, CH1903+ 4150, S_JTSK 4156, Monte_Mario 4265, Pulkovo_1942 4284,
            Pulkovo_1995 4200, Hungarian_1972 4237, Dealul_Piscului_1933 4316, Pulkovo_1942_Adj_1958 4179, RT_1990 4124,
            SWEREF99 4619, NGO_1948 4273, Tokyo 4301, JGD_2000 4612, JGD_2011 6668, Korea_2000 4737,
            Hong_Kong_1980 4611, Hu_Tzu_Shan 4236, Kertau 4245, Luzon_1911 4253, Indian_1975 4240,
            Australian_1966 4202, Australian_1984 4203, GDA_1994 4283, New_Zealand_1949 4272, NZGD_2000 4167,
            Cape 4222, Hartebeesthoek_1994 4148, Arc_1960 4210, Arc_1950 4209, Adindan 4201, Merchich 4261, Minna 4263,
            South_American_1969 4618, SIRGAS_2000 4674, Provisional_S_American_1956 4248, Campo_Inchauspe 4221,
            Chos_Malal_1914 4160, Puerto_Rico 4139, Old_Hawaiian 4135, Jamaica_1969 4242
            """;

    private static final Map<String, Integer> CODE_BY_PRJ_NAME = codeByPrjName();

    private Datums() {}

    private static Map<String, Integer> codeByPrjName() {
        var codes = new TreeMap<String, Integer>(String.CASE_INSENSITIVE_ORDER);
        for (String entry : PRJ_NAMES.strip().split(",\\s*", -1)) {
            String[] nameAndCode = entry.split(" ", -1);
            codes.put(nameAndCode[0], Integer.valueOf(nameAndCode[1]));
        }
        return codes;
    }

    /** Returns the names in .prj files without their prefixes, and the codes. */
    static Map<String, Integer> prjNames() {
        return Map.copyOf(CODE_BY_PRJ_NAME);
    }

    /** Finds what .prj files call the datum of a system, without "D_" or "GCS_". */
    static Optional<String> findPrjName(GeographicCRS geographic) {
        return geographic.getIdentifiers().stream()
                .map(identifier -> identifier.getCode())
                .flatMap(code -> CODE_BY_PRJ_NAME.entrySet().stream()
                        .filter(entry -> code.equals(String.valueOf(entry.getValue())))
                        .map(Map.Entry::getKey))
                .findFirst()
                .or(() -> CODE_BY_PRJ_NAME.keySet().stream()
                        .filter(name -> name.equalsIgnoreCase(plainName(geographic)))
                        .findFirst());
    }

    /** Finds the shift to WGS 84 of a system that was read from a text: the text's own, else the dataset's for its name. */
    static Optional<BursaWolfParameters> findShiftOfText(GeographicCRS geographic) {
        return ownShift(geographic).or(() -> findShiftByName(geographic)).filter(shift -> !shift.isIdentity());
    }

    /** Finds the shift to WGS 84 of a system of the dataset; empty if none is needed. */
    static Optional<BursaWolfParameters> findShiftOfDataset(GeographicCRS geographic) {
        if (SAME_AS_WGS84.contains(plainName(geographic))) {
            return Optional.empty();
        }
        return isNad27(geographic) ? Optional.of(nad27()) : DatasetShift.find(geographic);
    }

    private static Optional<BursaWolfParameters> findShiftByName(GeographicCRS geographic) {
        if (SAME_AS_WGS84.contains(plainName(geographic))) {
            return Optional.empty();
        }
        return Optional.ofNullable(CODE_BY_PRJ_NAME.get(plainName(geographic)))
                .map(code -> Transforms.geographic(EpsgDataset.decode(code)))
                .filter(known -> sameEllipsoid(known, geographic))
                .flatMap(Datums::findShiftOfDataset);
    }

    /**
     * Finds the code of the geographic system on the datum of a text, from the meridian of Greenwich; empty where the text has a
     * shift of its own, which may be another than the dataset's.
     */
    static Optional<Integer> findCode(GeographicCRS geographic) {
        if (ownShift(geographic).filter(shift -> !shift.isIdentity()).isPresent()) {
            return Optional.empty();
        }
        return Optional.ofNullable(CODE_BY_PRJ_NAME.get(plainName(geographic)))
                .filter(code -> isSameToTheLastDigit(Transforms.geographic(EpsgDataset.decode(code)), geographic));
    }

    /** Distinguishes the ellipsoids of GRS 80 and WGS 84, a tenth of a millimeter from each other. */
    private static boolean isSameToTheLastDigit(GeographicCRS known, GeographicCRS read) {
        Ellipsoid a = known.getDatum().getEllipsoid();
        Ellipsoid b = read.getDatum().getEllipsoid();
        return Math.abs(a.getSemiMajorAxis() - b.getSemiMajorAxis()) < 0.001
                && Math.abs(a.getInverseFlattening() - b.getInverseFlattening()) < 1e-7;
    }

    private static Optional<BursaWolfParameters> ownShift(GeographicCRS geographic) {
        return geographic.getDatum() instanceof DefaultGeodeticDatum datum
                ? Optional.ofNullable(datum.getBursaWolfParameters(DefaultGeodeticDatum.WGS84))
                : Optional.empty();
    }

    private static boolean isNad27(GeographicCRS geographic) {
        String name = plainName(geographic);
        return name.equals("north_american_1927") || name.equals("north_american_datum_1927");
    }

    /**
     * Without grids NAD 27 has dozens of regional shifts, of which GeoTools picks one for the Gulf. This is the mean of the
     * contiguous United States, good to about 10 m there (EPSG 1173 after DMA TR 8350.2, from memory).
     */
    private static BursaWolfParameters nad27() {
        var mean = new BursaWolfParameters(DefaultGeodeticDatum.WGS84);
        mean.dx = -8;
        mean.dy = 160;
        mean.dz = 176;
        return mean;
    }

    /** Returns a warning where the datum's shift to WGS 84 is not known although there must be one. */
    static Optional<String> caution(GeographicCRS geographic) {
        boolean fine = ownShift(geographic).isPresent()
                || isGlobal(geographic.getDatum().getEllipsoid())
                || isNad27(geographic)
                || CODE_BY_PRJ_NAME.containsKey(plainName(geographic));
        return fine
                ? Optional.empty()
                : Optional.of(
                        "the shift of datum '" + geographic.getDatum().getName().getCode()
                                + "' to WGS 84 is not known: positions may be off by several hundred meters");
    }

    /** Datums on GRS 80 and WGS 84 are those of the satellite age, within some meters of WGS 84 itself. */
    static boolean isGlobal(Ellipsoid ellipsoid) {
        return Math.abs(ellipsoid.getSemiMajorAxis() - WGS84_SEMI_MAJOR_M) < 1
                && Math.abs(ellipsoid.getInverseFlattening() - WGS84_INVERSE_FLATTENING) < 0.001;
    }

    /** Returns whether the system is degrees from Greenwich on WGS 84, so that nothing must be computed. */
    static boolean isWgs84Degrees(GeographicCRS geographic) {
        return (DefaultGeodeticDatum.isWGS84(geographic.getDatum())
                        || plainName(geographic).equals("wgs_1984"))
                && isGlobal(geographic.getDatum().getEllipsoid())
                && Transforms.unitDeg(geographic) == 1
                && geographic.getDatum().getPrimeMeridian().getGreenwichLongitude() == 0;
    }

    private static boolean sameEllipsoid(GeographicCRS one, GeographicCRS other) {
        Ellipsoid a = one.getDatum().getEllipsoid();
        Ellipsoid b = other.getDatum().getEllipsoid();
        return Math.abs(a.getSemiMajorAxis() / b.getSemiMajorAxis() - 1) < SAME_AXIS_RATIO
                && Math.abs(a.getSemiMinorAxis() / b.getSemiMinorAxis() - 1) < SAME_AXIS_RATIO;
    }

    /** The names of one datum on another meridian end in the meridian's, as "NTF (Paris)"; the shift is the same. */
    private static String plainName(GeographicCRS geographic) {
        String datum = geographic.getDatum().getName().getCode();
        boolean elsewhere = geographic.getDatum().getPrimeMeridian().getGreenwichLongitude() != 0;
        String name = elsewhere && datum.contains("(")
                ? geographic.getName().getCode().replaceFirst("[ _]*\\(.*\\)$", "")
                : datum;
        return name.replaceFirst("^(?:D_|GCS_)", "").replace(' ', '_').toLowerCase(Locale.ROOT);
    }
}
