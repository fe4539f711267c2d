package org.spanroom.crs;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** The systems that need no database: WGS 84 in degrees under its two names, and the texts of Web Mercator. */
final class KnownSystems {
    static final int WGS84_CODE = 4326;
    static final int WEB_MERCATOR_CODE = 3857;

    private static final String WGS84_WKT = "GEOGCS[\"WGS 84\",DATUM[\"WGS_1984\",SPHEROID[\"WGS 84\",6378137,"
            + "298.257223563,AUTHORITY[\"EPSG\",\"7030\"]],AUTHORITY[\"EPSG\",\"6326\"]],PRIMEM[\"Greenwich\",0,"
            + "AUTHORITY[\"EPSG\",\"8901\"]],UNIT[\"degree\",0.0174532925199433,AUTHORITY[\"EPSG\",\"9122\"]],"
            + "AXIS[\"Longitude\",EAST],AXIS[\"Latitude\",NORTH]";

    static final String WGS84_ESRI_WKT = "GEOGCS[\"GCS_WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,"
            + "298.257223563]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]]";

    static final ReferenceSystem CRS84 = degrees("WGS 84 longitude-latitude (OGC:CRS84)", OptionalInt.empty(), "");

    /** Degrees on WGS 84 under the EPSG code; longitude still comes first, as it does in files. */
    static final ReferenceSystem WGS84 = degrees("WGS 84", OptionalInt.of(WGS84_CODE), ",AUTHORITY[\"EPSG\",\"4326\"]");

    /**
     * Web Mercator as WKT 1 must write it: the method has no WKT 1 name of its own, so that readers need the extension.
     */
    static final String WEB_MERCATOR_WKT = "PROJCS[\"WGS 84 / Pseudo-Mercator\"," + WGS84_WKT
            + ",AUTHORITY[\"EPSG\",\"4326\"]],PROJECTION[\"Mercator_1SP\"],PARAMETER[\"central_meridian\",0],"
            + "PARAMETER[\"scale_factor\",1],PARAMETER[\"false_easting\",0],PARAMETER[\"false_northing\",0],"
            + "UNIT[\"metre\",1,AUTHORITY[\"EPSG\",\"9001\"]],AXIS[\"Easting\",EAST],AXIS[\"Northing\",NORTH],"
            + "EXTENSION[\"PROJ4\",\"+proj=merc +a=6378137 +b=6378137 +lat_ts=0 +lon_0=0 +x_0=0 +y_0=0 +k=1 +units=m "
            + "+nadgrids=@null +wktext +no_defs\"],AUTHORITY[\"EPSG\",\"3857\"]]";

    private KnownSystems() {}

    private static ReferenceSystem degrees(String name, OptionalInt code, String authority) {
        return new ReferenceSystem(
                new ReferenceSystem.Description(
                        name,
                        code,
                        WGS84_WKT + authority + "]",
                        WGS84_ESRI_WKT,
                        OptionalDouble.empty(),
                        Optional.empty(),
                        Optional.empty()),
                ReferenceSystem.Path.NONE);
    }
}
