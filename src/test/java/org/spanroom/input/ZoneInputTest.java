package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.model.permit.Zone;

class ZoneInputTest {
    private static final double[] SQUARE = {-30, 40, -29.99, 40, -29.99, 40.01, -30, 40.01, -30, 40};

    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();
    private Path routes;
    private Path zones;

    @BeforeEach
    void writeFiles() throws IOException {
        routes = folder.resolve("routes.geojson");
        zones = folder.resolve("zones.geojson");
        Files.writeString(routes, "{}");
        Files.writeString(zones, "{}");
    }

    private InputData read(FakeLayer layer, String more) throws IOException {
        return read(new FakeLayer("OGC:CRS84"), layer, more);
    }

    private InputData read(FakeLayer routeLayer, FakeLayer layer, String more) throws IOException {
        Path yaml = folder.resolve("c.yaml");
        Files.writeString(
                yaml,
                "inputs:\n  routes: {file: " + routes + "}\n  zones:\n    file: " + zones
                        + "\n    fields: {zone: Z, zone_kind: K, zone_name: N, zone_until: U, zone_from: F}\n" + more);
        RunConfig config = ConfigReader.read(yaml);
        return new InputReader(config, findings, (path, name, log) -> path.equals(zones) ? layer : routeLayer).read();
    }

    private static FakeLayer layer() {
        return new FakeLayer("OGC:CRS84", "Z", "K", "N", "U", "F");
    }

    private static SourceGeometry polygon(double[]... rings) {
        List<Boolean> starts =
                IntStream.range(0, rings.length).mapToObj(i -> i == 0).toList();
        return new SourceGeometry(Kind.POLYGONS, List.of(rings), false, starts);
    }

    private List<Finding> of(FindingCode code) {
        return findings.all().stream().filter(finding -> finding.code() == code).toList();
    }

    private static InputRecord record(InputData data) {
        return data.records().stream()
                .filter(input -> input.role().equals("zones"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void attributesBecomeKindNameAndLastDay() throws IOException {
        var layer = layer().geometry(polygon(SQUARE), "Z1", "Moratorium", "Main street", "2028-06-30")
                .geometry(polygon(SQUARE), "Z2", "NIGHT ONLY", null, null)
                .geometry(polygon(SQUARE), "Z3", "parade", "", "2028-07-04T12:00:00Z");

        List<Zone> read = read(
                        layer,
                        "permit:\n  kinds:\n    parade_route: {words: [parade], recovery_at_vault: [parade_permit],"
                                + " recovery_lead_days: 3, new_build_lead_days: 3}\n")
                .zones();

        assertThat(read).extracting(Zone::kind).containsExactly("cut_ban", "night_only", "parade_route");
        assertThat(read).extracting(Zone::name).containsExactly("Main street", "", "");
        assertThat(read)
                .extracting(Zone::until)
                .containsExactly(
                        Optional.of(LocalDate.of(2028, 6, 30)),
                        Optional.empty(),
                        Optional.of(LocalDate.of(2028, 7, 4)));
        assertThat(findings.all()).isEmpty();
    }

    @Test
    void blanksThatCannotBeSeenAreNoPartOfNames() throws IOException {
        var layer = layer().geometry(
                        polygon(SQUARE), "Z1\u00a0", "\u200bRail\u202f", "\ufeffEast yard ", "2028-06-30\u00a0");

        Zone zone = read(layer, "").zones().get(0);

        assertThat(List.of(zone.id(), zone.kind(), zone.name())).containsExactly("Z1", "rail", "East yard");
        assertThat(zone.until()).contains(LocalDate.of(2028, 6, 30));
        assertThat(findings.all()).isEmpty();
    }

    @Test
    void aKindThatNobodyKnowsIsOtherAndAFinding() throws IOException {
        var layer = layer().geometry(polygon(SQUARE), "Z1", "drone corridor", "", "soon");

        List<Zone> read = read(layer, "").zones();

        assertThat(read).extracting(Zone::kind).containsExactly("other");
        assertThat(of(FindingCode.ZONE_KIND_UNKNOWN)).singleElement().satisfies(finding -> {
            assertThat(finding.featureId()).isEqualTo("Z1");
            assertThat(finding.field()).isEqualTo("K");
            assertThat(finding.detail()).contains("drone corridor");
        });
        assertThat(of(FindingCode.UNUSABLE_VALUE))
                .singleElement()
                .satisfies(finding -> assertThat(finding.detail()).contains("'soon'"));
    }

    @Test
    void aLayerOfOneKindNeedsNoFieldForIt() throws IOException {
        var layer = layer().geometry(polygon(SQUARE), "Z1");

        assertThat(read(layer, "assumed: {zone_kind: heritage}\n").zones())
                .extracting(Zone::kind)
                .containsExactly("heritage");
    }

    @Test
    void polygonsThatCrossThemselvesAreRepairedWithAFinding() throws IOException {
        double[] bowTie = {-30, 40, -29.99, 40.01, -29.99, 40, -30, 40.01, -30, 40};
        double[] open = {-30, 40, -29.99, 40, -29.99, 40.01};
        var layer = layer().geometry(polygon(bowTie), "Z1", "rail").geometry(polygon(open), "Z2", "rail");

        InputData data = read(layer, "");

        assertThat(data.zones().get(0).outlines()).hasSize(2);
        assertThat(data.zones().get(1).outlines()).hasSize(1);
        assertThat(of(FindingCode.ZONE_OUTLINE_INVALID))
                .extracting(Finding::featureId)
                .containsExactly("Z1", "Z2");
        assertThat(record(data).featuresUsed()).isEqualTo(2);
    }

    @Test
    void holesStayHoles() throws IOException {
        double[] hole = {-29.996, 40.004, -29.994, 40.004, -29.994, 40.006, -29.996, 40.004};
        var layer = layer().geometry(polygon(SQUARE, hole), "Z1", "rail");

        assertThat(read(layer, "").zones().get(0).outlines())
                .singleElement()
                .satisfies(outline -> assertThat(outline.holes()).hasSize(1));
    }

    @Test
    void everyFeatureIsUsedOrRejectedWithAFinding() throws IOException {
        double[] flat = {-30, 40, -29.99, 40.01, -30, 40};
        double[] wide = {-30, 40, 20, 40, 20, 50, -30, 40};
        var layer = layer().geometry(polygon(SQUARE), "Z1", "rail")
                .geometry(polygon(flat), "Z2", "rail")
                .geometry(polygon(wide), "Z3", "rail")
                .point(-30, 40, "Z4", "rail")
                .geometry(new SourceGeometry(Kind.NONE, List.of(), false, List.of()), "Z5", "rail");

        InputData data = read(layer, "");

        assertThat(data.zones()).extracting(Zone::id).containsExactly("Z1");
        assertThat(record(data).featuresRead()).isEqualTo(5);
        assertThat(record(data).featuresUsed()).isEqualTo(1);
        assertThat(record(data).featuresRejected()).isEqualTo(4);
        assertThat(of(FindingCode.ZONE_WITHOUT_AREA)).hasSize(1);
        assertThat(of(FindingCode.ZONE_TOO_WIDE)).hasSize(1);
        assertThat(of(FindingCode.WRONG_GEOMETRY_TYPE)).hasSize(1);
        assertThat(of(FindingCode.EMPTY_GEOMETRY)).hasSize(1);
    }

    @Test
    void zonesPastTheirLastDayAreTold() throws IOException {
        var layer = layer().geometry(polygon(SQUARE), "Z1", "rail", "", "2027-01-14")
                .geometry(polygon(SQUARE), "Z2", "rail", "", "2027-01-15");

        assertThat(read(layer, "permit: {on_date: 2027-01-15}\n").zones()).hasSize(2);
        assertThat(of(FindingCode.ZONE_EXPIRED)).extracting(Finding::featureId).containsExactly("Z1");
    }

    /** A zone to come is kept and reported, as is one whose days are the wrong way round: that one counts on every day. */
    @Test
    void firstDaysAreReadAndReported() throws IOException {
        var layer = layer().geometry(polygon(SQUARE), "Z1", "rail", "", null, "2027-01-15")
                .geometry(polygon(SQUARE), "Z2", "rail", "", "2027-02-01", "2027-01-16")
                .geometry(polygon(SQUARE), "Z3", "rail", "", "2027-01-10", "2027-01-20")
                .geometry(polygon(SQUARE), "Z4", "rail", "", "2027-01-20", "2027-01-20")
                .geometry(polygon(SQUARE), "Z5", "rail", "", "2027-01-20", "spring");

        List<Zone> read = read(layer, "permit: {on_date: 2027-01-15}\n").zones();

        assertThat(read)
                .extracting(zone -> zone.from().map(LocalDate::toString).orElse(""))
                .containsExactly("2027-01-15", "2027-01-16", "", "2027-01-20", "");
        assertThat(read.get(2).until()).isEmpty();
        assertThat(read.get(4).until()).contains(LocalDate.of(2027, 1, 20));
        assertThat(of(FindingCode.ZONE_TO_COME)).extracting(Finding::featureId).containsExactly("Z2", "Z4");
        assertThat(of(FindingCode.ZONE_TO_COME).get(0).detail()).contains("2027-01-16", "listed as upcoming");
        assertThat(of(FindingCode.ZONE_DAYS_REVERSED))
                .extracting(Finding::featureId)
                .containsExactly("Z3");
        assertThat(of(FindingCode.ZONE_EXPIRED)).isEmpty();
        assertThat(of(FindingCode.UNUSABLE_VALUE))
                .extracting(Finding::featureId)
                .containsExactly("Z5");
    }

    @Test
    void theFindingOfAZoneToComeSaysWhetherItCounts() throws IOException {
        var layer = layer().geometry(polygon(SQUARE), "Z1", "rail", "", null, "2027-01-16");

        read(layer, "permit: {on_date: 2027-01-15, to_come_count: true}\n");

        assertThat(of(FindingCode.ZONE_TO_COME).get(0).detail()).contains("it is still applied");
    }

    @Test
    void aZoneDrawnToAndFroAcrossTheDateLineIsWhole() throws IOException {
        double[] ring = {
            179.98, 10, -179.98, 10, -179.98, 10.04, 179.99, 10.03, -179.99, 10.02, 179.98, 10.01, 179.98, 10
        };
        double[] hole = {-179.99, 10.004, -179.989, 10.004, -179.989, 10.005, -179.99, 10.004};

        List<Zone> read =
                read(layer().geometry(polygon(ring, hole), "Z1", "rail"), "").zones();

        assertThat(of(FindingCode.ZONE_OUTLINE_INVALID)).isEmpty();
        assertThat(read.get(0).outlines()).singleElement().satisfies(outline -> {
            assertThat(outline.holes()).hasSize(1);
            assertThat(outline.shell().x(1)).isEqualTo(180.02, org.assertj.core.api.Assertions.within(1e-9));
        });
    }

    private static FakeLayer route(double lonDeg, double latDeg) {
        return new FakeLayer("OGC:CRS84").line(new double[] {lonDeg, latDeg, lonDeg + 0.001, latDeg});
    }

    /** Without a word, permits that such a layer requires would merely be missing. */
    @Test
    void aLayerOfZonesThatCanRequireNothingIsReported() throws IOException {
        read(route(10, 50), layer().geometry(polygon(SQUARE), "Z1", "rail"), "");
        read(route(10, 50), layer(), "");
        read(route(10, 50), layer().point(10, 50, "Z1", "rail"), "");

        assertThat(of(FindingCode.ZONES_FAR_FROM_ROUTES))
                .extracting(Finding::detail)
                .satisfiesExactlyInAnyOrder(
                        far -> assertThat(far).startsWith("none of its 1 zone is within about 5 km of the routes"),
                        none -> assertThat(none).startsWith("the layer has no features"),
                        points -> assertThat(points).isEqualTo("none of its 1 feature can be used as a zone"));
    }

    @Test
    void oneZoneNearIsEnoughAcrossTheDateLineToo() throws IOException {
        double[] ring = {179.98, 10, -179.98, 10, -179.98, 10.04, 179.98, 10};

        read(
                route(-30.03, 40.02),
                layer().geometry(polygon(ring), "Z1", "rail").geometry(polygon(SQUARE), "Z2", "rail"),
                "");
        read(route(-179.985, 10.01), layer().geometry(polygon(ring), "Z1", "rail"), "");
        read(route(179.985, 10.01), layer().geometry(polygon(ring), "Z1", "rail"), "");

        assertThat(of(FindingCode.ZONES_FAR_FROM_ROUTES)).isEmpty();
    }
}
