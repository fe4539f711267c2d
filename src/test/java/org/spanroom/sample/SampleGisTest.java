package org.spanroom.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.BiConsumer;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.LineString;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.operation.distance.IndexedFacetDistance;
import org.spanroom.model.network.Street;
import org.spanroom.pipeline.StreetReader;
import org.spanroom.sample.CityOnDisk.Route;
import org.spanroom.sample.CityOnDisk.Vault;
import org.spanroom.testing.ExternalTool;

/** Checks the committed demo city against its generator and what its README says of it. */
class SampleGisTest {
    private static final Path COMMITTED = Path.of("sample-gis");
    private static final double BESIDE_M = 1;

    private static CityOnDisk city;
    private static String catalog = "";

    @BeforeAll
    static void readCity() throws IOException {
        if (Boolean.getBoolean("spanroom.rewrite")) {
            try (Stream<Path> files = Files.list(COMMITTED)) {
                for (Path file : files.toList()) {
                    Files.delete(file);
                }
            }
            DemoCity.writeDemo(COMMITTED);
        }
        city = CityOnDisk.read(COMMITTED);
        catalog = Files.readString(Path.of("config", "catalog.yaml"));
    }

    @Test
    void committedFilesAreWhatTheGeneratorWrites(@TempDir Path fresh) throws IOException {
        DemoCity.writeDemo(fresh);

        assertThat(names(COMMITTED)).isEqualTo(names(fresh));
        for (String name : names(fresh)) {
            if (name.endsWith(".gpkg")) {
                assertThat(rows(COMMITTED.resolve(name))).isEqualTo(rows(fresh.resolve(name)));
            } else {
                assertThat(Files.mismatch(COMMITTED.resolve(name), fresh.resolve(name)))
                        .as(name + " differs from what the generator writes, at byte")
                        .isEqualTo(-1);
            }
        }
    }

    /** Reads all cells of both layers; how pages are laid out inside the file may change with the writer. */
    private static List<String> rows(Path geoPackage) {
        List<String> cells = new ArrayList<>();
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + geoPackage);
                var statement = connection.createStatement()) {
            boolean ofZones = geoPackage.getFileName().toString().equals("zones.gpkg");
            for (String layer : ofZones ? List.of("zones") : List.of("ducts", "vaults")) {
                var rows = statement.executeQuery("SELECT * FROM " + layer + " ORDER BY fid");
                while (rows.next()) {
                    for (int i = 1; i <= rows.getMetaData().getColumnCount(); i++) {
                        Object cell = rows.getObject(i);
                        cells.add(
                                cell instanceof byte[] bytes ? HexFormat.of().formatHex(bytes) : String.valueOf(cell));
                    }
                }
            }
        } catch (SQLException e) {
            throw new AssertionError(e);
        }
        return cells;
    }

    @Test
    void committedFilesAreSmall() throws IOException {
        try (Stream<Path> files = Files.list(COMMITTED)) {
            assertThat(files.mapToLong(file -> file.toFile().length()).sum()).isLessThan(2_500_000);
        }
    }

    @Test
    void readmeCountsTheRowsOfEachFile() throws IOException {
        String readme = Files.readString(COMMITTED.resolve("README.md"));

        assertThat(readme).contains("| `ducts.geojson` | " + city.routes().size() + " |");
        assertThat(readme).contains("| `vaults.geojson` | " + city.vaultCount() + " |");
        assertThat(readme).contains("| `contents.csv` | " + city.contents().size() + " |");
        assertThat(readme).contains("| `zones.gpkg` | " + city.zones().size() + " |");
        assertThat(readme).contains("| `streets.geojson` | " + streets().size() + " |");
        assertThat(readme).contains("| `known-faults.csv` | " + city.faults().size() + " |");
        assertThat(readme).contains("| ducts in all | " + ducts() + " |");
        assertThat(readme).containsPattern("\\| sections in all \\| [1-9]");
    }

    private static List<Street> streets() {
        return StreetReader.read(COMMITTED.resolve("streets.geojson"), Optional.empty());
    }

    @Test
    void streetsAreFewBytesAndLieWhereTheDuctsDo() throws IOException {
        assertThat(Files.size(COMMITTED.resolve("streets.geojson"))).isLessThan(150_000);
        var factory = new GeometryFactory();
        Geometry axes = factory.createMultiLineString(streets().stream()
                .flatMap(street -> street.lonLat().stream())
                .map(line -> factory.createLineString(IntStream.range(0, line.size())
                        .mapToObj(vertex -> CityOnDisk.meters(line.x(vertex), line.y(vertex)))
                        .toArray(Coordinate[]::new)))
                .toArray(LineString[]::new));
        var near = new IndexedFacetDistance(axes);
        List<Route> drawn =
                city.routes().stream().filter(route -> !route.parts().isEmpty()).toList();
        long beside = drawn.stream()
                .filter(route -> near.isWithinDistance(factory.createPoint(route.first()), BESIDE_M))
                .count();
        assertThat(beside).isGreaterThan(drawn.size() * 99L / 100);
    }

    @ParameterizedTest
    @EnumSource(Fault.class)
    void readmeCountsEachFaultAndItsRateIsKept(Fault fault) throws IOException {
        int count = city.faultsOf(fault).size();

        assertThat(Files.readString(COMMITTED.resolve("README.md")))
                .containsPattern(Pattern.quote("| `" + fault.key() + "` | ") + "[^|]*\\| " + count + " \\|");
        assertThat(count).isPositive();
        double features = fault.target() == Fault.Target.VAULT ? city.vaultCount() : ducts();
        if (fault.oneIn() > 0) {
            // The first one comes at a place between 1 and the rate; some wait a little for a feature that suits.
            assertThat(count).isBetween((int) (features / fault.oneIn()) - 1, (int) (features / fault.oneIn()) + 1);
        }
    }

    /** Measured in the files alone; the list of known faults only says where to look. */
    @ParameterizedTest
    @EnumSource(Fault.class)
    void everyKnownFaultIsThere(Fault fault) {
        BiConsumer<String, String> check = checks().get(fault);

        assertThat(city.faultsOf(fault))
                .isNotEmpty()
                .allSatisfy(row -> check.accept(row.get("feature"), row.get("detail")));
    }

    private static Map<Fault, BiConsumer<String, String>> checks() {
        Map<Fault, BiConsumer<String, String>> checks = new EnumMap<>(Fault.class);
        checks.put(
                Fault.OFFSET,
                (duct, detail) ->
                        assertThat(largestDistanceToItsVaults(only(duct))).isBetween(0.2, 0.95));
        checks.put(Fault.GAP_AT_VAULT, (duct, detail) -> {
            Route route = only(duct);
            assertThat(route.last().distance(place(route.text("vault_b")))).isBetween(1.2, 3.0);
        });
        checks.put(Fault.PIECES, (duct, detail) -> assertThat(jointM(duct)).isBetween(0.0, 0.15));
        checks.put(Fault.PIECES_THAT_DIFFER, (duct, detail) -> {
            assertThat(jointM(duct)).isBetween(0.0, 0.15);
            assertThat(city.routesOf(duct).get(1).text("surface"))
                    .isNotEqualTo(city.routesOf(duct).get(0).text("surface"));
        });
        checks.put(
                Fault.PIECES_WITH_A_GAP,
                (duct, detail) -> assertThat(jointM(duct)).isBetween(1.4, 2.6));
        checks.put(
                Fault.PIECES_DRAWN_APART,
                (duct, detail) -> assertThat(jointM(duct)).isBetween(0.24, 0.7));
        checks.put(Fault.END_WITHOUT_VAULT, (duct, detail) -> {
            assertThat(only(duct).text("vault_b")).isEmpty();
            assertThat(distanceToNextVault(only(duct).last())).isGreaterThan(5);
        });
        checks.put(
                Fault.ZERO_LENGTH_PART,
                (duct, detail) -> assertThat(only(duct).parts()).anyMatch(SampleGisTest::isDot));
        checks.put(
                Fault.DUPLICATE_VERTEX,
                (duct, detail) -> assertThat(repeats(only(duct))).isEqualTo(1));
        checks.put(
                Fault.NULL_GEOMETRY,
                (duct, detail) -> assertThat(only(duct).parts()).isEmpty());
        checks.put(
                Fault.MISSING_ATTRIBUTES,
                (duct, detail) -> assertThat(detail.split(" ", -1))
                        .allSatisfy(field -> assertThat(only(duct).text(field)).isEmpty()));
        checks.put(Fault.MISSING_CONTENTS, (duct, detail) -> {
            assertThat(only(duct).text("innerducts") + only(duct).text("cables"))
                    .isEmpty();
            assertThat(city.rowsOf(duct)).isEmpty();
        });
        checks.put(
                Fault.BORE_IN_MILLIMETERS,
                (duct, detail) -> assertThat(only(duct).number("bore_in")).isGreaterThan(40));
        checks.put(
                Fault.LENGTH_IN_METERS,
                (duct, detail) -> assertThat(only(duct).number("length_ft"))
                        .isCloseTo(
                                only(duct).geodesicM(), within(0.02 * only(duct).geodesicM() + 1)));
        checks.put(
                Fault.WRONG_LENGTH,
                (duct, detail) -> assertThat(Math.abs(only(duct).number("length_ft")
                                        * 0.3048
                                        / only(duct).geodesicM()
                                - 1))
                        .isBetween(0.13, 0.42));
        checks.put(
                Fault.WRONG_VAULT,
                (duct, detail) -> assertThat(
                                only(duct).last().distance(place(only(duct).text("vault_b"))))
                        .isGreaterThan(20));
        checks.put(
                Fault.UNKNOWN_VAULT,
                (duct, detail) ->
                        assertThat(city.vaults()).doesNotContainKey(only(duct).text("vault_b")));
        checks.put(
                Fault.UNUSABLE_WORD,
                (duct, detail) -> assertThat(only(duct).text("flooded")).isEqualTo("see file"));
        checks.put(
                Fault.MORE_CABLES_THAN_INNERDUCTS,
                (duct, detail) -> assertThat(only(duct).number("cables"))
                        .isGreaterThan(only(duct).number("innerducts")));
        checks.put(
                Fault.DUPLICATE_ROUTE_ID,
                (duct, detail) -> assertThat(city.routes().stream()
                                .filter(route ->
                                        route.text("route_id").equals(only(duct).text("route_id"))))
                        .hasSize(2));
        checks.put(Fault.CONTENTS_ONLY_IN_TABLE, (duct, detail) -> {
            assertThat(only(duct).text("innerducts") + only(duct).text("cables"))
                    .isEmpty();
            assertThat(city.rowsOf(duct)).isNotEmpty();
        });
        checks.put(Fault.ROW_OF_UNKNOWN_DUCT, (duct, detail) -> {
            assertThat(city.rowsOf(detail)).hasSize(1);
            assertThat(city.routesOf(detail)).isEmpty();
        });
        checks.put(
                Fault.UNUSABLE_ROW,
                (duct, detail) -> assertThat(city.rowsOf(duct))
                        .anyMatch(row -> row.get("kind").equals("spare")));
        checks.put(Fault.LOOP_TO_SAME_VAULT, (duct, detail) -> {
            assertThat(only(duct).text("vault_a")).isEqualTo(only(duct).text("vault_b"));
            assertThat(only(duct).first().distance(only(duct).last())).isLessThan(0.3);
        });
        checks.put(
                Fault.CROSSING_WITHOUT_VAULT,
                (duct, detail) -> assertThat(crossingsWithoutVault(only(duct))).isPositive());
        checks.put(
                Fault.DUPLICATE_VAULT,
                (vault, detail) -> assertThat(place(vault).distance(place(vault.substring(0, vault.length() - 1))))
                        .isBetween(0.04, 0.41));
        checks.put(
                Fault.VAULT_FAR_FROM_ROUTES,
                (vault, detail) -> assertThat(distanceToNextRoute(place(vault))).isGreaterThan(11));
        checks.put(
                Fault.VAULT_WITHOUT_GEOMETRY,
                (vault, detail) -> assertThat(city.vaults().get(vault).place()).isEmpty());
        checks.put(
                Fault.MISSING_ELEVATION,
                (vault, detail) -> assertThat(
                                city.vaults().get(vault).fields().path("elev_m").isNull())
                        .isTrue());
        checks.put(Fault.UNKNOWN_CATALOG_NAME, (duct, detail) -> {
            assertThat(only(duct).text("duct_size")).isEqualTo(detail);
            assertThat(only(duct).text("bore_in")).isEmpty();
            assertThat(catalog).doesNotContain("\"" + detail + "\"");
        });
        checks.put(Fault.SIZE_AGAINST_CATALOG, (duct, detail) -> {
            // Inside of PVC Schedule 40: NEC Chapter 9 Table 4.
            double namedIn = only(duct).text("duct_size").equals("pvc40 6 in") ? 6.031 : 2.047;
            assertThat(Math.abs(only(duct).number("bore_in") / namedIn - 1)).isGreaterThan(0.1);
        });
        checks.put(Fault.MISSING_SIZES, (duct, detail) -> {
            Route route = only(duct);
            assertThat(route.number("innerducts")).isPositive();
            assertThat(route.number("cables")).isPositive();
            assertThat(route.text("innerduct_od_in") + route.text("innerduct_sdr") + route.text("innerduct_size"))
                    .isEmpty();
            assertThat(route.text("cable_od_in") + route.text("cable_lb_kft")).isEmpty();
        });
        checks.put(
                Fault.EMBARGO_WITHOUT_DAY,
                (duct, detail) -> assertThat(only(duct).text("embargo")).doesNotMatch("\\d{4}-\\d\\d-\\d\\d"));
        checks.put(
                Fault.ZONE_CROSSES_ITSELF,
                (zone, detail) -> assertThat(zone(zone).outline().isValid()).isFalse());
        checks.put(
                Fault.ZONE_OF_NO_KIND,
                (zone, detail) -> assertThat(zone(zone).type()).contains("ordinance"));
        return checks;
    }

    private static CityOnDisk.Zone zone(String id) {
        return city.zones().stream()
                .filter(zone -> zone.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void zonesAreOfEveryKindOverlapAndHaveHoles() {
        List<CityOnDisk.Zone> zones = city.zones();

        assertThat(zones).hasSizeBetween(17, 25);
        assertThat(zones.stream().filter(zone -> !zone.outline().isValid()))
                .hasSize((int) known(Fault.ZONE_CROSSES_ITSELF));
        assertThat(zones).anyMatch(zone -> zone.outline().getNumInteriorRing() > 0);
        assertThat(zones)
                .anyMatch(zone ->
                        zone.until().compareTo("2026") < 0 && !zone.until().isEmpty());
        for (String kind : List.of(
                "no-cut|moratorium|street cut ban",
                "night.*",
                "habitat|environmental",
                "heritage|historic",
                "tram|railway",
                "wetland|waterway",
                "school.*",
                "event.*")) {
            assertThat(zones).anyMatch(zone -> zone.type().matches(kind));
        }
        long overlaps = zones.stream()
                .filter(zone -> zone.outline().isValid())
                .flatMap(zone -> zones.stream()
                        .filter(other -> other.outline().isValid() && other.id().compareTo(zone.id()) > 0)
                        .filter(other -> other.outline().intersects(zone.outline())))
                .count();
        assertThat(overlaps).isPositive();
    }

    @Test
    void theRecordsSayWhatGatesAndEffortAskFor() {
        assertThat(city.routes().stream().map(route -> route.text("consent")))
                .contains("yes", "given", "no", "refused", "");
        assertThat(city.routes().stream().map(route -> route.text("loose_ok"))).contains("no", "forbidden");
        assertThat(count(route -> route.text("spliced").equals("yes"))).isPositive();
        assertThat(count(route -> route.text("grouted").equals("yes"))).isPositive();
        assertThat(count(route -> route.number("circuits") > 0)).isPositive();
        assertThat(count(route -> !route.text("co_owners").isEmpty())).isPositive();
        assertThat(count(route -> route.text("embargo").matches("202[1-4]-\\d\\d-\\d\\d")))
                .isPositive();
        assertThat(count(route -> route.text("embargo").matches("202[7-9]-\\d\\d-\\d\\d")))
                .isPositive();
        assertThat(city.routes().stream().map(route -> route.text("beside_ok"))).contains("yes", "no", "");
        assertThat(city.routes().stream().map(route -> route.text("reserved"))).contains("0", "1", "2", "");
        assertThat(count(route -> route.text("may_move").equals("no"))).isPositive();
        assertThat(count(route -> !route.text("duct_size").isEmpty()
                        && route.text("bore_in").isEmpty()))
                .isGreaterThan(20);
        assertThat(city.contents()).anyMatch(row -> !row.get("catalog").isEmpty());
        assertThat(city.contents()).anyMatch(row -> row.get("may_move").equals("no"));
        assertThat(city.vaults().values().stream().map(vault -> vault.text("volume")))
                .anyMatch(volume -> volume.endsWith(" ft3"))
                .anyMatch(volume -> volume.endsWith(" m3"))
                .anyMatch(volume -> volume.matches("[0-9.]+"));
    }

    @Test
    void noFaultIsThereThatIsNotKnown() {
        assertThat(count(route -> route.parts().isEmpty())).isEqualTo(known(Fault.NULL_GEOMETRY));
        assertThat(count(route -> route.parts().stream().anyMatch(SampleGisTest::isDot)))
                .isEqualTo(known(Fault.ZERO_LENGTH_PART));
        assertThat(count(route -> route.parts().stream().noneMatch(SampleGisTest::isDot) && repeats(route) > 0))
                .isEqualTo(known(Fault.DUPLICATE_VERTEX));
        assertThat(count(route -> route.number("bore_in") > 10)).isEqualTo(known(Fault.BORE_IN_MILLIMETERS));
        assertThat(city.routes().stream()
                        .map(route -> route.text("route_id"))
                        .distinct()
                        .count())
                .isEqualTo(city.routes().size() - known(Fault.DUPLICATE_ROUTE_ID));
        assertThat(city.routes().size() - ducts())
                .isEqualTo(known(Fault.PIECES)
                        + known(Fault.PIECES_THAT_DIFFER)
                        + known(Fault.PIECES_WITH_A_GAP)
                        + known(Fault.PIECES_DRAWN_APART));
    }

    @Test
    void routesWithoutFaultEndAtTheVaultsThatTheyNameAndAreAsLongAsTheySay() {
        var faulty = new TreeSet<>(
                city.faults().stream().map(row -> row.get("feature")).toList());
        List<Route> sound = city.routes().stream()
                .filter(route -> !faulty.contains(route.text("duct_id")))
                .toList();

        assertThat(sound).hasSizeGreaterThan(600).allSatisfy(route -> {
            assertThat(route.first().distance(place(route.text("vault_a")))).isLessThan(1);
            assertThat(route.last().distance(place(route.text("vault_b")))).isLessThan(1);
            assertThat(route.number("length_ft") * 0.3048)
                    .isCloseTo(route.geodesicM(), within(0.01 * route.geodesicM() + 0.4));
        });
    }

    /** Areas in square inches: what is in a bore has less of them than the bore, what is in an innerduct less than it. */
    @Test
    void everyItemFitsByArea() {
        int checked = 0;
        for (Route route : city.routes()) {
            double boreIn = route.number("bore_in") > 10 ? route.number("bore_in") / 25.4 : route.number("bore_in");
            List<CSVRecord> rows = city.rowsOf(route.text("duct_id")).stream()
                    .filter(row -> List.of("innerduct", "cable").contains(row.get("kind")))
                    .toList();
            double innerductsIn2 = rows.isEmpty() ? simpleIn2(route) : tableIn2(rows);
            if (boreIn > 0 && innerductsIn2 > 0) {
                checked++;
                double boreIn2 = boreIn * boreIn * (route.text("bore_shape").equals("square") ? 1 : Math.PI / 4);
                double share = route.number("innerducts") == 1 ? 1 : 0.8;
                assertThat(innerductsIn2).as(route.fields().toString()).isLessThan(share * boreIn2);
            }
        }
        assertThat(checked).isGreaterThan(500);
    }

    private static double simpleIn2(Route route) {
        double sdr = route.number("innerduct_sdr");
        double outsideIn = route.number("innerduct_od_in");
        double cableIn = route.number("cable_od_in");
        if (outsideIn > 0 && cableIn > 0) {
            assertThat(cableIn).isLessThan(0.8 * outsideIn * (1 - 2 / sdr));
        }
        double loose = Math.max(0, route.number("cables") - route.number("innerducts"));
        return (route.number("innerducts") * outsideIn * outsideIn + loose * cableIn * cableIn) * Math.PI / 4;
    }

    private static double tableIn2(List<CSVRecord> rows) {
        double total = 0;
        for (CSVRecord row : rows) {
            double outsideIn = outsideIn(row);
            // Cables in a sleeve are in the duct itself; its fabric is thin.
            if (row.get("inside").isEmpty() || row.get("inside").startsWith("S")) {
                total += outsideIn * outsideIn * Math.PI / 4;
            }
            if (row.get("kind").equals("innerduct")) {
                double wallIn = wallIn(row, outsideIn);
                double insideIn = outsideIn - 2 * wallIn;
                double cablesIn = rows.stream()
                        .filter(cable -> cable.get("inside").equals(row.get("item")))
                        .mapToDouble(SampleGisTest::outsideIn)
                        .sum();
                // Side by side across the bore, which is harsher than by area.
                assertThat(cablesIn).isLessThan(insideIn);
            }
        }
        return total;
    }

    /** IPS outside diameters, 1-1/4 in is 1.660 in (ASTM D3035). */
    private static double outsideIn(CSVRecord row) {
        if (row.get("catalog").isEmpty()) {
            return Double.parseDouble(row.get("outside_diameter"));
        }
        String size = row.get("catalog").split(" ", -1)[1];
        return Map.of("1", 1.315, "1-1/4", 1.660, "1-1/2", 1.900).get(size);
    }

    private static double wallIn(CSVRecord row, double outsideIn) {
        if (!row.get("catalog").isEmpty()) {
            return outsideIn
                    / Double.parseDouble(row.get("catalog").split(" ", -1)[0].substring(3));
        }
        return row.get("sdr").isEmpty()
                ? Double.parseDouble(row.get("wall"))
                : outsideIn / Double.parseDouble(row.get("sdr"));
    }

    @Test
    void sleevesHaveCellsForTheirCablesAndSomeAreFree() {
        List<CSVRecord> sleeves = city.contents().stream()
                .filter(row -> row.get("kind").equals("sleeve"))
                .toList();

        assertThat(sleeves).hasSizeGreaterThan(20).allSatisfy(sleeve -> {
            long cables = cablesIn(sleeve);
            long cells = Long.parseLong(sleeve.get("cells"));
            long reserved = Long.parseLong(sleeve.get("reserved"));
            assertThat(cells).isEqualTo(3);
            assertThat(cables + reserved).isBetween(0L, cells);
            assertThat(sleeve.get("outside_diameter") + sleeve.get("mass")).isEmpty();
        });
        assertThat(sleeves).anyMatch(sleeve -> cablesIn(sleeve) == 3);
        assertThat(sleeves)
                .anyMatch(
                        sleeve -> cablesIn(sleeve) < 3 && sleeve.get("reserved").equals("0"));
        assertThat(sleeves).anyMatch(sleeve -> sleeve.get("reserved").equals("2"));
        assertThat(city.contents().stream().filter(row -> !row.get("kind").equals("sleeve")))
                .allSatisfy(row ->
                        assertThat(row.get("cells") + row.get("reserved")).isEmpty());
    }

    private static long cablesIn(CSVRecord item) {
        return city.rowsOf(item.get("duct")).stream()
                .filter(row -> row.get("inside").equals(item.get("item")))
                .count();
    }

    /** One of four 1-1/4 in innerducts fills a fifth of a 4-in bore; so do the ducts that are small or few in it. */
    @Test
    void innerductsAreOfManySizesAndSomeLeaveMostOfTheBore() {
        List<Double> shares = city.routes().stream()
                .filter(route -> route.number("bore_in") > 3.6 && route.number("bore_in") < 10)
                .filter(route -> route.number("innerducts") > 0
                        && city.rowsOf(route.text("duct_id")).isEmpty())
                .filter(route -> route.number("innerduct_od_in") > 0)
                .map(SampleGisTest::innerductShare)
                .toList();

        assertThat(shares).filteredOn(share -> share < 0.3).hasSizeGreaterThan(shares.size() / 10);
        assertThat(shares).filteredOn(share -> share > 0.5).hasSizeGreaterThan(shares.size() / 10);
        assertThat(city.routes().stream().map(route -> route.text("innerduct_od_in")))
                .contains("1.315", "1.66", "1.9");
    }

    private static double innerductShare(Route route) {
        double outsideIn = route.number("innerduct_od_in");
        return route.number("innerducts") * outsideIn * outsideIn / Math.pow(route.number("bore_in"), 2);
    }

    @Test
    void vaultsAreOfSeveralKindsWithCoversInSeveralPlacesWaterAndSlack() {
        List<Vault> vaults = List.copyOf(city.vaults().values());

        assertThat(vaults.stream().map(vault -> vault.text("kind")))
                .contains("maintenance hole", "handhole", "vault", "pull box");
        for (String surface : List.of("roadway", "sidewalk", "verge", "")) {
            assertThat(vaults)
                    .filteredOn(vault -> vault.text("surface").equals(surface))
                    .hasSizeGreaterThan(vaults.size() / 50);
        }
        assertThat(vaults)
                .filteredOn(vault -> vault.text("water").matches("yes|Y"))
                .hasSizeGreaterThan(20);
        assertThat(vaults).filteredOn(vault -> vault.text("slack_ft").isEmpty()).hasSizeGreaterThan(100);
        assertThat(vaults)
                .filteredOn(vault -> !vault.text("slack_ft").isEmpty())
                .hasSizeGreaterThan(100)
                .allSatisfy(vault ->
                        assertThat(Integer.parseInt(vault.text("slack_ft"))).isBetween(0, 120));
    }

    /** Water is in vaults and ducts together: more often where a wet duct ends than elsewhere. */
    @Test
    void vaultsOfFloodedDuctsAreWetMoreOften() {
        double wet = wetShare(city.routes().stream().filter(SectionsOnDisk::isFlooded));
        double dry = wetShare(city.routes().stream().filter(route -> !SectionsOnDisk.isFlooded(route)));

        assertThat(wet).isGreaterThan(2 * dry);
    }

    private static double wetShare(Stream<Route> routes) {
        return routes.map(route -> city.vaults().get(route.text("vault_a")))
                .filter(vault -> vault != null)
                .mapToDouble(vault -> vault.text("water").matches("yes|Y") ? 1 : 0)
                .average()
                .orElseThrow();
    }

    @Test
    void loopsHoldLiveCablesInInnerducts() {
        assertThat(city.faultsOf(Fault.LOOP_TO_SAME_VAULT))
                .hasSizeGreaterThan(2)
                .allSatisfy(row -> {
                    Route loop = only(row.get("feature"));
                    assertThat(loop.number("innerducts")).isPositive();
                    assertThat(loop.number("cables")).isPositive();
                });
    }

    @Test
    void streetWorksHaveAFirstAndALastDay() {
        assertThat(city.zones())
                .filteredOn(zone -> zone.type().matches("street works|works"))
                .hasSize(3)
                .allSatisfy(zone -> assertThat(zone.starts()).isNotEmpty().isLessThan(zone.until()));
        assertThat(city.zones())
                .anyMatch(zone -> !zone.starts().isEmpty() && zone.type().matches("event.*"));
    }

    /** The outline is in feet of a state grid, the ducts are in meters: GDAL turns both into one system. */
    @Test
    void theEdgeOfACutBanRunsAlongTheDuctsOfAStreet(@TempDir Path folder) throws IOException {
        ExternalTool.named("ogr2ogr")
                .run(
                        "-f",
                        "GeoJSON",
                        folder.resolve("zones.geojson").toString(),
                        COMMITTED.resolve("zones.gpkg").toString(),
                        "-t_srs",
                        "EPSG:4326",
                        "-lco",
                        "COORDINATE_PRECISION=9");
        List<Route> bans = CityOnDisk.outlines(folder.resolve("zones.geojson")).stream()
                .filter(zone -> zone.text("zone_type").matches("no-cut|moratorium|street cut ban"))
                .toList();

        double alongM = bans.stream()
                .mapToDouble(ban -> city.routes().stream()
                        .filter(route -> !route.parts().isEmpty())
                        .mapToDouble(route -> route.shape()
                                .intersection(ban.shape().buffer(0.25))
                                .getLength())
                        .max()
                        .orElseThrow())
                .max()
                .orElseThrow();

        assertThat(alongM).isGreaterThan(100);
    }

    @Test
    void theCityHasWhatADemoMustShow() {
        assertThat(count(route -> route.text("bore_shape").equals("square"))).isPositive();
        assertThat(count(route -> route.text("flooded").equals("yes"))).isPositive();
        assertThat(count(route -> route.text("duct_type").equals("direct buried")))
                .isPositive();
        assertThat(count(route -> route.text("innerducts").equals("0")
                        && route.text("cables").equals("0")))
                .isPositive();
        assertThat(count(route -> route.text("innerducts").equals("0") && route.number("cables") > 0))
                .isPositive();
        assertThat(count(route -> route.parts().size() > 1)).isPositive();
        assertThat(city.routes().stream().map(route -> route.text("condition")))
                .contains("sound", "oval", "collapsed", "blocked");
        assertThat(city.routes().stream().map(route -> route.text("in_service")))
                .contains("live", "dead", "unknown");
        assertThat(city.routes().stream().map(route -> route.text("quality"))).contains("QL-A", "QL-B", "QL-C", "QL-D");
        assertThat(city.routes().stream().map(route -> route.text("material")))
                .contains("PVC", "HDPE", "steel", "clay");
    }

    @ParameterizedTest
    @CsvSource({
        "ducts.geojson, ducts, Line String, WGS 84",
        "vaults.geojson, vaults, Point, WGS 84",
        "harbor.shp, harbor, Line String, US survey foot",
        "harbor_vaults.shp, harbor_vaults, Point, US survey foot",
        "hillside.gpkg, ducts, Multi Line String, UTM zone 9N",
        "hillside.gpkg, vaults, Point, UTM zone 9N",
        "zones.gpkg, zones, Polygon, US survey foot"
    })
    void anIndependentReaderOpensEachLayer(String file, String layer, String geometry, String system) {
        String info =
                ExternalTool.named("ogrinfo").run("-so", COMMITTED.resolve(file).toString(), layer);

        assertThat(info).contains(system).containsPattern("Geometry: .*(" + geometry + "|Unknown).*");
        assertThat(info).containsPattern("Feature Count: [1-9]");
    }

    /** GDAL turns the district back to longitude and latitude; a millimeter is what the city's own digits are worth. */
    @ParameterizedTest
    @CsvSource({"harbor.shp, harbor", "hillside.gpkg, ducts"})
    void aDistrictLiesWhereTheCityHasIt(String file, String layer, @TempDir Path folder) throws IOException {
        Path geoJson = folder.resolve("back.geojson");
        ExternalTool.named("ogr2ogr")
                .run(
                        "-f",
                        "GeoJSON",
                        geoJson.toString(),
                        COMMITTED.resolve(file).toString(),
                        layer,
                        "-t_srs",
                        "EPSG:4326",
                        "-lco",
                        "COORDINATE_PRECISION=9");

        List<Route> district = CityOnDisk.routes(geoJson).stream()
                .filter(route -> !route.parts().isEmpty())
                .toList();

        assertThat(district)
                .hasSizeGreaterThan(100)
                .allSatisfy(route -> assertThat(city.routesOf(route.text("duct_id")).stream()
                                .mapToDouble(same -> apartM(same, route))
                                .min())
                        .hasValueCloseTo(0.0, within(0.001)));
    }

    private static double apartM(Route a, Route b) {
        List<Coordinate> of = a.parts().stream().flatMap(List::stream).toList();
        List<Coordinate> others = b.parts().stream().flatMap(List::stream).toList();
        if (of.size() != others.size()) {
            return Double.POSITIVE_INFINITY;
        }
        double apartM = 0;
        for (int i = 0; i < of.size(); i++) {
            apartM = Math.max(apartM, of.get(i).distance(others.get(i)));
        }
        return apartM;
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static long ducts() {
        return city.routes().stream()
                .map(route -> route.text("duct_id"))
                .distinct()
                .count();
    }

    private static long known(Fault fault) {
        return city.faultsOf(fault).size();
    }

    private static long count(Predicate<Route> that) {
        return city.routes().stream().filter(that).count();
    }

    private static Route only(String duct) {
        assertThat(city.routesOf(duct)).hasSize(1);
        return city.routesOf(duct).get(0);
    }

    private static Coordinate place(String vault) {
        return city.vaults().get(vault).place().orElseThrow();
    }

    private static double jointM(String duct) {
        List<Route> pieces = city.routesOf(duct);
        assertThat(pieces).hasSize(2);
        return pieces.get(0).last().distance(pieces.get(1).first());
    }

    private static double largestDistanceToItsVaults(Route route) {
        var factory = new GeometryFactory();
        return Stream.of("vault_a", "vault_b")
                .mapToDouble(field -> route.shape().distance(factory.createPoint(place(route.text(field)))))
                .max()
                .orElseThrow();
    }

    private static double distanceToNextVault(Coordinate at) {
        return city.vaults().values().stream()
                .flatMap(vault -> vault.place().stream())
                .mapToDouble(at::distance)
                .min()
                .orElseThrow();
    }

    private static double distanceToNextRoute(Coordinate at) {
        var point = new GeometryFactory().createPoint(at);
        return city.routes().stream()
                .filter(route -> !route.parts().isEmpty())
                .mapToDouble(route -> route.shape().distance(point))
                .min()
                .orElseThrow();
    }

    /** Counts the places where a line crosses another and no vault is within 3 m. */
    private static int crossingsWithoutVault(Route line) {
        var vaults = new STRtree();
        for (Vault vault : city.vaults().values()) {
            vault.place().ifPresent(at -> vaults.insert(new org.locationtech.jts.geom.Envelope(at), at));
        }
        List<Coordinate> crossings = new ArrayList<>();
        for (Route other : city.routes()) {
            if (!other.parts().isEmpty() && !other.text("bank_id").equals(line.text("bank_id"))) {
                crossings.addAll(
                        Arrays.asList(line.shape().intersection(other.shape()).getCoordinates()));
            }
        }
        return (int) crossings.stream()
                .filter(at -> {
                    var around = new org.locationtech.jts.geom.Envelope(at);
                    around.expandBy(3);
                    return vaults.query(around).isEmpty();
                })
                .count();
    }

    private static boolean isDot(List<Coordinate> part) {
        return part.stream().distinct().count() == 1;
    }

    private static int repeats(Route route) {
        int repeats = 0;
        for (List<Coordinate> part : route.parts()) {
            for (int i = 1; i < part.size(); i++) {
                repeats += part.get(i).equals2D(part.get(i - 1)) ? 1 : 0;
            }
        }
        return repeats;
    }
}
