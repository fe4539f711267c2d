package org.spanroom.sample;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.spanroom.output.folder.OutputException;

/**
 * The invented city of Tidemarrow, far out in the open ocean, at any size: ducts, vaults, what is in the ducts, and the
 * ordinary faults of real data.
 *
 * <p>The same number of spans and the same seed give the same bytes. Memory does not grow with the number of spans.
 */
public final class DemoCity {
    /** Spans of the city in the project's folder {@code sample-gis}. */
    public static final int DEMO_SPANS = 2_500;

    /** Seed of the city in the project's folder {@code sample-gis}. */
    public static final long DEMO_SEED = 8;

    /** The layer of streets, which is written beside routes of every format. */
    static final String STREETS = "streets.geojson";

    private static final String CONFIG = "spanroom.yaml";
    private static final int HARBOR = 2;
    private static final int HILLSIDE = 4;

    private DemoCity() {}

    /** The format of the routes and vaults layers. */
    public enum Format {
        GEOJSON("ducts.geojson", "vaults.geojson"),
        SHAPEFILE("ducts.shp", "vaults.shp"),
        GPKG("city.gpkg (layer ducts)", "city.gpkg (layer vaults)");

        private final String routes;
        private final String vaults;

        Format(String routes, String vaults) {
            this.routes = routes;
            this.vaults = vaults;
        }

        String routes() {
            return routes;
        }

        String vaults() {
            return vaults;
        }
    }

    /**
     * What has been written.
     *
     * @param spans as laid out; faults in the data take some away from what a reader finds
     * @param routes features of the routes layer
     * @param vaults features of the vaults layer
     * @param contentsRows rows of the contents table
     * @param faults how many faults were put in on purpose
     */
    public record Summary(long spans, long routes, long vaults, long contentsRows, long faults) {}

    /** Writes a city as GeoJSON. */
    public static Summary write(int spans, long seed, Path folder) {
        return write(spans, seed, folder, Format.GEOJSON);
    }

    /**
     * Writes a city into a folder, which is made if need be and must not hold files of the same names.
     *
     * @throws OutputException if the folder cannot be written to
     */
    public static Summary write(int spans, long seed, Path folder, Format format) {
        if (spans < 1) {
            throw new IllegalArgumentException("spans must be > 0, was " + spans);
        }
        make(folder);
        CityBuilder builder;
        List<CityBuilder.Built> districts;
        try (var files = new CityFiles(folder, layers(folder, format), format != Format.GEOJSON)) {
            builder = new CityBuilder(spans, seed, files);
            districts = builder.build();
        }
        put(folder.resolve("README.md"), new SampleReadme(seed, builder.count(), districts).text(format, false));
        put(folder.resolve(CONFIG), SampleConfig.text(format, false));
        return summary(builder, districts);
    }

    /**
     * Writes the city of {@code sample-gis}: as GeoJSON, and one district each as Shapefile and as GeoPackage too; a town beside it that
     * records no contents; and connections to be made.
     */
    public static Summary writeDemo(Path folder) {
        make(folder);
        CityBuilder builder;
        List<CityBuilder.Built> districts;
        try (var files = new CityFiles(folder, CityLayers.geoJson(folder), true);
                var harbor = CityLayers.shapefiles(folder, "harbor", "harbor_vaults");
                var hillside = CityLayers.geoPackage(folder.resolve("hillside.gpkg"))) {
            var sink = new DistrictExtract(new DistrictExtract(files, HARBOR, harbor), HILLSIDE, hillside);
            builder = new CityBuilder(DEMO_SPANS, DEMO_SEED, sink);
            districts = builder.build();
        }
        OldTown.write(folder);
        put(folder.resolve(DemoConnections.FILE), DemoConnections.TEXT);
        put(folder.resolve(DemoProgram.FILE), DemoProgram.TEXT);
        put(folder.resolve(DemoCloseout.FILE), DemoCloseout.text());
        String text = new SampleReadme(DEMO_SEED, builder.count(), districts).text(Format.GEOJSON, true);
        put(folder.resolve("README.md"), text);
        put(folder.resolve(CONFIG), SampleConfig.text(Format.GEOJSON, true));
        return summary(builder, districts);
    }

    private static CityLayers layers(Path folder, Format format) {
        return switch (format) {
            case GEOJSON -> CityLayers.geoJson(folder);
            case SHAPEFILE -> CityLayers.shapefiles(folder, "ducts", "vaults");
            case GPKG -> CityLayers.geoPackage(folder.resolve("city.gpkg"));
        };
    }

    private static Summary summary(CityBuilder builder, List<CityBuilder.Built> districts) {
        CityCount count = builder.count();
        long spans = districts.stream().mapToLong(CityBuilder.Built::spans).sum();
        long faults =
                count.faults().values().stream().mapToLong(Integer::longValue).sum();
        return new Summary(spans, count.routes(), count.vaults(), count.rows(), faults);
    }

    private static void make(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new OutputException(folder, "the folder cannot be created", "Choose another with --output.", e);
        }
    }

    private static void put(Path file, String text) {
        try {
            Files.writeString(file, text, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new OutputException(file, "cannot be written", "Check the disk and the folder.", e);
        }
    }
}
