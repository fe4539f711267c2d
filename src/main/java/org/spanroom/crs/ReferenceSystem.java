package org.spanroom.crs;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A horizontal coordinate reference system, and the way from it to longitude and latitude on WGS 84 and back.
 *
 * <p>The first ordinate is always easting or longitude and the second northing or latitude, whatever order the definition
 * itself lists them in, because that is how GIS files hold them. Third ordinates are left as they are, also where the plane
 * is measured in feet: what unit heights have is for the caller to know.
 *
 * <p>Method: the projections and datum shifts of GeoTools over the EPSG dataset. Grid files are not used: where a datum
 * has no better link to WGS 84 than seven parameters, positions are good to some meters and lengths to a few parts in a
 * million. There and back again agrees within a micrometer or so. Safe for use by several threads.
 */
public final class ReferenceSystem {
    private static final int LARGEST_LATITUDE_DEG = 90;
    private static final int LARGEST_LONGITUDE_DEG = 360;

    private final Description description;
    private final Path path;

    ReferenceSystem(Description description, Path path) {
        this.description = description;
        this.path = path;
    }

    /** What a reference system is called and how it is written. */
    record Description(
            String name,
            OptionalInt epsgCode,
            String wkt,
            String esriWkt,
            OptionalDouble unitLengthM,
            Optional<String> caution,
            Optional<AreaOfUse> area) {}

    /** The way between a plane and WGS 84, on packed pairs of ordinates, easting or longitude first. */
    interface Path {
        /** The plane is WGS 84 itself. */
        Path NONE = new Path() {
            @Override
            public void toLonLat(double[] pairs) {}

            @Override
            public void fromLonLat(double[] pairs) {}
        };

        void toLonLat(double[] pairs);

        void fromLonLat(double[] pairs);
    }

    /**
     * Reads a definition: "EPSG:2263", "OGC:CRS84", their URN and URL forms, or WKT 1 as OGC or as .prj files write it. Of a
     * compound system the horizontal part counts.
     *
     * @throws IllegalArgumentException if it cannot be read, with the reason in one line
     */
    public static ReferenceSystem parse(String definition) {
        return DefinitionParser.parse(definition);
    }

    /** Begins to open the EPSG dataset beside other work: almost every run needs it, and its opening takes most of a second. */
    public static void beginToOpenDataset() {
        EpsgDataset.beginToOpen();
    }

    /** Waits until the dataset is open, if that has begun: to be called before other parts of the library that has it are used. */
    public static void awaitDataset() {
        EpsgDataset.awaitOpening();
    }

    /** Returns longitude and latitude in degrees on WGS 84, the system of GeoJSON. */
    public static ReferenceSystem crs84() {
        return KnownSystems.CRS84;
    }

    /** Returns the name that the definition or the EPSG dataset gives. */
    public String name() {
        return description.name();
    }

    /** Returns the EPSG code where the definition states one; none is searched for. */
    public OptionalInt epsgCode() {
        return description.epsgCode();
    }

    /**
     * Returns the system with the EPSG code that it has although its definition does not state it, as those of .prj files; the same
     * system where there is none, or more than a name would distinguish the two.
     */
    public ReferenceSystem identified() {
        OptionalInt found = epsgCode().isPresent() || equals(KnownSystems.CRS84) ? epsgCode() : SystemFinder.find(this);
        if (found.isEmpty() || epsgCode().isPresent()) {
            return this;
        }
        Description known = ReferenceSystem.parse("EPSG:" + found.getAsInt()).description;
        return new ReferenceSystem(
                new Description(known.name(), found, known.wkt(), esriWkt(), unitLengthM(), caution(), known.area()),
                path);
    }

    Optional<AreaOfUse> area() {
        return description.area();
    }

    /** Returns the definition as OGC WKT 1, on one line, longitude or easting first. */
    public String wkt() {
        return description.wkt();
    }

    /** Returns the definition as WKT 1 in the flavour of .prj files, on one line. */
    public String esriWkt() {
        return description.esriWkt();
    }

    /** Returns whether ordinates are degrees (or grads) rather than lengths. */
    public boolean isGeographic() {
        return description.unitLengthM().isEmpty();
    }

    /** Returns the meters that one unit of the plane has; empty for a geographic system. */
    public OptionalDouble unitLengthM() {
        return description.unitLengthM();
    }

    /** Returns what a user should know before trusting positions, such as a datum whose shift is not known. */
    public Optional<String> caution() {
        return description.caution();
    }

    /**
     * Returns true if a place is far outside the area that the EPSG dataset gives for the system: about as far as the area is
     * wide. False where no area is known.
     */
    public boolean isFarOutside(double lonDeg, double latDeg) {
        return description.area().filter(area -> !area.isNear(lonDeg, latDeg)).isPresent();
    }

    /**
     * Turns vertices of this system into degrees on WGS 84, in place. A vertex that has no such place becomes NaN.
     *
     * @param ordinates packed vertices
     * @param dimension ordinates in a vertex: 2, or 3 of which the third stays as it is
     */
    public void toLonLat(double[] ordinates, int dimension) {
        if (path != Path.NONE) {
            double[] pairs = pairsOf(ordinates, dimension);
            path.toLonLat(pairs);
            putBack(pairs, ordinates, dimension);
        }
        for (int at = 0; at < ordinates.length; at += dimension) {
            if (!(Math.abs(ordinates[at]) <= LARGEST_LONGITUDE_DEG
                    && Math.abs(ordinates[at + 1]) <= LARGEST_LATITUDE_DEG)) {
                ordinates[at] = Double.NaN;
                ordinates[at + 1] = Double.NaN;
            }
        }
    }

    /** Turns vertices in degrees on WGS 84 into ordinates of this system, in place; otherwise like {@link #toLonLat}. */
    public void fromLonLat(double[] ordinates, int dimension) {
        if (path != Path.NONE) {
            double[] pairs = pairsOf(ordinates, dimension);
            path.fromLonLat(pairs);
            putBack(pairs, ordinates, dimension);
        }
    }

    /** Two systems are equal if they are written the same. */
    @Override
    public boolean equals(Object other) {
        return other instanceof ReferenceSystem that && wkt().equals(that.wkt());
    }

    @Override
    public int hashCode() {
        return wkt().hashCode();
    }

    @Override
    public String toString() {
        return name();
    }

    private static double[] pairsOf(double[] ordinates, int dimension) {
        if (dimension != 2 && dimension != 3) {
            throw new IllegalArgumentException("dimension must be 2 or 3, was " + dimension);
        }
        if (dimension == 2) {
            return ordinates;
        }
        double[] pairs = new double[ordinates.length / 3 * 2];
        for (int from = 0, to = 0; from < ordinates.length; from += 3, to += 2) {
            pairs[to] = ordinates[from];
            pairs[to + 1] = ordinates[from + 1];
        }
        return pairs;
    }

    private static void putBack(double[] pairs, double[] ordinates, int dimension) {
        if (dimension == 2) {
            return;
        }
        for (int from = 0, to = 0; to < ordinates.length; from += 2, to += 3) {
            ordinates[to] = pairs[from];
            ordinates[to + 1] = pairs[from + 1];
        }
    }
}
