package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.OutputFormat;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.columns.StandingColumns;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Text;
import org.spanroom.testing.ExternalTool;

class ResultWriterTest {
    @TempDir
    Path parent;

    private Path folder;

    @BeforeEach
    void nameFolder() {
        folder = parent.resolve("run-1");
    }

    @Test
    void theFolderHoldsEveryFileAndNothingElse() throws IOException {
        WrittenResults written = write(SampleResults.spans(), false);

        assertThat(written.files()).containsExactlyElementsOf(filesOf(EnumSet.allOf(OutputFormat.class)));
        assertThat(written.notes()).isEmpty();
        assertThat(contents(folder).keySet())
                .contains(".results")
                .containsAll(written.files())
                .hasSize(1 + written.files().size());
        assertThat(names(parent)).containsExactly("run-1");
    }

    @Test
    void spansComeInOrderOfRankAndTheExcludedLast() throws IOException {
        write(SampleResults.spans(), false);

        List<CSVRecord> rows = csv("spans.csv");

        assertThat(rows).extracting(row -> row.get("span_id")).containsExactly("S-1", "S-2", "S-0");
        assertThat(rows).extracting(row -> row.get("rank")).containsExactly("1", "2", "");
        assertThat(rows).extracting(row -> row.get("exclusion")).containsExactly("", "", "no_innerduct");
        assertThat(rows.get(2).toMap())
                .containsEntry("exclusion_text", "no rigid innerduct in the duct; the owner has not agreed to the work")
                .containsEntry("cautions", "joint_owners;water");
    }

    /** Values worked by hand from the sample. */
    @Test
    void cellsSayWhatTheSpanIs() throws IOException {
        write(SampleResults.spans(), false);

        Map<String, String> best = csv("spans.csv").get(0).toMap();

        assertThat(best)
                .containsEntry("score_points", "70.00")
                .containsEntry("routes", "R-1;R-2")
                .containsEntry("vault_a", "V-1")
                .containsEntry("length_m", "222.070")
                .containsEntry("bend_total_deg", "90.00")
                .containsEntry("smallest_radius_m", "0.91")
                .containsEntry("radius_assumed", "true")
                .containsEntry("bore_shape", "round")
                .containsEntry("bore_area_mm2", "8213.0")
                .containsEntry("fill_now_pct", "51.00")
                .containsEntry("fill_removed_pct", "9.10")
                .containsEntry("positions_gained", "8")
                .containsEntry("year_installed", "1987")
                .containsEntry("surface", "")
                .containsEntry("assumed", "innerduct_sdr;cable_mass;surface;condition");
    }

    @Test
    void thePartsOfAScoreAreRows() throws IOException {
        write(SampleResults.spans(), false);

        assertThat(csv("score_parts.csv"))
                .filteredOn(row -> row.get("span_id").equals("S-1"))
                .extracting(
                        row -> row.get("criterion") + " " + row.get("score_part_points") + " " + row.get("value_ratio"))
                .contains("room_gained 45.00 0.7500", "length 15.00 0.5000", "ease_bends 10.00 1.0000");
    }

    @Test
    void findingsAreListedWithTheirPlace() throws IOException {
        write(SampleResults.spans(), false);

        Map<String, String> second = csv("findings.csv").get(1).toMap();

        assertThat(csv("findings.csv")).hasSize(2);
        assertThat(second)
                .containsEntry("code", "end_without_vault")
                .containsEntry("severity", "suspect")
                .containsEntry("problem_count", "4")
                .containsEntry("lost_length_m", "12.500")
                .containsEntry("lon_deg", "-30.000000000")
                .containsEntry("lat_deg", "40.002000000");
    }

    @Test
    void gdalReadsEveryLayer() {
        write(SampleResults.spans(), false);
        ExternalTool ogrinfo = ExternalTool.named("ogrinfo");
        Map<String, Integer> rows = Map.of("spans", 3, "vaults", 2, "bends", 3, "findings", 2);

        for (var layer : rows.entrySet()) {
            assertThat(ogrinfo.run("-so", folder.resolve("spanroom.gpkg"), layer.getKey()))
                    .contains("Feature Count: " + layer.getValue() + "\n");
        }
        for (String file : List.of("spans.geojson", "spans.shp")) {
            assertThat(ogrinfo.run("-so", "-al", folder.resolve(file)))
                    .contains("Feature Count: 3\n")
                    .doesNotContain("Warning");
        }
    }

    /** The middle of the sample's bend is its corner. */
    @Test
    void bendsLieWhereTheLineTurns() throws IOException {
        write(SampleResults.spans(), false);

        String json = ExternalTool.named("ogr2ogr")
                .run("-f", "GeoJSON", "/vsistdout/", folder.resolve("spanroom.gpkg"), "bends");
        JsonNode bend = new ObjectMapper().readTree(json).at("/features/0");

        assertThat(bend.at("/geometry/coordinates/0").asDouble()).isCloseTo(-30, within(1e-9));
        assertThat(bend.at("/geometry/coordinates/1").asDouble()).isCloseTo(40.001, within(1e-9));
        assertThat(bend.at("/properties/turn").asText()).isEqualTo("right");
    }

    @Test
    void theRecordTellsWhatWentInAndWhatCameOut() throws IOException {
        write(SampleResults.spans(), false);

        String text = Files.readString(folder.resolve("run.json"));
        JsonNode run = new ObjectMapper().readTree(text);

        assertThat(run.at("/version").asText()).isEqualTo("0.1.0");
        assertThat(run.at("/started_at").asText()).isEqualTo("2026-05-04T03:02:01Z");
        assertThat(run.at("/inputs/0/sha256").asText()).isEqualTo("ab12");
        assertThat(run.at("/inputs/0/features_rejected").asInt()).isEqualTo(1);
        assertThat(run.at("/spans").asInt()).isEqualTo(3);
        assertThat(run.at("/spans_ranked").asInt()).isEqualTo(2);
        assertThat(run.at("/spans_excluded/no_innerduct").asInt()).isEqualTo(1);
        assertThat(run.at("/findings_by_code/missing_value").asInt()).isEqualTo(1);
        assertThat(run.at("/lengths_m/routes").asText()).isEqualTo("1000.5");
        assertThat(run.at("/config/fields/duct").asText()).isEqualTo("DUCT_NO");
        assertThat(run.at("/config").fieldNames()).toIterable().containsExactly("fields", "snap_tolerance_m", "strict");
        assertThat(text).contains("\"routes\" : 1000.500").endsWith("}\n").doesNotContain("\r");
    }

    @Test
    void threadsDoNotShowInTheBytes() throws IOException {
        Results results = SampleResults.of(SampleResults.many(5000));
        ResultWriter.write(results, new OutputSettings(folder, false, ReferenceSystem.crs84(), 1));
        Map<String, byte[]> one = contents(folder);

        Path second = parent.resolve("run-2");
        ResultWriter.write(results, new OutputSettings(second, false, ReferenceSystem.crs84(), 4));

        assertThat(contents(second)).containsExactlyEntriesOf(one);
        assertThat(csv("spans.csv")).extracting(row -> row.get("rank")).isEqualTo(ranks(5000));
    }

    private static List<String> ranks(int count) {
        return IntStream.rangeClosed(1, count).mapToObj(Integer::toString).toList();
    }

    @ParameterizedTest
    @EnumSource
    void onlyTheChosenFormatIsWrittenAndNoFindingIsLost(OutputFormat format) {
        var settings = new OutputSettings(
                folder, false, ReferenceSystem.crs84(), EnumSet.of(format), ColumnGroup.all(), UnitSystem.METRIC, 2);

        WrittenResults written = ResultWriter.write(SampleResults.of(SampleResults.spans()), settings);

        assertThat(written.files()).containsExactlyElementsOf(filesOf(EnumSet.of(format)));
        assertThat(written.files()).containsAnyOf("findings.csv", "spanroom.gpkg");
    }

    /** Counted by SQLite in the GeoPackage. */
    @Test
    void theRecordCountsTheRowsOfEveryTable() throws IOException, SQLException {
        write(SampleResults.spans(), false);
        JsonNode run = new ObjectMapper().readTree(Files.readString(folder.resolve("run.json")));

        try (Connection database = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("spanroom.gpkg"));
                Statement statement = database.createStatement()) {
            for (ResultTable<?> entry : ResultTables.ALL) {
                String weight = entry.equals(ResultTables.FINDINGS) ? "sum(problem_count)" : "count(*)";
                long rows = statement
                        .executeQuery("SELECT " + weight + " FROM " + entry.name())
                        .getLong(1);
                assertThat(run.path(entry.name()).asLong(-1)).as(entry.name()).isEqualTo(rows);
            }
        }
        assertThat(run.path("bends").asLong()).isEqualTo(3);
    }

    /** By it rows find the new place of their span when another scoring is tried. */
    @Test
    void everyTableOfSpansNamesTheSpan() {
        assertThat(ResultTables.ALL)
                .filteredOn(entry -> entry.source() instanceof RowSource.OfSpans<?>)
                .hasSizeGreaterThan(1)
                .allSatisfy(entry -> assertThat(entry.table(SpanLayout.PLAIN).columns())
                        .extracting(Column::name)
                        .contains(StandingColumns.SPAN_ID.name()));
    }

    @Test
    void layersAreInTheChosenReferenceSystemButGeoJsonIsNot() throws IOException {
        ResultWriter.write(
                SampleResults.of(SampleResults.spans()),
                new OutputSettings(folder, false, ReferenceSystem.parse("EPSG:32626"), 2));
        ExternalTool ogrinfo = ExternalTool.named("ogrinfo");

        assertThat(ogrinfo.run("-so", folder.resolve("spanroom.gpkg"), "vaults"))
                .contains("ID[\"EPSG\",32626]");
        assertThat(ogrinfo.run("-so", "-al", folder.resolve("spans.shp"))).contains("ID[\"EPSG\",32626]");
        assertThat(Files.readString(folder.resolve("spans.geojson"))).contains("[[-30,40],[-30,40.001]");
        assertThat(Files.readString(folder.resolve("run.json"))).contains("\"output_crs\" : \"WGS 84 / UTM zone 26N\"");
    }

    @Test
    void aFailureLeavesNothingBehind() throws IOException {
        List<RankedSpan> spans = Stream.concat(
                        SampleResults.many(1000).stream(), Stream.of(SampleResults.broken("S-x", 1001)))
                .toList();

        assertThatThrownBy(() -> write(spans, false)).isInstanceOf(NullPointerException.class);
        assertThat(names(parent)).isEmpty();
    }

    @Test
    void aFailureLeavesEarlierResultsUntouched() throws IOException {
        write(SampleResults.spans(), false);
        Map<String, byte[]> before = contents(folder);

        assertThatThrownBy(() -> write(List.of(SampleResults.broken("S-x", 1)), true))
                .isInstanceOf(NullPointerException.class);
        assertThat(contents(folder)).containsExactlyEntriesOf(before);
        assertThat(names(parent)).containsExactly("run-1");
    }

    @Test
    void longTextsAreCutInTheShapefileAloneAndTheRunSaysSo() throws IOException {
        String owner = "Owner " + "Ö".repeat(5000);

        WrittenResults written = write(List.of(SampleResults.owned("S-1", 1, owner)), false);

        assertThat(written.notes())
                .containsExactly("1 texts in spans.dbf are cut to the 254 bytes that the format allows.");
        assertThat(Files.readString(folder.resolve("run.json"))).contains("1 texts in spans.dbf");
        assertThat(csv("spans.csv").get(0).get("owner")).isEqualTo(owner);
    }

    @Test
    void hostileValuesStayValues() throws IOException {
        String owner = "=cmd|' /C calc'!A0\n</script>]]>\"'\u0000,\uD83D;DROP TABLE spans;--\uD83D\uDEA7";
        write(List.of(SampleResults.owned("S-1", 1, owner)), false);
        String kept = Text.clean(owner);
        ExternalTool ogr2ogr = ExternalTool.named("ogr2ogr");

        assertThat(csv("spans.csv").get(0).get("owner")).isEqualTo("'" + kept.replace(";--", ";'--"));
        for (String file : List.of("spanroom.gpkg", "spans.geojson", "spans.shp")) {
            String json = ogr2ogr.run("-f", "GeoJSON", "/vsistdout/", folder.resolve(file), "spans");
            JsonNode back = new ObjectMapper().readTree(json).at("/features/0/properties/owner");
            assertThat(back.asText()).as(file).isEqualTo(kept);
        }
    }

    @Test
    void aRunWithoutSpansIsAFullFolderToo() throws IOException {
        WrittenResults written = write(List.of(), false);

        assertThat(written.files()).containsExactlyElementsOf(filesOf(EnumSet.allOf(OutputFormat.class)));
        assertThat(csv("spans.csv")).isEmpty();
        assertThat(ExternalTool.named("ogrinfo").run("-so", "-al", folder.resolve("spanroom.gpkg")))
                .contains("Layer name: spans");
    }

    private WrittenResults write(List<RankedSpan> spans, boolean overwrite) {
        return ResultWriter.write(
                SampleResults.of(spans), new OutputSettings(folder, overwrite, ReferenceSystem.crs84(), 2));
    }

    private List<CSVRecord> csv(String name) throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(folder.resolve(name), StandardCharsets.UTF_8))) {
            return parser.getRecords();
        }
    }

    private static List<String> filesOf(Set<OutputFormat> formats) {
        return Stream.concat(
                        Stream.concat(
                                Stream.of("run.json", "run_spans.csv.gz"),
                                Stream.of("spanroom.qgz").filter(any -> formats.contains(OutputFormat.GEOPACKAGE))),
                        ResultTables.ALL.stream().flatMap(entry -> entry.files(formats).stream()))
                .distinct()
                .sorted()
                .toList();
    }

    private static Map<String, byte[]> contents(Path folder) throws IOException {
        var contents = new TreeMap<String, byte[]>();
        for (String name : names(folder)) {
            contents.put(name, Files.readAllBytes(folder.resolve(name)));
        }
        return contents;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }
}
