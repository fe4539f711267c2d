package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import net.sf.geographiclib.Geodesic;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.testing.ExternalTool;

/** Runs with permit zones over two ducts in open ocean, from the files to the files. */
class ZonesTest {
    /** Around the corner of the first duct; around its end, which is the beginning of the second. */
    private static final String ZONES = """
            {"type": "FeatureCollection", "name": "zones", "features": [
            {"type": "Feature", "properties": {"zone": "Z-1", "kind": "moratorium", "name": "North street", "last": "2099-12-31"},
              "geometry": {"type": "Polygon", "coordinates": [[[-30.0005, 40.0005], [-29.9995, 40.0005], [-29.9995, 40.0015],
                [-30.0005, 40.0015], [-30.0005, 40.0005]]]}},
            {"type": "Feature", "properties": {"zone": "Z-2", "kind": "night", "name": null, "last": null},
              "geometry": {"type": "Polygon", "coordinates": [[[-29.9990, 40.0008], [-29.9984, 40.0008], [-29.9984, 40.0012],
                [-29.9990, 40.0012], [-29.9990, 40.0008]]]}},
            {"type": "Feature", "properties": {"zone": "Z-3", "kind": "rail", "name": null, "last": "2001-01-01"},
              "geometry": {"type": "Polygon", "coordinates": [[[-30.1, 39.9], [-29.9, 39.9], [-29.9, 40.1], [-30.1, 39.9]]]}}
            ]}
            """;

    @TempDir
    Path folder;

    private Path zones;

    @BeforeEach
    void writeFiles() throws IOException {
        zones = folder.resolve("zones.geojson");
        Files.writeString(zones, ZONES);
        Files.writeString(
                folder.resolve("ducts.geojson"),
                collection(
                        feature("\"duct\": \"D-1\"", "LineString", "[[-30, 40], [-30, 40.001], [-29.9989, 40.001]]"),
                        feature("\"duct\": \"D-2\"", "LineString", "[[-29.9989, 40.001], [-29.9979, 40.001]]")));
        Files.writeString(
                folder.resolve("vaults.geojson"),
                collection(
                        feature("\"vault\": \"V-1\"", "Point", "[-30, 40]"),
                        feature("\"vault\": \"V-2\"", "Point", "[-29.9989, 40.001]"),
                        feature("\"vault\": \"V-3\"", "Point", "[-29.9979, 40.001]")));
        Files.writeString(
                folder.resolve("config.yaml"), """
                inputs:
                  routes: {file: '%1$s/ducts.geojson', fields: {duct: duct}}
                  vaults: {file: '%1$s/vaults.geojson', fields: {vault: vault}}
                  zones: {fields: {zone: zone, zone_kind: kind, zone_name: name, zone_until: last}}
                assumed: {innerduct_count: 3, cable_count: 1, in_service: live}
                permit: {on_date: 2027-01-15}
                """.formatted(folder.toString().replace('\\', '/')));
    }

    private static String collection(String... features) {
        return "{\"type\": \"FeatureCollection\", \"features\": [" + String.join(",\n", features) + "]}";
    }

    private static String feature(String properties, String type, String coordinates) {
        return "{\"type\": \"Feature\", \"properties\": {" + properties + "}, \"geometry\": {\"type\": \"" + type
                + "\", \"coordinates\": " + coordinates + "}}";
    }

    private Path rank(String name, Object... more) {
        Path run = folder.resolve(name);
        var args = new ArrayList<>(List.of(
                "rank",
                "--columns",
                "all",
                "--formats",
                "geopackage,csv,geojson,shapefile",
                "--config",
                folder.resolve("config.yaml").toString(),
                "--output",
                run.toString()));
        for (Object word : more) {
            args.add(word.toString());
        }
        CommandRun ranked = CommandRun.of(args.toArray(String[]::new));
        assertThat(ranked.exitCode()).as(ranked.err()).isZero();
        return run;
    }

    private static List<CSVRecord> csv(Path file) throws IOException {
        var format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (var parser = format.parse(Files.newBufferedReader(file))) {
            return parser.getRecords();
        }
    }

    private static CSVRecord row(Path file, String column, String value) throws IOException {
        return csv(file).stream()
                .filter(row -> row.get(column).equals(value))
                .findFirst()
                .orElseThrow();
    }

    /** Half of the step north and 5/11 of the step east, and the shipped tolerance at both ends; geodesics by GeographicLib. */
    @Test
    void piecesAreListedWithZoneAndRule() throws IOException {
        Path run = rank("run", "--zones", zones);

        CSVRecord piece = row(run.resolve("permits.csv"), "zone_id", "Z-1");
        double northM = Geodesic.WGS84.Inverse(40, -30, 40.001, -30).s12;
        double eastM = Geodesic.WGS84.Inverse(40.001, -30, 40.001, -29.9989).s12;
        assertThat(Double.parseDouble(piece.get("length_m")))
                .isCloseTo(northM / 2 + eastM * 5 / 11 + 2 * 0.5, within(2e-3));
        assertThat(Double.parseDouble(piece.get("from_m"))).isCloseTo(northM / 2 - 0.5, within(2e-3));
        assertThat(piece.toMap())
                .containsEntry("kind", "cut_ban")
                .containsEntry("name", "North street")
                .containsEntry("until", "2099-12-31")
                .containsEntry("cut_ban", "true")
                .containsEntry("recovery_needs", "")
                .containsEntry("new_build_needs", "ban_exception");
        JsonNode shape = shape(run, "Z-1");
        assertThat(shape.get("type").asText()).isEqualTo("LineString");
        assertThat(shape.get("coordinates").size()).isEqualTo(3);
        assertThat(csv(run.resolve("permits.csv")))
                .noneMatch(row -> row.get("zone_id").equals("Z-3"));
    }

    private static JsonNode shape(Path run, String zone) throws IOException {
        JsonNode layer =
                new ObjectMapper().readTree(run.resolve("permits.geojson").toFile());
        for (JsonNode feature : layer.get("features")) {
            if (feature.get("properties").get("zone_id").asText().equals(zone)) {
                return feature.get("geometry");
            }
        }
        throw new AssertionError("no piece in zone " + zone);
    }

    @Test
    void spansVaultsAndTheRecordTellOfZones() throws IOException {
        Path run = rank("run", "--zones", zones);

        CSVRecord first = row(run.resolve("spans.csv"), "duct", "D-1");
        assertThat(first.toMap())
                .containsEntry("zones", "Z-1;Z-2")
                .containsEntry("zone_kinds", "cut_ban;night_only")
                .containsEntry("night_only", "true")
                .containsEntry("cut_banned_until", "2099-12-31")
                .containsEntry("recovery_needs", "confined_space_entry;lane_closure;night_work")
                .containsEntry("permits_avoided", "ban_exception;restoration;street_cut")
                .containsEntry("permits_avoided_count", "3")
                .containsEntry("recovery_lead_days", "10");
        assertThat(csv(run.resolve("zone_meters.csv")))
                .filteredOn(row -> row.get("span_id").equals(first.get("span_id")))
                .extracting(row -> row.get("zone_kind"))
                .containsExactly("cut_ban", "night_only");
        assertThat(first.get("cut_banned_m"))
                .isEqualTo(row(run.resolve("zone_meters.csv"), "zone_kind", "cut_ban")
                        .get("length_m"));
        JsonNode record = new ObjectMapper().readTree(run.resolve("run.json").toFile());
        assertThat(record.findValuesAsText("role")).containsExactly("routes", "vaults", "zones");
        assertThat(record.get("findings_by_code").get("zone_expired").asInt()).isEqualTo(1);
        assertThat(ExternalTool.named("ogrinfo")
                        .run("-al", "-geom=NO", run.resolve("spanroom.gpkg"), "vaults", "-where", "vault_id = 'V-2'"))
                .contains("zones (String) = Z-2", "zone_kinds (String) = night_only");
        assertThat(ExternalTool.named("ogrinfo").run("-so", run.resolve("spanroom.gpkg"), "permits"))
                .contains("Geometry: Line String", "Feature Count: 3");
    }

    /** Z-1 and Z-2 are met by what the table of pieces says; Z-3 is over. */
    @Test
    void theZonesThemselvesAreALayer() throws IOException {
        Path run = rank("run", "--zones", zones);

        List<CSVRecord> rows = zoneRows(run);
        assertThat(rows).extracting(row -> row.get("zone_id")).containsExactly("Z-1", "Z-2", "Z-3");
        assertThat(rows.get(0).toMap())
                .containsEntry("kind", "cut_ban")
                .containsEntry("name", "North street")
                .containsEntry("until", "2099-12-31")
                .containsEntry("applies", "1")
                .containsEntry("spans", "1")
                .containsEntry("cut_ban", "1")
                .containsEntry("new_build_needs", "ban_exception")
                .containsEntry("source_row", "1");
        assertThat(rows.get(0).get("spans_length_m"))
                .isEqualTo(row(run.resolve("permits.csv"), "zone_id", "Z-1").get("length_m"));
        assertThat(rows.get(1).get("spans")).isEqualTo("2");
        assertThat(rows.get(2).toMap())
                .containsEntry("applies", "0")
                .containsEntry("spans", "0")
                .containsEntry("source_row", "3");
        assertThat(rows.get(2).get("WKT")).isEqualTo("MULTIPOLYGON (((-30.1 39.9,-29.9 39.9,-29.9 40.1,-30.1 39.9)))");
        JsonNode record = new ObjectMapper().readTree(run.resolve("run.json").toFile());
        assertThat(record.get("zones").asInt()).isEqualTo(3);
    }

    /** Also where the layers are in another reference system than the zones. */
    @Test
    void anotherScoringCopiesTheZones() throws IOException {
        Path run = rank("run", "--zones", zones, "--output-crs", "EPSG:32626");
        Path rescored = folder.resolve("rescored");
        CommandRun again = CommandRun.of(
                "rank", "--from", run.toString(), "--scoring", "config/scoring.yaml", "--output", rescored.toString());

        assertThat(again.exitCode()).as(again.err()).isZero();
        assertThat(zoneRows(rescored))
                .extracting(CSVRecord::toMap)
                .isEqualTo(zoneRows(run).stream().map(CSVRecord::toMap).toList());
    }

    private static List<CSVRecord> zoneRows(Path run) throws IOException {
        Path table = run.resolveSibling(run.getFileName() + "-zones.csv");
        ExternalTool.named("ogr2ogr")
                .run("-f", "CSV", table, run.resolve("spanroom.gpkg"), "zones", "-lco", "GEOMETRY=AS_WKT");
        return csv(table);
    }

    /** The zones' own reference system and format make no difference beyond the rounding of a millimeter. */
    @Test
    void zonesMayComeInAnyFormatAndSystem() throws IOException {
        Path packed = folder.resolve("zones.gpkg");
        Path shaped = folder.resolve("shaped.shp");
        ExternalTool.named("ogr2ogr").run("-t_srs", "EPSG:32626", packed, zones);
        ExternalTool.named("ogr2ogr").run(shaped, zones);

        List<CSVRecord> expected = csv(rank("run", "--zones", zones).resolve("permits.csv"));
        for (Path other : List.of(packed, shaped)) {
            List<CSVRecord> found =
                    csv(rank(other.getFileName() + "-run", "--zones", other).resolve("permits.csv"));
            assertThat(found).hasSameSizeAs(expected);
            for (int i = 0; i < found.size(); i++) {
                assertThat(found.get(i).get("zone_id"))
                        .isEqualTo(expected.get(i).get("zone_id"));
                assertThat(found.get(i).get("until")).isEqualTo(expected.get(i).get("until"));
                assertThat(Double.parseDouble(found.get(i).get("length_m")))
                        .isCloseTo(Double.parseDouble(expected.get(i).get("length_m")), within(2e-3));
            }
        }
    }

    @Test
    void explainShowsThePermitsOfTheSpan() throws IOException {
        Path run = rank("run", "--zones", zones);
        String id = row(run.resolve("spans.csv"), "duct", "D-1").get("span_id");

        CommandRun text = CommandRun.of("explain", id, "--run", run.toString());
        CommandRun json = CommandRun.of("explain", id, "--run", run.toString(), "--json");

        assertThat(text.out().replaceAll("\\s+", " "))
                .contains("zones touched 2 ", "zone Z-1, kind cut ban, name North street, until 2099-12-31")
                .contains("vaults in it B")
                .contains("recovery needs confined space entry, lane closure, night work, traffic control ")
                .contains("lead time for recovery permits, days 10 ");
        JsonNode permits = new ObjectMapper().readTree(json.out()).get("permits");
        assertThat(permits.get("zones").get(0).get("stretches").size()).isEqualTo(1);
        assertThat(permits.get("cut_banned_until").asText()).isEqualTo("2099-12-31");
    }

    /** A zone that has not begun is listed with its first day, in no other column, and asks for nothing. */
    @Test
    void zonesToComeAreListedAndCountNowhere() throws IOException {
        Path later = folder.resolve("later.geojson");
        Files.writeString(
                later,
                ZONES.replace("\"last\": \"2099-12-31\"", "\"first\": \"2027-06-01\", \"last\": \"2099-12-31\""));
        Path config = folder.resolve("config.yaml");
        Files.writeString(
                config, Files.readString(config).replace("zone_until: last", "zone_until: last, zone_from: first"));

        Path before = rank("before", "--zones", later);
        Files.writeString(config, Files.readString(config).replace("2027-01-15", "2027-06-01"));
        Path begun = rank("begun", "--zones", later);

        assertThat(row(before.resolve("spans.csv"), "duct", "D-1").toMap())
                .containsEntry("zones", "Z-2")
                .containsEntry("zones_to_come", "Z-1 from 2027-06-01")
                .containsEntry("permits_avoided", "restoration;street_cut");
        assertThat(csv(before.resolve("zone_meters.csv")))
                .noneMatch(row -> row.get("zone_kind").equals("cut_ban"));
        assertThat(csv(before.resolve("permits.csv")))
                .noneMatch(row -> row.get("zone_id").equals("Z-1"));
        assertThat(row(begun.resolve("spans.csv"), "duct", "D-1").toMap())
                .containsEntry("zones", "Z-1;Z-2")
                .containsEntry("zones_to_come", "");
        assertThat(row(begun.resolve("permits.csv"), "zone_id", "Z-1").get("first_day"))
                .isEqualTo("2027-06-01");
        String id = row(before.resolve("spans.csv"), "duct", "D-1").get("span_id");
        assertThat(CommandRun.of("explain", id, "--run", before.toString())
                        .out()
                        .replaceAll("\\s+", " "))
                .contains("upcoming zone", "zone Z-1, kind cut ban, name North street, from 2027-06-01");
    }

    /**
     * Whatever every recovery needs: the column has the others, {@code explain} has all, a zone names its own again, and the
     * permits that are avoided do not depend on where a permit is listed.
     */
    @ParameterizedTest
    @CsvSource({
        "'', confined_space_entry;lane_closure;night_work",
        "traffic_control, confined_space_entry;lane_closure;night_work",
        "night_work, confined_space_entry;lane_closure",
        "'traffic_control, road_opening, lane_closure', confined_space_entry;night_work",
        "'night_work, lane_closure, confined_space_entry', ''"
    })
    void spansListWhatTheirRecoveryNeedsInAdditionToEveryRecovery(String everywhere, String here) throws IOException {
        Path config = folder.resolve("config.yaml");
        Files.writeString(config, Files.readString(config).replace("{on_date: 2027-01-15}", """
                                {on_date: 2027-01-15, everywhere: {recovery: [%s]}}
                                """.formatted(everywhere)
                .strip()));
        Path run = rank("run", "--zones", zones);

        CSVRecord span = row(run.resolve("spans.csv"), "duct", "D-1");
        assertThat(span.get("recovery_needs")).isEqualTo(here);
        assertThat(span.get("recovery_lead_days")).isEqualTo("10");
        Set<String> all = new TreeSet<>(keys(here, ";"));
        all.addAll(keys(everywhere, ", "));
        String id = span.get("span_id");
        JsonNode permits = new ObjectMapper()
                .readTree(CommandRun.of("explain", id, "--run", run.toString(), "--json")
                        .out())
                .get("permits");
        assertThat(permits.get("recovery_needs")).extracting(JsonNode::asText).containsExactlyElementsOf(all);
        assertThat(row(run.resolve("permits.csv"), "zone_id", "Z-2").get("recovery_needs"))
                .isEqualTo("night_work");
        Set<String> avoided =
                new TreeSet<>(List.of("ban_exception", "lane_closure", "restoration", "street_cut", "traffic_control"));
        avoided.removeAll(all);
        assertThat(span.get("permits_avoided")).isEqualTo(String.join(";", avoided));
    }

    private static List<String> keys(String joined, String mark) {
        return joined.isEmpty() ? List.of() : List.of(joined.split(mark));
    }

    @Test
    void withoutZonesNoPermitsAreTold() throws IOException {
        Path run = rank("run");

        assertThat(csv(run.resolve("permits.csv"))).isEmpty();
        assertThat(zoneRows(run)).isEmpty();
        assertThat(row(run.resolve("spans.csv"), "duct", "D-1").get("recovery_needs"))
                .isEmpty();
    }

    @Test
    void checkReadsZonesAndProposesTheirFields() {
        String config = folder.resolve("config.yaml").toString();

        CommandRun checked = CommandRun.of("check", "--config", config, "--zones", zones.toString());
        CommandRun fields = CommandRun.of("check", "--fields", "--config", config, "--zones", zones.toString());

        assertThat(checked.out()).contains("zone_expired");
        assertThat(fields.out()).contains("  zones:", "zone: zone", "zone_kind: kind", "zone_name: name");
    }
}
