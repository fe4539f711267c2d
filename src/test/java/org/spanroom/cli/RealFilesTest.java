package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.ExternalTool;

/** Files as owners publish them, from the command line to the results: what cannot come to anything ends with code 3 and the reason. */
class RealFilesTest {
    @TempDir
    Path folder;

    private static String feature(String properties, String type, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{" + properties + "},\"geometry\":{\"type\":\"" + type
                + "\",\"coordinates\":" + coordinates + "}}";
    }

    private Path write(String name, String... features) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(
                file, "{\"type\":\"FeatureCollection\",\"features\":[" + String.join(",", features) + "]}");
    }

    /** Ducts end to end along a parallel, each a hundred meters or so, from the first number to before the last. */
    private static String[] ducts(int from, int to, double latDeg) {
        return IntStream.range(from, to)
                .mapToObj(i -> feature(
                        "\"duct\":\"D" + i + "\"", "LineString", "[" + at(i, latDeg) + "," + at(i + 1, latDeg) + "]"))
                .toArray(String[]::new);
    }

    private static String[] vaults(int from, int to, double latDeg) {
        return IntStream.range(from, to)
                .mapToObj(i -> feature("\"vault\":\"V" + i + "\"", "Point", at(i, latDeg)))
                .toArray(String[]::new);
    }

    private static String at(int i, double latDeg) {
        return String.format(Locale.ROOT, "[%.3f,%.3f]", -30 + i / 1000.0, latDeg);
    }

    private CommandRun run(String command, Path routes, Path vaults, String... more) throws IOException {
        var args = new ArrayList<>(List.of(command, "--routes", routes.toString(), "--vaults", vaults.toString()));
        args.addAll(Arrays.asList(more));
        if (command.equals("rank")) {
            args.addAll(List.of("--output", folder.resolve("out").toString()));
        }
        return CommandRun.of(args.toArray(String[]::new));
    }

    private void assertRefused(CommandRun run, String... words) {
        assertThat(run.exitCode()).as(run.err()).isEqualTo(3);
        assertThat(run.err()).contains(words).doesNotContain("Exception", "\tat ");
        assertThat(folder.resolve("out")).doesNotExist();
    }

    @ParameterizedTest
    @ValueSource(strings = {"rank", "check"})
    void exchangedFilesEndWithTheReasonTheCountAndTheFirstFeatures(String command) throws IOException {
        Path ducts = write("ducts.geojson", ducts(0, 12, 40));
        Path vaults = write("vaults.geojson", vaults(0, 13, 40));

        CommandRun run = run(command, vaults, ducts);

        assertRefused(
                run,
                "vaults.geojson: none of its 13 features can be used for routes",
                "The files of routes and vaults seem to be swapped",
                "13  vaults.geojson: wrong_geometry_type",
                "12  ducts.geojson: wrong_geometry_type",
                "vaults.geojson, 1: the feature's geometry is of type point",
                "vaults.geojson, 3: ");
        assertThat(run.err()).doesNotContain("vaults.geojson, 4: ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rank", "check"})
    void emptyLayersEndAsSuch(String command) throws IOException {
        Path ducts = write("ducts.geojson", ducts(0, 2, 40));

        assertRefused(run(command, write("none.geojson"), ducts), "none.geojson: it has no features", "--routes-layer");
        assertRefused(run(command, ducts, write("none.geojson")), "none.geojson: it has no features", "--vaults-layer");
    }

    @ParameterizedTest
    @ValueSource(strings = {"rank", "check"})
    void aWrongReferenceSystemIsTheFirstThingSaid(String command) throws IOException {
        Path meters = write(
                "ducts.geojson",
                feature("\"duct\":\"A\"", "LineString", "[[500000,5700000],[500100,5700000]]"),
                feature("\"duct\":\"B\"", "LineString", "[[500100,5700000],[500200,5700000]]"));
        Path vaults = write("vaults.geojson", vaults(0, 3, 40));
        Path south = write("south.geojson", ducts(0, 3, -40));

        assertRefused(
                run(command, meters, vaults),
                "none of its 2 features can be used for routes. Its ordinates do not belong to the reference system",
                "too large for degrees",
                "2  ducts.geojson: bad_coordinate");
        assertRefused(
                run(command, south, vaults),
                "south.geojson: no span came out: routes and vaults lie 8,8",
                "wrong reference system",
                "3  route_without_vault",
                "0  of 6 line ends have a vault within 5.0 m");
    }

    @Test
    void someRejectedFeaturesAreCountedAndTheRunGoesOn() throws IOException {
        String[] some = ducts(0, 3, 40);
        some[1] = feature("\"duct\":\"D1\"", "Point", "[-30,40]");

        CommandRun run = run("rank", write("ducts.geojson", some), write("vaults.geojson", vaults(0, 4, 40)));

        assertThat(run.exitCode()).as(run.err()).isZero();
        JsonNode routes = record().get("inputs").get(0);
        assertThat(routes.get("rejected_by_code").get("wrong_geometry_type").asInt())
                .isEqualTo(1);
    }

    private JsonNode record() throws IOException {
        return new ObjectMapper().readTree(folder.resolve("out/run.json").toFile());
    }

    private CommandRun runConfig(String command, String inputs) throws IOException {
        Path config = Files.writeString(folder.resolve("config.yaml"), "inputs:\n" + inputs);
        var args = new ArrayList<>(List.of(command, "--config", config.toString()));
        if (command.equals("rank")) {
            args.addAll(List.of("--output", folder.resolve("out").toString()));
        }
        return CommandRun.of(args.toArray(String[]::new));
    }

    /** The same network in one file and in several, of two formats and two reference systems, gives the same spans. */
    @Test
    void aLayerInSeveralFilesIsOneLayer() throws IOException {
        write("all/ducts.geojson", ducts(0, 6, 40));
        write("a/ducts.geojson", ducts(0, 2, 40));
        write("b/ducts.geojson", ducts(2, 4, 40));
        Path rest = write("rest.geojson", ducts(4, 6, 40));
        ExternalTool.named("ogr2ogr")
                .run("-f", "ESRI Shapefile", "-t_srs", "EPSG:32626", folder.resolve("c.shp"), rest);
        write("vaults.geojson", vaults(0, 7, 40));
        write("west.geojson", vaults(0, 4, 40));
        write("east.geojson", vaults(3, 7, 40));
        String fields = ", fields: {duct: duct}}\n  vaults: {fields: {vault: vault}, file: ";

        assertThat(runConfig("rank", "  routes: {file: all/ducts.geojson" + fields + "vaults.geojson}\n")
                        .exitCode())
                .isZero();
        List<String> once = spans();
        Files.move(folder.resolve("out"), folder.resolve("once"));
        CommandRun run = runConfig(
                "rank",
                "  routes: {file: [a/ducts.geojson, b/ducts.geojson, c.shp]" + fields
                        + "[west.geojson, east.geojson]}\n");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(spans()).isEqualTo(once).hasSize(6);
        JsonNode inputs = record().get("inputs");
        assertThat(inputs).hasSize(5);
        assertThat(inputs.findValuesAsText("features_read")).containsExactly("2", "2", "2", "4", "4");
        assertThat(inputs.findValuesAsText("crs").get(2)).contains("26N");
        assertThat(inputs.findValuesAsText("sha256").stream().distinct().count())
                .isGreaterThanOrEqualTo(5);
        assertThat(record().get("output_crs").asText()).contains("WGS 84");
        assertThat(Files.readString(folder.resolve("out/findings.csv")))
                .contains("duplicate_id")
                .contains("east.geojson")
                .contains("an earlier vault has the id V3");
        assertThat(CommandRun.of(
                                "explain",
                                spanId(),
                                "--run",
                                folder.resolve("out").toString())
                        .exitCode())
                .isZero();
    }

    private List<String> spans() throws IOException {
        return Files.readAllLines(folder.resolve("out/spans.csv")).stream()
                .skip(1)
                .map(line -> line.substring(0, line.indexOf(',')))
                .sorted()
                .toList();
    }

    private String spanId() throws IOException {
        return spans().get(0);
    }

    /** Files of one name in two folders; findings of reading and of cutting say which. */
    @Test
    void findingsNameTheRightFile() throws IOException {
        write("a/ducts.geojson", ducts(0, 2, 40));
        write("b/ducts.geojson", ducts(5, 7, 40));
        write("vaults.geojson", vaults(0, 3, 40));

        runConfig("rank", """
                  routes: {file: [a/ducts.geojson, b/ducts.geojson], fields: {duct: duct}}
                  vaults: {file: vaults.geojson, fields: {vault: vault}}
                """);

        String without = Files.readAllLines(folder.resolve("out/findings.csv")).stream()
                .filter(line -> line.contains("route_without_vault"))
                .collect(Collectors.joining("\n"));
        assertThat(without).contains("b/ducts.geojson").doesNotContain("a/ducts.geojson");
    }

    @Test
    void optionsMayBeGivenSeveralTimesAndAFileOnlyOnce() throws IOException {
        Path a = write("a.geojson", ducts(0, 2, 40));
        Path b = write("b.geojson", ducts(2, 4, 40));
        Path vaults = write("vaults.geojson", vaults(0, 5, 40));

        assertThat(run("check", a, vaults, "--routes", b.toString()).out()).contains("4 spans between 5 vaults");
        assertRefused(run("check", a, vaults, "--routes", a.toString()), "a.geojson: it is named twice");
    }

    @ParameterizedTest
    @CsvSource({
        "route: rute, rute, route",
        "route: ROUTE_NAME, ROUTE_NAME, ''",
        "inside_diameter: bores, bores, bore",
        "owner: start, start, start.id",
        "surface: inner_diameter_mm_of_it, inner_diameter_mm_of_it, inner_diam",
    })
    void aMappedFieldThatTheFileLacksIsNamedWithTheNearestOne(String mapping, String named, String meant)
            throws IOException {
        String properties = "\"route\":\"R\",\"bore\":100,\"start\":{\"id\":\"N\"},\"inner_diam\":null";
        write("ducts.geojson", feature(properties, "LineString", "[" + at(0, 40) + "," + at(1, 40) + "]"));
        write("vaults.geojson", vaults(0, 2, 40));
        String both = mapping.startsWith("surface") ? mapping + ", owner: inner_diameter_mm_other" : mapping;

        CommandRun run = runConfig(
                "rank", "  routes: {file: ducts.geojson, fields: {" + both + "}}\n  vaults: {file: vaults.geojson}\n");

        assertRefused(run, "ducts.geojson: it has no field '" + named + "'", "inputs.routes.fields");
        if (!meant.isEmpty()) {
            assertThat(run.err()).contains("did you mean '" + meant + "'?");
        }
    }

    /** A field that the first features lack, and that holds nothing but null, is there all the same. */
    @Test
    void aFieldMetLateIsNoMissingField() throws IOException {
        String[] many = ducts(0, 150, 40);
        many[149] = many[149].replace("\"duct\"", "\"late\":null,\"duct\"");
        write("ducts.geojson", many);
        write("vaults.geojson", vaults(0, 151, 40));

        CommandRun run = runConfig(
                "check",
                "  routes: {file: ducts.geojson, fields: {duct: duct, owner: late}}\n  vaults: {file: vaults.geojson}\n");

        assertThat(run.exitCode()).as(run.err()).isZero();
    }

    /**
     * A network in the Open Fibre Data Standard 0.2, GeoJSON publication format (names of members from memory): nodes are points, spans
     * lines whose ends are objects.
     */
    @Test
    void aNetworkOfTheOpenFibreDataStandardMapsWithoutPreparation() throws IOException {
        write(
                "spans.geojson",
                IntStream.range(0, 3)
                        .mapToObj(i -> feature(
                                "\"id\":\"S" + i + "\",\"start\":{\"id\":\"N" + i
                                        + "\",\"name\":\"a\"},\"end\":{\"id\":\"N"
                                        + (i + 1)
                                        + "\"},\"supplier\":{\"id\":\"O1\",\"name\":\"Owner One\"},\"deployment\":"
                                        + "[\"below-ground\"],\"networkProviders\":[{\"name\":\"P\"},{\"name\":\"Q\"}],\"status\":\"operational\"",
                                "LineString",
                                "[" + at(i, 40) + "," + at(i + 1, 40) + "]"))
                        .toArray(String[]::new));
        write(
                "nodes.geojson",
                IntStream.range(0, 4)
                        .mapToObj(i -> feature(
                                "\"id\":\"N" + i
                                        + "\",\"name\":\"node\",\"phase\":{\"id\":\"1\"},\"status\":\"operational\"",
                                "Point",
                                at(i, 40)))
                        .toArray(String[]::new));

        CommandRun fields = CommandRun.of(
                "check", "--fields", "--routes", folder.resolve("spans.geojson").toString());
        CommandRun run = runConfig(
                "rank",
                "  routes: {file: spans.geojson, fields: {route: id, vault_a: start.id, vault_b: end.id,"
                        + " owner: supplier.name, joint_owners: networkProviders.name, duct_type: deployment}}\n"
                        + "  vaults: {file: nodes.geojson, fields: {vault: id, vault_kind: phase.id}}\n");

        assertThat(fields.out()).contains("start.id", "end.id", "supplier.name", "networkProviders.name", "P, Q");
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(spans()).hasSize(3);
        String rows = Files.readString(folder.resolve("out/spans.csv"));
        assertThat(rows).contains("N0", "N3", "Owner One");
        assertThat(Files.readString(folder.resolve("out/findings.csv"))).doesNotContain("recorded_vault");
    }

    /** GDAL writes the heights' system into the .prj; the result keeps the code, and GDAL reads it back. */
    @ParameterizedTest
    @CsvSource({"EPSG:2154+5720, 2154, 2.35 48.85", "EPSG:2284+6360, 2284, -78.5 37"})
    void aKnownSystemWithHeightsKeepsItsCodeInTheResults(String system, int code, String place) throws IOException {
        String[] lonLat = place.split(" ", -1);
        double lonDeg = Double.parseDouble(lonLat[0]);
        String[] ends = new String[2];
        for (int i = 0; i < 2; i++) {
            ends[i] = String.format(Locale.ROOT, "[%.4f,%s,7]", lonDeg + i / 1000.0, lonLat[1]);
        }
        Path ducts = write("d.geojson", feature("\"a\":1", "LineString", "[" + ends[0] + "," + ends[1] + "]"));
        Path vaults = write("v.geojson", feature("\"a\":1", "Point", ends[0]), feature("\"a\":2", "Point", ends[1]));
        for (Path file : List.of(ducts, vaults)) {
            ExternalTool.named("ogr2ogr")
                    .run(
                            "-f",
                            "ESRI Shapefile",
                            "-t_srs",
                            system,
                            "-dim",
                            "XYZ",
                            file.toString().replace(".geojson", ".shp"),
                            file);
        }

        CommandRun run = run("rank", folder.resolve("d.shp"), folder.resolve("v.shp"));

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(ExternalTool.named("ogrinfo").run("-so", folder.resolve("out/spanroom.gpkg"), "spans"))
                .contains("ID[\"EPSG\"," + code + "]]");
    }
}
