package org.spanroom.sample;

import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.output.geopackage.GeoPackageWriter;
import org.spanroom.output.shapefile.ShapefileWriter;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.text.GeoJsonWriter;

/**
 * The routes and the vaults layer of one format.
 *
 * @param file what holds both and is closed last; empty where each is a file of its own
 */
record CityLayers(RowWriter<RouteFeature> routes, RowWriter<VaultFeature> vaults, Optional<GeoPackageWriter> file)
        implements AutoCloseable {
    /** The feet of the state grid off whose coast the city would be: NAD83 / California zone 2 (ftUS). */
    private static final String FEET = "EPSG:2226";

    /** WGS 84 / UTM zone 9N. */
    private static final String UTM = "EPSG:32609";

    /** Formats note when they were written; no clock, so that the same seed gives the same bytes. */
    private static final Instant WRITTEN_AT = Instant.parse("2026-01-01T00:00:00Z");

    static CityLayers geoJson(Path folder) {
        return new CityLayers(
                new GeoJsonWriter<>(
                        folder.resolve("ducts.geojson"),
                        CityTables.routes("ducts").withZ()),
                new GeoJsonWriter<>(folder.resolve("vaults.geojson"), CityTables.vaults("vaults")),
                Optional.empty());
    }

    /** Opens two Shapefiles in feet, without heights: a Shapefile has them for all its shapes or for none. */
    static CityLayers shapefiles(Path folder, String routes, String vaults) {
        var options = new LayerOptions(ReferenceSystem.parse(FEET), WRITTEN_AT);
        return new CityLayers(
                new ShapefileWriter<>(folder.resolve(routes + ".shp"), CityTables.routes(routes), options),
                new ShapefileWriter<>(folder.resolve(vaults + ".shp"), CityTables.vaults(vaults), options),
                Optional.empty());
    }

    /** Opens one GeoPackage in meters, with heights where lines have them. */
    static CityLayers geoPackage(Path file) {
        var geoPackage = new GeoPackageWriter(file, new LayerOptions(ReferenceSystem.parse(UTM), WRITTEN_AT));
        return new CityLayers(
                geoPackage.layer(CityTables.routes("ducts").withZ()),
                geoPackage.layer(CityTables.vaults("vaults")),
                Optional.of(geoPackage));
    }

    /** Opens a GeoPackage for the zones: in feet, or in degrees, which costs no look into the EPSG dataset. */
    static GeoPackageWriter ofZones(Path file, boolean inFeet) {
        return new GeoPackageWriter(
                file, new LayerOptions(ReferenceSystem.parse(inFeet ? FEET : "EPSG:4326"), WRITTEN_AT));
    }

    @Override
    public void close() {
        try {
            routes.close();
            vaults.close();
        } finally {
            file.ifPresent(GeoPackageWriter::close);
        }
    }
}
