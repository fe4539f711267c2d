package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.testing.ExternalTool;

/**
 * The same data gives the same spans.csv and sections.csv, byte for byte, whatever format it comes in. GDAL's ogr2ogr makes the other formats from
 * the GeoJSON, so that no writer of ours can agree with a reader of ours by mistake.
 */
class FormatsAgreeTest {

    @TempDir
    Path folder;

    private byte[] fromGeoJson = new byte[0];

    @BeforeEach
    void rankFromGeoJson() throws IOException {
        run("sample", "--spans", "400", "--seed", "3", "--output", folder.toString());
        fromGeoJson = ranked("geojson", config("ducts.geojson", "vaults.geojson", false));
        assertThat(new String(fromGeoJson, java.nio.charset.StandardCharsets.UTF_8)
                        .lines()
                        .count())
                .isGreaterThan(300);
    }

    @Test
    void geoPackageGivesTheSameBytes() throws IOException {
        ExternalTool.named("ogr2ogr").run("-f", "GPKG", at("d.gpkg"), at("ducts.geojson"), "-nln", "ducts");
        ExternalTool.named("ogr2ogr").run("-f", "GPKG", at("v.gpkg"), at("vaults.geojson"), "-nln", "vaults");

        assertThat(ranked("gpkg", config("d.gpkg", "v.gpkg", false))).isEqualTo(fromGeoJson);
    }

    @Test
    void shapefileGivesTheSameBytes() throws IOException {
        ExternalTool.named("ogr2ogr").run("-f", "ESRI Shapefile", at("d.shp"), at("ducts.geojson"));
        ExternalTool.named("ogr2ogr").run("-f", "ESRI Shapefile", at("v.shp"), at("vaults.geojson"));

        assertThat(ranked("shp", config("d.shp", "v.shp", true))).isEqualTo(fromGeoJson);
    }

    @Test
    void newlineDelimitedGeoJsonGivesTheSameBytes() throws IOException {
        ExternalTool.named("ogr2ogr")
                .run("-f", "GeoJSONSeq", "-lco", "COORDINATE_PRECISION=12", at("d.geojsonl"), at("ducts.geojson"));

        assertThat(ranked("seq", config("d.geojsonl", "vaults.geojson", false))).isEqualTo(fromGeoJson);
    }

    private Path at(String name) {
        return folder.resolve(name);
    }

    /** Returns the shipped config for other files; for a Shapefile with field names cut as the format demands. */
    private Path config(String routes, String vaults, boolean cutNames) throws IOException {
        String text = Files.readString(Path.of("sample-gis", "spanroom.yaml"))
                .replace("file: ducts.geojson", "file: " + at(routes))
                .replace("file: vaults.geojson", "file: " + at(vaults))
                .replace("file: contents.csv", "file: " + at("contents.csv"))
                .replace("file: zones.gpkg", "file: " + at("zones.gpkg"));
        if (cutNames) {
            text = text.replace("field: innerduct_od_in", "field: innerduct_")
                    .replace("innerduct_sdr: innerduct_sdr", "innerduct_sdr: innerduc_1")
                    .replace("innerduct_size: innerduct_size", "innerduct_size: innerduc_2")
                    .replace("field: cable_od_in", "field: cable_od_i")
                    .replace("field: cable_lb_kft", "field: cable_lb_k");
        }
        Path config = at(routes + ".yaml");
        Files.writeString(config, text);
        return config;
    }

    private byte[] ranked(String name, Path config) throws IOException {
        Path results = at("results-" + name);
        run("rank", "--columns", "all", "--config", config.toString(), "--output", results.toString());
        byte[] spans = Files.readAllBytes(results.resolve("spans.csv"));
        byte[] sections = Files.readAllBytes(results.resolve("sections.csv"));
        byte[] both = Arrays.copyOf(spans, spans.length + sections.length);
        System.arraycopy(sections, 0, both, spans.length, sections.length);
        return both;
    }

    private static void run(String... args) {
        var err = new StringWriter();
        int code = SpanroomCommand.commandLine(new PrintWriter(new StringWriter()), new PrintWriter(err), false)
                .execute(args);
        assertThat(code).as(err.toString()).isZero();
    }
}
