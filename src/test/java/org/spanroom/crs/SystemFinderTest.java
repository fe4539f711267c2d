package org.spanroom.crs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.testing.ExternalTool;

/** Texts of .prj files, with heights and without: which system they are, and which code it has. */
class SystemFinderTest {
    private static final String LAMBERT_93 =
            "PROJCS[\"RGF_1993_Lambert_93\",GEOGCS[\"GCS_RGF_1993\",DATUM[\"D_RGF_1993\","
                    + "SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],"
                    + "PROJECTION[\"Lambert_Conformal_Conic\"],PARAMETER[\"False_Easting\",700000.0],"
                    + "PARAMETER[\"False_Northing\",6600000.0],PARAMETER[\"Central_Meridian\",3.0],"
                    + "PARAMETER[\"Standard_Parallel_1\",49.0],PARAMETER[\"Standard_Parallel_2\",44.0],"
                    + "PARAMETER[\"Latitude_Of_Origin\",46.5],UNIT[\"Meter\",1.0]]";

    /** US survey feet, and the state plane's offsets in them (EPSG:2284). */
    private static final String VIRGINIA = "PROJCS[\"NAD_1983_StatePlane_Virginia_South_FIPS_4502_Feet\","
            + "GEOGCS[\"GCS_North_American_1983\",DATUM[\"D_North_American_1983\",SPHEROID[\"GRS_1980\",6378137.0,298.257222101]],"
            + "PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433]],PROJECTION[\"Lambert_Conformal_Conic\"],"
            + "PARAMETER[\"False_Easting\",11482916.667],PARAMETER[\"False_Northing\",3280833.333],"
            + "PARAMETER[\"Central_Meridian\",-78.5],PARAMETER[\"Standard_Parallel_1\",37.9666666666667],"
            + "PARAMETER[\"Standard_Parallel_2\",36.7666666666667],PARAMETER[\"Latitude_Of_Origin\",36.3333333333333],"
            + "UNIT[\"US survey foot\",0.304800609601219]]";

    private static final String DEGREES_3D =
            "GEOGCS[\"ETRS_1989_3D\",DATUM[\"D_ETRS_1989\",SPHEROID[\"GRS_1980\",6378137.0,"
                    + "298.257222101]],PRIMEM[\"Greenwich\",0.0],UNIT[\"Degree\",0.0174532925199433],LINUNIT[\"Meter\",1.0]]";

    /** Heights in the form of .prj files, as GDAL 3.6 writes them; the last has a bracket in a name. */
    private static final String[] HEIGHTS = {
        "",
        ",VERTCS[\"NGF_IGN69\",VDATUM[\"NGF_IGN69\"],PARAMETER[\"Vertical_Shift\",0.0],PARAMETER[\"Direction\",1.0],"
                + "UNIT[\"Meter\",1.0]]",
        ",VERTCS[\"WGS_1984\",DATUM[\"D_WGS_1984\",SPHEROID[\"WGS_1984\",6378137.0,298.257223563]],"
                + "PARAMETER[\"Vertical_Shift\",0.0],PARAMETER[\"Direction\",1.0],UNIT[\"Meter\",1.0]]",
        ",\n VERTCS[\"NAVD88_height_(ftUS\",VDATUM[\"North_American_Vertical_Datum_1988\"],PARAMETER[\"Vertical_Shift\",0.0],"
                + "PARAMETER[\"Direction\",1.0],UNIT[\"US survey foot\",0.304800609601219],AUTHORITY[\"EPSG\",\"6360\"]]",
    };

    record Text(String text, int code) {}

    static Stream<Text> texts() {
        return Stream.of(new Text(LAMBERT_93, 2154), new Text(VIRGINIA, 2284), new Text(DEGREES_3D, 4258))
                .flatMap(system -> Stream.concat(
                        Stream.of(HEIGHTS).map(height -> new Text(system.text + height, system.code)),
                        Stream.of(new Text(
                                "COMPD_CS[\"of both\"," + system.text
                                        + ",VERT_CS[\"Newlyn\",VERT_DATUM[\"Newlyn\",2005],UNIT[\"metre\",1],AXIS[\"Up\",UP]]]",
                                system.code))));
    }

    @ParameterizedTest(name = "{index} {0}")
    @MethodSource("texts")
    void heightsChangeNeitherThePlacesNorTheCode(Text text) {
        var system = ReferenceSystem.parse(text.text);
        var known = ReferenceSystem.parse("EPSG:" + text.code);
        double[] ours = {-78, 37, 2, 48};
        double[] theirs = ours.clone();

        system.fromLonLat(ours, 2);
        known.fromLonLat(theirs, 2);

        assertThat(ours).containsExactly(theirs, within(1e-4));
        assertThat(system.epsgCode()).isEmpty();
        assertThat(system.identified().epsgCode()).hasValue(text.code);
        assertThat(system.identified().wkt()).isEqualTo(known.wkt());
        assertThat(system.identified().esriWkt()).doesNotContain("VERTCS", "LINUNIT", "COMPD_CS");
    }

    /** GDAL is the judge: what it writes for a code, that code is found for. */
    @ParameterizedTest
    @ValueSource(
            ints = {
                2154, 2284, 2263, 32118, 2222, 2913, 2193, 3035, 3413, 3857, 4258, 4269, 4283, 5070, 6318, 6543, 25832,
                26918, 27572, 27700, 28992, 31467, 31370, 32601, 32633, 32756, 3006, 28355
            })
    void findsTheCodeOfWhatGdalWrites(int code) {
        assertThat(found(code)).hasValue(code);
    }

    /** Oblique Mercators that differ by centimeters, axes turned by Krovak's method, datums that GDAL names otherwise: better none. */
    @ParameterizedTest
    @ValueSource(ints = {2056, 21781, 5514, 5513, 2180, 3067, 7844, 3826, 24500, 22275, 4647})
    void findsNoCodeRatherThanAnotherOne(int code) {
        assertThat(found(code).orElse(code)).isEqualTo(code);
    }

    /** Withdrawn codes, and codes of the same plane with its axes in another order: the one that GIS programs know best. */
    @ParameterizedTest
    @CsvSource({"31463, 31467", "5677, 31467", "27582, 27572", "32661, 5041", "5041, 5041"})
    void findsTheValidCodeOfAPlaneThatHasSeveral(int written, int code) {
        assertThat(found(written).orElse(code)).isEqualTo(code);
    }

    private static OptionalInt found(int code) {
        var outcome = ExternalTool.named("gdalsrsinfo").tryToRun("-o", "wkt_esri", "--single-line", "EPSG:" + code);
        try {
            return ReferenceSystem.parse(outcome.output().strip()).identified().epsgCode();
        } catch (IllegalArgumentException unreadable) {
            return OptionalInt.empty();
        }
    }

    /** Nearly the same: another unit, offset, parallel, datum or ellipsoid is another system, and has no code rather than a wrong one. */
    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(
            delimiter = ';',
            quoteCharacter = '\'',
            value = {
                "UNIT[\"US survey foot\",0.304800609601219]; UNIT[\"Foot\",0.3048]",
                "11482916.667; 11482916.677",
                "37.9666666666667; 37.967",
                "D_North_American_1983; D_North_American_1984",
                "298.257222101; 298.25722",
                "Greenwich\",0.0; Elsewhere\",0.1",
            })
    void findsNoCodeForWhatIsNearlyAKnownSystem(String was, String is) {
        String text = VIRGINIA.replace(was, is);
        assertThat(text).isNotEqualTo(VIRGINIA);

        var system = ReferenceSystem.parse(text);

        assertThat(system.identified()).isSameAs(system);
        assertThat(system.identified().epsgCode()).isEmpty();
    }

    /** The same plane on another realization of the datum has another code (EPSG, from memory), or none. */
    @ParameterizedTest
    @CsvSource({"NAD_1983_2011, 6595", "North_American_1983_HARN, 2925", "NAD_1983_NSRS2007, 3688"})
    void tellsRealizationsApart(String datum, int code) {
        var system = ReferenceSystem.parse(VIRGINIA.replace("North_American_1983", datum));

        OptionalInt found = system.identified().epsgCode();

        assertThat(found.orElse(code)).isEqualTo(code);
    }

    @Test
    void aSystemThatCannotBeReadStillSaysSo() {
        assertThatThrownBy(() -> ReferenceSystem.parse("VERTCS[\"only heights\",VDATUM[\"x\"],UNIT[\"Meter\",1.0]]"))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ReferenceSystem.parse(LAMBERT_93.substring(0, 120)))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
