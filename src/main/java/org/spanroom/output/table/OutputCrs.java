package org.spanroom.output.table;

import java.util.OptionalInt;
import org.spanroom.crs.ReferenceSystem;

/**
 * The reference system of a layer: turns shapes into it and onto its grid of about 0.1 mm, so that every format holds the
 * same numbers. Safe for use by several threads.
 */
public final class OutputCrs {
    /** 1e-9 degrees are 0.1 mm along a meridian. */
    public static final int DEGREE_DECIMALS = 9;

    /** 1e-4 m are 0.1 mm; of a foot it is less. */
    public static final int METER_DECIMALS = 4;

    private static final int WGS_84_CODE = 4326;
    /** Beyond all EPSG codes; the number that a GeoPackage gives to a system without a code. */
    private static final int OWN_CODE = 100_000;

    private final ReferenceSystem system;
    private final OptionalInt epsgCode;
    private final int decimals;

    private OutputCrs(ReferenceSystem system) {
        this.system = system;
        this.epsgCode = system.equals(ReferenceSystem.crs84()) ? OptionalInt.of(WGS_84_CODE) : system.epsgCode();
        this.decimals = system.isGeographic() ? DEGREE_DECIMALS : METER_DECIMALS;
    }

    static OutputCrs of(ReferenceSystem system) {
        return new OutputCrs(system);
    }

    public static OutputCrs lonLat() {
        return new OutputCrs(ReferenceSystem.crs84());
    }

    public String name() {
        return system.name();
    }

    /** Returns the number of the system in a GeoPackage. */
    public int srsId() {
        return epsgCode.orElse(OWN_CODE);
    }

    /** Returns who gave the number. */
    public String organization() {
        return epsgCode.isPresent() ? "EPSG" : "NONE";
    }

    /** Returns whether its coordinates are degrees. */
    public boolean isGeographic() {
        return system.isGeographic();
    }

    public String wkt() {
        return system.wkt();
    }

    public String esriWkt() {
        return system.esriWkt();
    }

    /** Returns whether shapes stay as they are but for the rounding. */
    boolean isLonLat() {
        return system.equals(ReferenceSystem.crs84());
    }

    /** Returns the shape in this reference system, rounded to the grid; empty if a vertex of it has no place there. */
    Shape place(Shape lonLat) {
        if (lonLat.isEmpty()) {
            return lonLat;
        }
        double[] ordinates = lonLat.copyOrdinates();
        int dimension = lonLat.dimension();
        system.fromLonLat(ordinates, dimension);
        for (int i = 0; i < ordinates.length; i++) {
            if (!Double.isFinite(ordinates[i])) {
                return Shape.EMPTY;
            }
            ordinates[i] = Decimals.round(ordinates[i], i % dimension == 2 ? METER_DECIMALS : decimals);
        }
        return lonLat.withOrdinates(ordinates);
    }
}
