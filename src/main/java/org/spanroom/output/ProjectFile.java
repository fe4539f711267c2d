package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.style.QgisProject;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** Writes the project of a desktop GIS beside a GeoPackage, which opens all its layers at once. */
final class ProjectFile {
    private static final String ENDING = ".qgz";
    private static final String GEOPACKAGE_ENDING = ".gpkg";
    /** The zones of the universal transverse Mercator system, 6 degrees wide, from 180 degrees west on. */
    private static final int ZONE_DEG = 6;

    private static final int ZONES = 60;
    private static final int NORTH = 32_600;
    private static final int SOUTH = 32_700;
    private static final double MARGIN_RATIO = 0.03;

    private ProjectFile() {}

    /** Returns the name of the project of a GeoPackage. */
    static String name(String geoPackage) {
        return stem(geoPackage) + ENDING;
    }

    /**
     * Writes the project.
     *
     * @param geoPackage complete, with all the tables
     * @param extent of all its layers together
     */
    static void write(Path geoPackage, List<Table<?>> tables, Extent extent, LayerOptions options) {
        String name = geoPackage.getFileName().toString();
        Path file = geoPackage.resolveSibling(name(name));
        byte[] bytes = QgisProject.bytes(stem(name), name, tables, options.frame(), view(extent, options));
        try {
            Files.write(file, bytes);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }

    private static String stem(String geoPackage) {
        return geoPackage.substring(0, geoPackage.length() - GEOPACKAGE_ENDING.length());
    }

    /** A map of degrees is squeezed, and its scale is none: it is shown in meters, in the zone of its middle. */
    private static QgisProject.View view(Extent extent, LayerOptions options) {
        if (!options.crs().isGeographic() || extent.isEmpty()) {
            return new QgisProject.View(options.frame(), widened(extent));
        }
        double lonDeg = (extent.minX() + extent.maxX()) / 2;
        double latDeg = (extent.minY() + extent.maxY()) / 2;
        int zone = Math.floorMod((int) Math.floor((lonDeg + 180) / ZONE_DEG), ZONES) + 1;
        ReferenceSystem meters = ReferenceSystem.parse("EPSG:" + ((latDeg < 0 ? SOUTH : NORTH) + zone));
        double[] corners = {
            extent.minX(), extent.minY(), extent.maxX(), extent.minY(),
            extent.maxX(), extent.maxY(), extent.minX(), extent.maxY()
        };
        meters.fromLonLat(corners, 2);
        var shown = new Extent();
        for (int i = 0; i < corners.length; i += 2) {
            shown.add(Shape.point(corners[i], corners[i + 1]));
        }
        return new QgisProject.View(new LayerOptions(meters, options.writtenAt()).frame(), widened(shown));
    }

    private static Extent widened(Extent extent) {
        if (extent.isEmpty()) {
            return extent;
        }
        double marginX = MARGIN_RATIO * (extent.maxX() - extent.minX());
        double marginY = MARGIN_RATIO * (extent.maxY() - extent.minY());
        var wide = new Extent();
        wide.add(Shape.point(extent.minX() - marginX, extent.minY() - marginY));
        wide.add(Shape.point(extent.maxX() + marginX, extent.maxY() + marginY));
        return wide;
    }
}
