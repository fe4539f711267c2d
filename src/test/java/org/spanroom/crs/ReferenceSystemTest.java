package org.spanroom.crs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.ExternalTool;

class ReferenceSystemTest {
    /** A micrometer on the ground, in degrees of latitude. */
    private static final double MICROMETER_DEG = 1e-6 / 111_000;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "OGC:CRS84",
                "CRS84",
                "urn:ogc:def:crs:OGC:1.3:CRS84",
                "urn:ogc:def:crs:OGC::CRS84",
                "http://www.opengis.net/def/crs/OGC/1.3/CRS84",
                "EPSG:4326",
                "epsg:4326",
                "urn:ogc:def:crs:EPSG::4326",
                "urn:ogc:def:crs:EPSG:9.9:4326",
                "http://www.opengis.net/def/crs/EPSG/0/4326",
                "4326",
            })
    void degreesOnWgs84ComeLongitudeFirstUnderEveryName(String definition) {
        double[] ordinates = {-73.5, 40.75};

        ReferenceSystem.parse(definition).toLonLat(ordinates, 2);

        assertThat(ordinates).containsExactly(-73.5, 40.75);
    }

    /**
     * Worked examples of EPSG Guidance Note 7-2 (from memory; the projections alone are compared, so that the datum shift,
     * undone here through the geographic system of the same datum, does not enter): OSGB 1936 / British National Grid, JAD69 / Jamaica National
     * Grid, WGS 84 / Australian Antarctic Polar Stereographic, Amersfoort / RD New.
     */
    @ParameterizedTest(name = "EPSG:{0}")
    @CsvSource({
        "27700, 4277, 0.5, 50.5, 577274.99, 69740.50, 0.01",
        "24200, 4242, -76.94368333333333, 17.932166666666667, 255966.58, 142493.51, 0.01",
        "3032, 4326, 120, -75, 7255380.79, 7053389.56, 0.01",
        "28992, 4289, 6, 53, 196105.283, 557057.739, 0.01",
    })
    void projectsTheWorkedExamplesOfTheGuidanceNote(
            int code, int geographic, double lonDeg, double latDeg, double x, double y, double toleranceM) {
        double[] ordinates = {lonDeg, latDeg};
        ReferenceSystem.parse("EPSG:" + geographic).toLonLat(ordinates, 2);

        ReferenceSystem.parse("EPSG:" + code).fromLonLat(ordinates, 2);

        assertThat(ordinates[0]).isCloseTo(x, within(toleranceM));
        assertThat(ordinates[1]).isCloseTo(y, within(toleranceM));
    }

    /** Places inside each system's area of use; GDAL (PROJ without grids) is the judge, with the agreement to expect. */
    static Stream<Sample> samples() {
        return Stream.of(
                new Sample("EPSG:32633", 15.6, 52.1, 1e-3),
                new Sample("EPSG:32601", -179.2, 12.5, 1e-3),
                new Sample("EPSG:32756", 151.2, -33.9, 1e-3),
                new Sample("EPSG:26918", -74.0, 40.7, 1e-3),
                new Sample("EPSG:25832", 9.1, 48.7, 1e-3),
                new Sample("EPSG:2263", -73.95, 40.72, 1e-3),
                new Sample("EPSG:2222", -110.2, 33.4, 1e-3),
                new Sample("EPSG:2913", -122.67, 45.52, 1e-3),
                new Sample("EPSG:6543", -78.6, 35.8, 1e-3),
                new Sample("EPSG:3857", 2.35, 48.85, 1e-3),
                new Sample("EPSG:2193", 174.8, -41.3, 1e-3),
                new Sample("EPSG:3031", 70.0, -70.0, 1e-3),
                new Sample("EPSG:3413", -51.7, 64.2, 1e-3),
                new Sample("EPSG:5041", 15.6, 86.2, 1e-3),
                new Sample("EPSG:3035", 9.1, 48.7, 1e-3),
                new Sample("EPSG:5070", -95.2, 39.4, 1e-3),
                new Sample("EPSG:2154", 2.35, 48.85, 1e-3),
                new Sample("EPSG:27700", -1.9, 52.5, 3),
                new Sample("EPSG:28992", 4.9, 52.4, 3),
                new Sample("EPSG:31467", 9.1, 48.7, 3),
                new Sample("EPSG:2056", 8.5, 47.4, 3),
                new Sample("EPSG:27572", 2.35, 48.85, 3),
                new Sample("EPSG:4807", 2.35, 48.85, 1e-4),
                new Sample("EPSG:4258", 9.1, 48.7, 1e-7));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("samples")
    void agreesWithGdal(Sample sample) {
        double[] ours = sample.ordinates();

        ReferenceSystem.parse(sample.definition()).fromLonLat(ours, 2);

        double[] theirs = gdalFromLonLat(sample.definition(), sample);
        assertThat(ours[0]).isCloseTo(theirs[0], within(sample.agreement()));
        assertThat(ours[1]).isCloseTo(theirs[1], within(sample.agreement()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("samples")
    void thereAndBackAgreesWithinAMicrometer(Sample sample) {
        var random = new Random(7);
        double[] places = IntStream.range(0, 200)
                .mapToDouble(i -> (i % 2 == 0 ? sample.lonDeg() : sample.latDeg()) + 0.4 * (random.nextDouble() - 0.5))
                .toArray();
        double[] ordinates = places.clone();
        var system = ReferenceSystem.parse(sample.definition());

        system.fromLonLat(ordinates, 2);
        system.toLonLat(ordinates, 2);

        // Near a pole a degree of longitude is short; its length decides.
        double lonTolerance =
                2 * MICROMETER_DEG / Math.cos(Math.toRadians(Math.min(89, Math.abs(sample.latDeg()) + 0.5)));
        for (int at = 0; at < places.length; at += 2) {
            assertThat(ordinates[at]).isCloseTo(places[at], within(lonTolerance));
            assertThat(ordinates[at + 1]).isCloseTo(places[at + 1], within(MICROMETER_DEG));
        }
    }

    /** The two differ only in the order in which the axes are listed, which files do not follow. */
    @Test
    void axesListedNorthingFirstChangeNothing() {
        double[] eastingFirst = {15.6, 86.2};
        double[] northingFirst = {15.6, 86.2};

        ReferenceSystem.parse("EPSG:5041").fromLonLat(eastingFirst, 2);
        ReferenceSystem.parse("EPSG:32661").fromLonLat(northingFirst, 2);

        assertThat(northingFirst).containsExactly(eastingFirst, within(1e-6));
    }

    /** The .prj text that GDAL writes for a code must lead to the same places as the code. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("samples")
    void readsEsriWktAsTheSameSystem(Sample sample) {
        readsAsTheSameSystem(sample, "wkt_esri");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("samples")
    void readsOgcWktAsTheSameSystem(Sample sample) {
        readsAsTheSameSystem(sample, "wkt1");
    }

    private static void readsAsTheSameSystem(Sample sample, String flavour) {
        String wkt = ExternalTool.named("gdalsrsinfo").run("-o", flavour, sample.definition());
        double[] byText = sample.ordinates();
        double[] byCode = sample.ordinates();

        ReferenceSystem.parse(wkt).fromLonLat(byText, 2);
        ReferenceSystem.parse(sample.definition()).fromLonLat(byCode, 2);

        assertThat(byText[0]).isCloseTo(byCode[0], within(sample.textAgreement()));
        assertThat(byText[1]).isCloseTo(byCode[1], within(sample.textAgreement()));
    }

    /** GDAL 3.6 does not read back its own text for systems on the meridian of Paris. */
    static Stream<Sample> greenwichSamples() {
        return samples().filter(sample -> !List.of("EPSG:27572", "EPSG:4807").contains(sample.definition()));
    }

    /** What we write must be understood by GDAL as the system that it is. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("greenwichSamples")
    void writesWktThatGdalReadsAsTheSameSystem(Sample sample) {
        String wkt = ReferenceSystem.parse(sample.definition()).wkt();

        assertThat(gdalFromLonLat(wkt, sample)[0])
                .isCloseTo(gdalFromLonLat(sample.definition(), sample)[0], within(1e-3));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("greenwichSamples")
    void writesEsriWktThatGdalReadsAsTheSameSystem(Sample sample) {
        String wkt = ReferenceSystem.parse(sample.definition()).esriWkt();

        double[] theirs = gdalFromLonLat("ESRI::" + wkt, sample);

        double[] expected = gdalFromLonLat(sample.definition(), sample);
        assertThat(theirs[0]).isCloseTo(expected[0], within(1e-3));
        assertThat(theirs[1]).isCloseTo(expected[1], within(1e-3));
    }

    private static double[] gdalFromLonLat(String definition, Sample sample) {
        String point = String.format(Locale.ROOT, "%.12f %.12f", sample.lonDeg(), sample.latDeg());
        String command = "echo '" + point + "' | gdaltransform -s_srs OGC:CRS84 -t_srs '" + definition + "' -output_xy";
        ExternalTool.named("gdaltransform");
        String out = ExternalTool.named("sh").run("-c", command);
        return Stream.of(out.strip().split("\\s+", -1))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    @Test
    void leavesTheThirdOrdinateAlone() {
        double[] ordinates = {987_000, 210_000, 33.25, 988_000, 211_000, -4};

        ReferenceSystem.parse("EPSG:2263").toLonLat(ordinates, 3);

        assertThat(List.of(ordinates[2], ordinates[5])).containsExactly(33.25, -4.0);
        assertThat(ordinates[0]).isBetween(-74.1, -73.9);
        assertThat(ordinates[4]).isBetween(40.7, 40.8);
    }

    @Test
    void aVertexWithoutAPlaceBecomesNaNAndTheOthersStay() {
        double[] ordinates = {500_000, 5_700_000, Double.NaN, 1, 1e30, 1e30, 510_000, 5_700_000};

        ReferenceSystem.parse("EPSG:32633").toLonLat(ordinates, 2);

        assertThat(ordinates[0]).isCloseTo(15.0, within(1e-9));
        assertThat(ordinates[2]).isNaN();
        assertThat(ordinates[4]).isNaN();
        assertThat(ordinates[6]).isBetween(15.1, 15.2);
    }

    @Test
    void degreesBeyondThePoleAreNoPlace() {
        double[] ordinates = {10, 91, 11, 45};

        ReferenceSystem.crs84().toLonLat(ordinates, 2);

        assertThat(ordinates[0]).isNaN();
        assertThat(ordinates[1]).isNaN();
        assertThat(ordinates[2]).isEqualTo(11);
    }

    /** The names of datums in .prj files are those that GDAL writes for the code. */
    @Test
    void namesDatumsInPrjFilesAsGdalDoes() {
        var tool = ExternalTool.named("gdalsrsinfo");

        assertThat(Datums.prjNames())
                .allSatisfy((name, code) -> assertThat(tool.run("-o", "wkt_esri", "--single-line", "EPSG:" + code))
                        .contains("GEOGCS[\"GCS_" + name + "\",DATUM[\"D_" + name + "\""));
    }

    /** Factors exact by definition: NIST SP 811 (from memory). */
    @Test
    void tellsTheLengthOfItsUnit() {
        assertThat(ReferenceSystem.parse("EPSG:2263").unitLengthM().orElseThrow())
                .isCloseTo(1200.0 / 3937, within(1e-12));
        assertThat(ReferenceSystem.parse("EPSG:2222").unitLengthM()).hasValue(0.3048);
        assertThat(ReferenceSystem.parse("EPSG:25832").unitLengthM()).hasValue(1.0);
        assertThat(ReferenceSystem.crs84().isGeographic()).isTrue();
        assertThat(ReferenceSystem.parse("EPSG:4258").unitLengthM()).isEmpty();
    }

    @Test
    void keepsTheCodeThatTheDefinitionStates() {
        assertThat(ReferenceSystem.parse("EPSG:2263").epsgCode()).isEqualTo(OptionalInt.of(2263));
        assertThat(ReferenceSystem.parse(ReferenceSystem.parse("EPSG:2263").wkt())
                        .epsgCode())
                .isEqualTo(OptionalInt.of(2263));
        assertThat(ReferenceSystem.crs84().epsgCode()).isEmpty();
    }

    @Test
    void takesTheHorizontalPartOfACompoundSystem() {
        double[] ordinates = {577_274.99, 69_740.5, 12};

        ReferenceSystem.parse("EPSG:7405").toLonLat(ordinates, 3);

        assertThat(ordinates[1]).isBetween(50.4, 50.6);
        assertThat(ordinates[2]).isEqualTo(12);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "  ",
                "EPSG:999999",
                "EPSG:5703",
                "EPSG:4978",
                "wgs84",
                "PROJCS[\"x\"",
                "GEOGCS[\"x\",DATUM[",
                "LOCAL_CS[\"x\",UNIT[\"metre\",1]]",
                "PROJCRS[\"x\"]",
                "PROJCS[\"x\",GEOGCS[\"g\",DATUM[\"d\",SPHEROID[\"s\",6378137,298.25]],PRIMEM[\"Greenwich\",0],"
                        + "UNIT[\"degree\",0.01745]],PROJECTION[\"Nonsense\"],UNIT[\"metre\",1]]",
            })
    void refusesWhatIsNoMapInOneLine(String definition) {
        assertThatThrownBy(() -> ReferenceSystem.parse(definition))
                .isInstanceOf(IllegalArgumentException.class)
                .extracting(Throwable::getMessage)
                .asString()
                .doesNotContain("\n")
                .hasSizeBetween(20, 160);
    }

    @Test
    void warnsOfADatumWhoseShiftIsNotKnown() {
        var system = ReferenceSystem.parse(
                "GEOGCS[\"GCS_Old_Town\",DATUM[\"D_Old_Town\",SPHEROID[\"Bessel_1841\",6377397.155,"
                        + "299.1528128]],PRIMEM[\"Greenwich\",0],UNIT[\"Degree\",0.0174532925199433]]");

        assertThat(system.caution()).hasValueSatisfying(text -> assertThat(text).contains("D_Old_Town"));
        assertThat(ReferenceSystem.parse("EPSG:27700").caution()).isEmpty();
        assertThat(ReferenceSystem.parse("EPSG:25832").caution()).isEmpty();
    }

    @Test
    void severalThreadsGetWhatOneGets() {
        var system = ReferenceSystem.parse("EPSG:2263");
        double[] alone = {987_000.25, 210_000.5};
        system.toLonLat(alone, 2);

        List<double[]> together = IntStream.range(0, 2000)
                .parallel()
                .mapToObj(i -> {
                    double[] mine = {987_000.25, 210_000.5};
                    system.toLonLat(mine, 2);
                    return mine;
                })
                .toList();

        assertThat(together).allSatisfy(mine -> assertThat(mine).containsExactly(alone));
    }

    /** A system with a place in it. */
    record Sample(String definition, double lonDeg, double latDeg, double agreement) {
        double[] ordinates() {
            return new double[] {lonDeg, latDeg};
        }

        /** GeoTools computes the Swiss system as two methods, 5 cm apart, for the code and for the text. */
        double textAgreement() {
            return definition.equals("EPSG:2056") ? 0.1 : 1e-3;
        }

        @Override
        public String toString() {
            return definition;
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"GEOGCS[", "GEOGCS[\"x\"", "PROJCS[\"x\",GEOGCS[\"y\",DATUM["})
    void aWktThatEndsEarlyIsRefusedInPlainWords(String text) {
        assertThatThrownBy(() -> ReferenceSystem.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("WKT")
                .hasMessageNotContaining("{0}")
                .hasMessageNotContaining("null");
    }

    /** Numbers beyond what OGC 01-009 allows: a latitude above 90 degrees, an ellipsoid with a negative axis. */
    @ParameterizedTest
    @CsvSource({"6378137, 95", "-5, 40"})
    void aDefinitionWithImpossibleNumbersIsNotUsable(String axisM, String latitudeDeg) {
        String text = "PROJCS[\"x\",GEOGCS[\"y\",DATUM[\"d\",SPHEROID[\"s\"," + axisM
                + ",298.25]],PRIMEM[\"Greenwich\",0],UNIT[\"degree\",0.0174532925199433]],"
                + "PROJECTION[\"Transverse_Mercator\"],PARAMETER[\"latitude_of_origin\"," + latitudeDeg
                + "],PARAMETER[\"central_meridian\",0],PARAMETER[\"scale_factor\",1],"
                + "PARAMETER[\"false_easting\",0],PARAMETER[\"false_northing\",0],UNIT[\"metre\",1]]";

        assertThatThrownBy(() -> ReferenceSystem.parse(text))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageMatching("the definition in WKT is not usable \\(.*[^.]\\)");
    }
}
