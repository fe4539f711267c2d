package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Vault;

class InputReaderTest {
    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();
    private Path file;

    @BeforeEach
    void writeFile() throws IOException {
        file = folder.resolve("fake.geojson");
        Files.writeString(file, "{}");
    }

    private RunConfig config(String routeFields, String more) throws IOException {
        Path yaml = folder.resolve("c.yaml");
        Files.writeString(
                yaml,
                "inputs:\n  routes:\n    file: " + file + "\n    fields: {" + routeFields
                        + "}\n  vaults:\n    fields: {vault: V," + " vault_kind: K, vault_elevation: E}\n" + more);
        return ConfigReader.read(yaml);
    }

    private List<Route> routes(FakeLayer layer, String routeFields, String more) throws IOException {
        return new InputReader(config(routeFields, more), findings, (path, name, log) -> layer)
                .read()
                .routes();
    }

    private List<Vault> vaults(FakeLayer layer) throws IOException {
        RunConfig config = config("", "");
        var inputs = config.inputs();
        RunConfig both = config.withInputs(inputs.withVaults(inputs.vaults().withFile(file)))
                .withThreads(1);
        var empty = new FakeLayer("OGC:CRS84");
        return new InputReader(
                        both, findings, (path, name, log) -> findings.all().isEmpty() && !seen(path) ? empty : layer)
                .read()
                .vaults();
    }

    private boolean opened;

    /** Routes are opened first, and once, where one thread reads everything. */
    private boolean seen(Path ignored) {
        boolean before = opened;
        opened = true;
        return before;
    }

    private static double[] line() {
        return new double[] {-140.0, 20.0, -140.001, 20.0};
    }

    private List<Finding> of(FindingCode code) {
        return findings.all().stream().filter(finding -> finding.code() == code).toList();
    }

    private static final String ALL =
            "route: R, duct: D, duct_bank: B, inside_diameter: {field: BORE, unit: in}, bore_shape: SH,"
                    + " duct_type: T, duct_material: MAT, innerduct_count: N, innerduct_outside_diameter: {field: OD, unit: in},"
                    + " innerduct_sdr: SDR, cable_count: C, cable_outside_diameter: {field: COD, unit: in},"
                    + " cable_mass: {field: W, unit: lb/1000ft}, in_service: S, flooded: F, surface: SU, owner: O, year: Y,"
                    + " condition: CO, recorded_length: {field: L, unit: ft}, vault_a: FV, vault_b: TV, position_quality: Q";
    private static final String[] FIELDS = {
        "R", "D", "B", "BORE", "SH", "T", "MAT", "N", "OD", "SDR", "C", "COD", "W", "S", "F", "SU", "O", "Y", "CO", "L",
        "FV", "TV", "Q"
    };

    /** 1 in = 25.4 mm, 1 ft = 0.3048 m, 1 lb = 0.45359237 kg, all exact (NIST SP 811, from memory). */
    @Test
    void mapsEveryTermWithItsUnit() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", FIELDS)
                .line(
                        line(), 17L, "D4", "B1", 4.0, "Square", "conduit", "clay", 3L, 1.66, 13.5, 2L, 0.5, 100.0,
                        "Active", "Y", "road", "city", 1987L, "OVAL", 300L, "MH1", "MH2", "QL-B");

        Route route = routes(layer, ALL, "").get(0);

        Duct duct = route.duct();
        assertThat(route.id()).isEqualTo("17");
        assertThat(route.recordedLengthM().orElseThrow()).isCloseTo(91.44, within(1e-9));
        assertThat(route.fromVaultId()).contains("MH1");
        assertThat(route.toVaultId()).contains("MH2");
        assertThat(route.positionQuality()).isEqualTo("QL-B");
        assertThat(duct.id()).isEqualTo("D4");
        assertThat(duct.bankId()).isEqualTo("B1");
        assertThat(duct.boreShape()).isEqualTo(BoreShape.SQUARE);
        assertThat(duct.insideDiameterMm()).isCloseTo(101.6, within(1e-9));
        assertThat(duct.type()).isEqualTo("conduit");
        assertThat(duct.material()).isEqualTo("clay");
        assertThat(duct.directBuried()).isFalse();
        assertThat(duct.flooded()).isTrue();
        assertThat(duct.condition()).isEqualTo(Condition.OVAL);
        assertThat(duct.surface()).isEqualTo("road");
        assertThat(duct.owner()).isEqualTo("city");
        assertThat(duct.installedYear()).isEqualTo(OptionalInt.of(1987));
        assertThat(duct.assumed()).isEmpty();
        Contents contents = duct.contents();
        assertThat(contents.innerducts()).hasSize(3);
        assertThat(contents.innerducts().get(0).outsideDiameterMm()).isCloseTo(42.164, within(1e-9));
        assertThat(contents.innerducts().get(0).wallMm()).isCloseTo(42.164 / 13.5, within(1e-9));
        assertThat(contents.innerducts().get(1).cables()).hasSize(1);
        assertThat(contents.innerducts().get(2).isEmpty()).isTrue();
        assertThat(contents.cables().get(0).massKgPerM()).isCloseTo(0.45359237 / 3.048, within(1e-9));
        assertThat(contents.cables().get(0).service()).isEqualTo(Service.LIVE);
        assertThat(findings.all()).isEmpty();
    }

    @Test
    void assumedValuesStandInAndAreNamed() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", FIELDS).line(line(), "R1").line(line(), "R2", "D", "", 3.5);

        List<Route> routes = routes(layer, ALL, "assumed: {innerduct_count: 2, cable_count: 0}\n");

        Duct duct = routes.get(0).duct();
        assertThat(duct.id()).isEqualTo("R1");
        assertThat(duct.insideDiameterMm()).isEqualTo(101.6);
        assertThat(duct.assumed())
                .isEqualTo(Set.of(
                        Term.INSIDE_DIAMETER,
                        Term.BORE_SHAPE,
                        Term.INNERDUCT_COUNT,
                        Term.INNERDUCT_OUTSIDE_DIAMETER,
                        Term.INNERDUCT_SDR,
                        Term.CABLE_COUNT,
                        Term.FLOODED,
                        Term.CONDITION));
        assertThat(routes.get(1).duct().assumed()).doesNotContain(Term.INSIDE_DIAMETER);
        assertThat(of(FindingCode.MISSING_VALUE))
                .anySatisfy(finding -> {
                    assertThat(finding.field()).isEqualTo("N");
                    assertThat(finding.detail()).isEqualTo("all 2 features: no innerduct_count is recorded; assumed 2");
                })
                .anySatisfy(finding -> {
                    assertThat(finding.field()).isEqualTo("BORE");
                    assertThat(finding.featureId()).isEqualTo("R1");
                    assertThat(finding.place()).isPresent();
                })
                .noneSatisfy(finding -> assertThat(finding.field()).isEqualTo("W"));
    }

    @Test
    void aBoreInTheWrongUnitSaysWhichUnitWouldFit() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "R", "B").line(line(), "R1", 4L).line(line(), "R2", 100L);

        List<Route> routes = routes(layer, "route: R, inside_diameter: B", "");

        assertThat(routes.get(0).duct().insideDiameterMm()).isEqualTo(101.6);
        assertThat(routes.get(0).duct().assumed()).contains(Term.INSIDE_DIAMETER);
        assertThat(routes.get(1).duct().insideDiameterMm()).isEqualTo(100);
        assertThat(of(FindingCode.IMPLAUSIBLE_VALUE)).singleElement().satisfies(finding -> {
            assertThat(finding.featureId()).isEqualTo("R1");
            assertThat(finding.detail())
                    .isEqualTo("4 mm is outside the plausible range of inside_diameter (20 to 500 mm);"
                            + " it would be plausible in inches or cm; assumed 101.6 mm");
        });
    }

    @Test
    void wordsThatStandInNoListAreTold() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "F", "C")
                .line(line(), "see file", "sound")
                .line(line(), "unknown", "so-so")
                .line(line(), true, null);

        List<Route> routes = routes(layer, "flooded: F, condition: C", "assumed: {flooded: yes}\n");

        assertThat(routes).extracting(route -> route.duct().flooded()).containsExactly(true, true, true);
        assertThat(routes)
                .extracting(route -> route.duct().assumed().contains(Term.FLOODED))
                .containsExactly(true, true, false);
        assertThat(of(FindingCode.UNUSABLE_VALUE))
                .extracting(Finding::detail)
                .containsExactly(
                        "'see file' is not in any word list for flooded",
                        "'so-so' is not in any word list for condition");
        assertThat(of(FindingCode.MISSING_VALUE)).hasSize(2);
    }

    @Test
    void contentsAreUnknownWhereACountIs() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "N", "C")
                .line(line(), 2L, null)
                .line(line(), 0L, 0L)
                .line(line(), "many", 1L);

        List<Route> routes = routes(layer, "innerduct_count: N, cable_count: C", "");

        assertThat(routes).extracting(route -> route.duct().contents().known()).containsExactly(false, true, false);
        assertThat(routes.get(1).duct().contents().innerducts()).isEmpty();
    }

    @Test
    void moreCablesThanInnerductsLieLoose() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "N", "C").line(line(), 2L, 3L).line(line(), 0L, 1L);

        List<Route> routes = routes(layer, "innerduct_count: N, cable_count: C", "");

        assertThat(routes.get(0).duct().contents().looseCables())
                .extracting("id")
                .containsExactly("cable-3");
        assertThat(routes.get(1).duct().contents().looseCables()).hasSize(1);
        assertThat(of(FindingCode.CABLES_EXCEED_INNERDUCTS))
                .singleElement()
                .satisfies(finding -> assertThat(finding.featureId()).isEqualTo("1"));
    }

    /** Whatever a config believes, no duct takes the memory of a million cables; what was recorded is kept. */
    @Test
    void aHugeCountCreatesNoCablesAndIsKept() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "N", "C")
                .line(line(), 0L, 1_000_000L)
                .line(line(), 300L, 300L);

        List<Route> routes = routes(layer, "innerduct_count: N, cable_count: C", """
                plausible: {innerduct_count: {least: 0, most: 300}, cable_count: {least: 0, most: 300}}
                assumed: {cable_count: 2}
                """);

        Duct implausible = routes.get(0).duct();
        assertThat(implausible.contents().cableCount()).isEqualTo(2);
        assertThat(implausible.rejected())
                .singleElement()
                .satisfies(value -> assertThat(value.recorded()).isEqualTo("1000000"));
        assertThat(of(FindingCode.IMPLAUSIBLE_VALUE)).singleElement().satisfies(finding -> {
            assertThat(finding.featureId()).isEqualTo("1");
            assertThat(finding.field()).isEqualTo("C");
            assertThat(finding.detail())
                    .isEqualTo("1000000 is outside the plausible range of cable_count (0 to 300); assumed 2");
        });
        assertThat(routes.get(1).duct().contents().cableCount()).isEqualTo(Contents.MOST_THINGS);
    }

    /** Four innerducts of 42.164 mm have 5585 mm2, a 2-in bore has 2027. */
    @Test
    void contentsLargerThanTheBoreAreTold() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "N", "C", "B").line(line(), 4L, 0L, 50.8);

        routes(layer, "innerduct_count: N, cable_count: C, inside_diameter: B", "");

        assertThat(of(FindingCode.CONTENTS_OVERFILL))
                .singleElement()
                .satisfies(finding ->
                        assertThat(finding.detail()).isEqualTo("contents of 5585 mm2 in a bore of 2027 mm2"));
    }

    @Test
    void ductsOfOneKindShareTheirContents() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "N", "C", "O")
                .line(line(), 2L, 1L, new String("city"))
                .line(line(), 2L, 1L, new String("city"));

        List<Route> routes = routes(layer, "innerduct_count: N, cable_count: C, owner: O", "");

        assertThat(routes.get(1).duct().contents())
                .isSameAs(routes.get(0).duct().contents());
        assertThat(routes.get(1).duct().owner()).isSameAs(routes.get(0).duct().owner());
        assertThat(routes.get(1).duct().assumed()).isSameAs(routes.get(0).duct().assumed());
    }

    @Test
    void everyPartIsARouteInOrder() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "R")
                .geometry(Kind.LINES, List.of(line(), line()), false, "A")
                .geometry(Kind.LINES, List.of(new double[] {-140, 20, 3.5, -140.1, 20, 4}), true, "B");

        List<Route> routes = routes(layer, "route: R", "");

        assertThat(routes).extracting(Route::sequence).containsExactly(0, 1, 2);
        assertThat(routes).extracting(Route::id).containsExactly("A", "A", "B");
        assertThat(routes.get(2).lonLat().z(1)).isEqualTo(4);
        assertThat(of(FindingCode.DUPLICATE_ID)).isEmpty();
    }

    @Test
    void whatIsNoLineIsRejectedWithAFinding() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "R")
                .point(1, 1, "A")
                .geometry(Kind.NONE, List.of(), false, "B")
                .line(new double[] {10, 91, 11, 45}, "C")
                .line(line(), "D")
                .line(line(), "D");

        var data = new InputReader(config("route: R", ""), findings, (path, name, log) -> layer).read();

        assertThat(data.routes()).extracting(Route::id).containsExactly("D", "D");
        assertThat(data.records()).singleElement().satisfies(record -> {
            assertThat(record.featuresRead()).isEqualTo(5);
            assertThat(record.featuresUsed()).isEqualTo(2);
            assertThat(record.featuresRejected()).isEqualTo(3);
        });
        assertThat(findings.all())
                .extracting(Finding::code)
                .containsExactly(
                        FindingCode.EMPTY_GEOMETRY,
                        FindingCode.WRONG_GEOMETRY_TYPE,
                        FindingCode.BAD_COORDINATE,
                        FindingCode.DUPLICATE_ID);
    }

    /** NIST FIPS 180-4 example, one block: "abc". */
    @Test
    void theDigestIsThatOfThePublishedExample() throws IOException {
        Files.writeString(file, "abc");

        assertThat(FileDigest.of(file).sha256Hex())
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    @Test
    void anUnknownReferenceSystemSaysHowToGiveIt() throws IOException {
        assertThatThrownBy(() -> routes(new FakeLayer("").line(line()), "", ""))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("does not state its reference system")
                .hasMessageContaining("--crs EPSG:code or inputs.routes.crs");
        assertThatThrownBy(() -> routes(new FakeLayer("EPSG:999999").line(line()), "", ""))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("its reference system cannot be used");
    }

    @Test
    void theSystemOfTheConfigOverrulesThatOfTheFile() throws IOException {
        var layer = new FakeLayer("OGC:CRS84").line(new double[] {500_000, 5_700_000, 500_100, 5_700_000});
        RunConfig config = config("", "");
        var inputs = config.inputs();
        RunConfig given = config.withInputs(inputs.withRoutes(inputs.routes().withCrs("EPSG:32633")));

        var data = new InputReader(given, findings, (path, name, log) -> layer).read();

        assertThat(data.routes().get(0).lonLat().x(0)).isCloseTo(15.0, within(1e-9));
        assertThat(data.crs().name()).contains("UTM zone 33N");
    }

    @Test
    void exchangedOrdinatesAndWrongSystemsAreSuspected() throws IOException {
        routes(new FakeLayer("OGC:CRS84").line(new double[] {20, -140, 20, -140.1}), "", "");
        assertThat(of(FindingCode.LAYER_ISSUE))
                .singleElement()
                .satisfies(finding -> assertThat(finding.detail()).contains("seem to be swapped"));
        assertThat(of(FindingCode.BAD_COORDINATE)).hasSize(1);
    }

    @Test
    void lengthsTakenForDegreesAreSuspected() throws IOException {
        routes(new FakeLayer("OGC:CRS84").line(new double[] {500_000, 5_700_000, 500_100, 5_700_000}), "", "");

        assertThat(of(FindingCode.LAYER_ISSUE))
                .singleElement()
                .satisfies(finding -> assertThat(finding.detail()).contains("--crs EPSG:code"));
    }

    @Test
    void aFieldThatTheLayerLacksEndsTheReading() {
        assertThatThrownBy(() -> routes(new FakeLayer("OGC:CRS84", "R").line(line(), "A"), "route: R, owner: OWNR", ""))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("no field 'OWNR' (mapped to owner)");
    }

    @Test
    void fieldsAreFoundWithoutCaseAndByTheTenCharactersOfAShapefile() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "route_id", "INNERDUCT_").line(line(), "A", 3L);

        List<Route> routes =
                routes(layer, "route: ROUTE_ID, innerduct_count: innerduct_count", "assumed: {cable_count: 0}\n");

        assertThat(routes.get(0).id()).isEqualTo("A");
        assertThat(routes.get(0).duct().contents().innerducts()).hasSize(3);
    }

    @Test
    void oneFaultOfAWholeLayerDoesNotDrownTheOthers() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "B", "F");
        for (int i = 0; i < 5000; i++) {
            layer.line(line(), 4L, i == 0 ? "wet" : null);
        }

        routes(layer, "inside_diameter: B, flooded: F", "");

        assertThat(of(FindingCode.IMPLAUSIBLE_VALUE))
                .hasSize(1001)
                .anySatisfy(finding -> assertThat(finding.detail()).startsWith("4,000 more features"));
        assertThat(of(FindingCode.MISSING_VALUE))
                .singleElement()
                .satisfies(
                        finding -> assertThat(finding.detail()).startsWith("4,999 features: no flooded is recorded"));
    }

    /** Two parts of 1 and 3 thousandths of a degree; the record is of both. */
    @Test
    void partsOfOneFeatureShareWhatIsRecordedOfTheWhole() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "R", "L", "A", "B")
                .geometry(
                        Kind.LINES,
                        List.of(new double[] {0, 0, 0, 0.001}, new double[] {1, 0, 1, 0.003}),
                        false,
                        "R1",
                        444.0,
                        "V1",
                        "V2");

        List<Route> routes = routes(layer, "route: R, recorded_length: L, vault_a: A, vault_b: B", "");

        assertThat(routes)
                .extracting(route -> route.recordedLengthM().orElseThrow())
                .satisfies(lengths -> {
                    assertThat(lengths.get(0)).isCloseTo(111, within(1e-6));
                    assertThat(lengths.get(1)).isCloseTo(333, within(1e-6));
                });
        assertThat(routes.get(0).fromVaultId()).contains("V1");
        assertThat(routes.get(0).toVaultId()).isEmpty();
        assertThat(routes.get(1).fromVaultId()).isEmpty();
        assertThat(routes.get(1).toVaultId()).contains("V2");
    }

    @Test
    void vaultsComeFromPointsAndMultiPoints() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "V", "K", "E")
                .point(-140, 20, 7.0, "handhole", 12.5)
                .geometry(Kind.POINTS, List.of(new double[] {-141, 20, 5}, new double[] {-142, 20, 6}), true, "M")
                .point(-143, 20);

        List<Vault> vaults = vaults(layer);

        assertThat(vaults).extracting(Vault::id).containsExactly("7", "M", "M-2", "3");
        assertThat(vaults).extracting(Vault::kind).containsExactly("handhole", "", "", "");
        assertThat(vaults)
                .extracting(Vault::elevationM)
                .containsExactly(
                        OptionalDouble.of(12.5), OptionalDouble.of(5), OptionalDouble.of(6), OptionalDouble.empty());
        assertThat(of(FindingCode.DUPLICATE_ID)).hasSize(1);
    }

    @Test
    void vaultsComeFromOutlinesWithAPlaceInside() throws IOException {
        double[] outer = {0, 0, 4e-3, 0, 4e-3, 4e-3, 0, 4e-3, 0, 0};
        double[] hole = {1e-3, 1e-3, 1e-3, 3e-3, 3e-3, 3e-3, 3e-3, 1e-3, 1e-3, 1e-3};
        double[] other = {7e-3, 0, 8e-3, 0, 8e-3, 1e-3, 7e-3, 0};
        var layer = new FakeLayer("OGC:CRS84", "V", "K", "E")
                .geometry(
                        new SourceGeometry(
                                Kind.POLYGONS, List.of(outer, hole, other), false, List.of(true, false, true)),
                        "P",
                        null,
                        null);

        Vault vault = vaults(layer).get(0);

        assertThat(vault.footprint()).hasSize(2);
        assertThat(vault.footprint().get(0).size()).isEqualTo(5);
        boolean inHole =
                vault.lonDeg() > 1e-3 && vault.lonDeg() < 3e-3 && vault.latDeg() > 1e-3 && vault.latDeg() < 3e-3;
        assertThat(inHole).isFalse();
        assertThat(vault.lonDeg()).isBetween(0.0, 4e-3);
        assertThat(of(FindingCode.VAULT_FOOTPRINT_INVALID)).isEmpty();
    }

    @Test
    void brokenOutlinesAreMendedWithAFinding() throws IOException {
        var layer = new FakeLayer("OGC:CRS84", "V", "K", "E")
                .geometry(polygon(0, 0, 2e-3, 2e-3, 2e-3, 0, 0, 2e-3, 0, 0), "BOW", null, null)
                .geometry(polygon(0, 0, 1e-3, 0, 1e-3, 1e-3), "OPEN", null, null)
                .geometry(polygon(5, 5, 5.001, 5.001, 5, 5), "FLAT", null, null);

        List<Vault> vaults = vaults(layer);

        assertThat(vaults).extracting(vault -> vault.footprint().size()).containsExactly(2, 1, 0);
        assertThat(vaults.get(2).lonDeg()).isEqualTo(5);
        assertThat(of(FindingCode.VAULT_FOOTPRINT_INVALID))
                .extracting(Finding::featureId)
                .containsExactly("BOW", "FLAT", "OPEN");
    }

    private static SourceGeometry polygon(double... xy) {
        return new SourceGeometry(Kind.POLYGONS, List.of(xy), false, List.of(true));
    }
}
