package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.fields.ContentsTable;
import org.spanroom.input.fields.ContentsTableReader;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.SizeSource;

/** Sizes that the data gives by the name of a catalog row, in attributes and in the contents table. */
class CatalogInputTest {
    private static final String FIELDS =
            "duct: D, inside_diameter: {field: BORE, unit: in}, bore_shape: SH, duct_type: T,"
                    + " duct_size: SIZE, innerduct_count: N, innerduct_outside_diameter: {field: OD, unit: in},"
                    + " innerduct_sdr: SDR, innerduct_size: ISIZE, cable_count: C, cable_outside_diameter: {field: COD, unit: in},"
                    + " cable_mass: {field: W, unit: lb/1000ft}, cable_type: CT, cable_may_move: MOVE";
    private static final String[] NAMES = {
        "D", "BORE", "SH", "T", "SIZE", "N", "OD", "SDR", "ISIZE", "C", "COD", "W", "CT", "MOVE"
    };

    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();

    private Duct duct(String more, @Nullable Object... values) throws IOException {
        Path file = folder.resolve("fake.geojson");
        Files.writeString(file, "{}");
        Path yaml = folder.resolve("c.yaml");
        Files.writeString(yaml, "inputs:\n  routes:\n    file: " + file + "\n    fields: {" + FIELDS + "}\n" + more);
        var layer = new FakeLayer("OGC:CRS84", NAMES).line(new double[] {-140.0, 20.0, -140.001, 20.0}, values);
        return new InputReader(ConfigReader.read(yaml), findings, (path, name, log) -> layer)
                .read()
                .routes()
                .get(0)
                .duct();
    }

    private Duct bore(@Nullable Object size, @Nullable Object type, @Nullable Object shape) throws IOException {
        return duct("", "D1", null, shape, type, size, 0L, null, null, null, 0L, null, null, null, null);
    }

    private List<String> details(FindingCode code) {
        return findings.all().stream()
                .filter(finding -> finding.code() == code)
                .map(Finding::detail)
                .toList();
    }

    /** Inside diameters in inches: NEC Chapter 9 Table 4, NEMA TC 10, Hawkins Electrical Guide vol. 4, as the catalog's rows. */
    @ParameterizedTest(name = "{0} {1}: {2} in")
    @CsvSource({
        "pvc40 4 in, '', 3.998",
        "PVC80 4\", '', 3.786",
        "'PVC Schedule 40 4 in', '', 3.998",
        "'4-inch Sch. 40 PVC', '', 3.998",
        "4 in, PVC Schedule 80, 3.786",
        "3 1/2 in, PVC type EB, 3.804",
        "telephone type C 4 in, '', 4.050",
        "wood 3in, '', 3.000",
        "fibre 4 in, '', 4.000"
    })
    void aNamedDuctHasTheCatalogsBore(String size, String type, double insideIn) throws IOException {
        Duct duct = bore(size.replace("Sch.", "Sch"), type.isEmpty() ? null : type, "round");

        assertThat(duct.insideDiameterMm() / 25.4).isCloseTo(insideIn, within(1e-9));
        assertThat(duct.sizeSource(Term.INSIDE_DIAMETER)).isEqualTo(SizeSource.CATALOG);
        assertThat(duct.catalogUse().rows()).hasSize(1);
        assertThat(duct.assumed()).doesNotContain(Term.INSIDE_DIAMETER);
        assertThat(details(FindingCode.MISSING_VALUE)).noneMatch(detail -> detail.contains("inside_diameter"));
    }

    @Test
    void theRowGivesTheShapeWhereNoneIsRecorded() throws IOException {
        Duct duct = bore("clay square 3-1/2 in", null, null);

        assertThat(duct.boreShape()).isEqualTo(BoreShape.SQUARE);
        assertThat(duct.catalogUse().terms()).containsExactlyInAnyOrder(Term.BORE_SHAPE, Term.INSIDE_DIAMETER);
        assertThat(duct.assumed()).doesNotContain(Term.BORE_SHAPE, Term.INSIDE_DIAMETER);
    }

    @Test
    void theRecordedShapeTellsRowsOfOneSizeApart() throws IOException {
        assertThat(bore("3-1/2 in", "vitrified clay", "square").catalogUse().rows())
                .containsExactly("clay square 3-1/2 in");
        assertThat(details(FindingCode.CATALOG_NAME_UNKNOWN)).isEmpty();
    }

    @Test
    void aShapeThatIsNotTheRowsIsTold() throws IOException {
        assertThat(bore("clay square 3-1/2 in", null, "round").boreShape()).isEqualTo(BoreShape.ROUND);
        assertThat(details(FindingCode.CATALOG_DISAGREES))
                .containsExactly("the bore is recorded as round, the catalog's 'clay square 3-1/2 in' is square");
    }

    /** "4 inch" does not fix an inside diameter: 3.682 to 4.289 in by type. */
    @Test
    void aTradeSizeAloneIsNoSize() throws IOException {
        Duct duct = bore("4 in", null, "round");

        assertThat(duct.sizeSource(Term.INSIDE_DIAMETER)).isEqualTo(SizeSource.ASSUMED);
        assertThat(duct.insideDiameterMm()).isEqualTo(101.6);
        assertThat(details(FindingCode.CATALOG_NAME_UNKNOWN))
                .singleElement()
                .asString()
                .contains("93.5228 mm to 108.9406 mm wide");
    }

    @Test
    void anUnknownNameIsToldWithTheNearest() throws IOException {
        assertThat(bore("pvc41 4 in", null, "round").sizeSource(Term.INSIDE_DIAMETER))
                .isEqualTo(SizeSource.ASSUMED);
        assertThat(details(FindingCode.CATALOG_NAME_UNKNOWN))
                .singleElement()
                .asString()
                .startsWith("the catalog has no row 'pvc41 4 in'; the nearest are pvc40 4 in");
    }

    @Test
    void aRecordedSizeCountsAndADifferenceIsTold() throws IOException {
        Duct duct = duct(
                "",
                "D1",
                4.0,
                "round",
                null,
                "pvc80 4 in",
                1L,
                1.66,
                11.0,
                "sdr13.5 1-1/4 in",
                1L,
                0.7,
                94.0,
                "144 fibres",
                null);

        assertThat(duct.insideDiameterMm()).isEqualTo(101.6);
        assertThat(duct.sizeSource(Term.INSIDE_DIAMETER)).isEqualTo(SizeSource.RECORDED);
        assertThat(duct.catalogUse().rows()).isEmpty();
        assertThat(details(FindingCode.CATALOG_DISAGREES))
                .containsExactlyInAnyOrder(
                        "inside_diameter is recorded as 101.6 mm, the catalog's 'pvc80 4 in' has 96.1644 mm",
                        "innerduct_sdr is recorded as 11, the catalog's 'sdr13.5 1-1/4 in' has 13.4959",
                        "cable_outside_diameter is recorded as 17.78 mm, the catalog's '144 fibers' has 12.7 mm");
    }

    /** 4 in for 3.998 in is rounding, no contradiction. */
    @Test
    void roundedSizesAgree() throws IOException {
        duct("", "D1", 4.0, "round", null, "pvc40 4 in", 1L, 1.7, 13.5, "sdr13.5 1-1/4 in", 0L, null, null, null, null);

        assertThat(details(FindingCode.CATALOG_DISAGREES)).isEmpty();
    }

    /** SDR 13.5, 1-1/4 in: outside 1.660 in, wall 0.123 in (ASTM D3035 as reprinted in a data sheet). */
    @ParameterizedTest
    @CsvSource({"sdr13.5 1-1/4 in", "'SDR 13.5, 1 1/4 inch'", "1-1/4in SDR-13.5"})
    void namedInnerductsAndCablesHaveTheCatalogsSizes(String size) throws IOException {
        Duct duct = duct("", "D1", null, null, null, "pvc40 4 in", 2L, null, null, size, 1L, null, null, "144 F", "no");

        Innerduct innerduct = duct.contents().innerducts().get(0);
        Cable cable = innerduct.cables().get(0);
        assertThat(innerduct.outsideDiameterMm()).isCloseTo(42.164, within(1e-9));
        assertThat(innerduct.wallMm()).isCloseTo(0.123 * 25.4, within(1e-9));
        assertThat(cable.outsideDiameterMm()).isEqualTo(12.7);
        assertThat(cable.massKgPerM()).isEqualTo(0.14);
        assertThat(cable.mayMove()).isFalse();
        assertThat(duct.sizeSource(Term.INNERDUCT_WALL, Term.INNERDUCT_SDR)).isEqualTo(SizeSource.CATALOG);
        assertThat(duct.sizeSource(Term.CABLE_MASS)).isEqualTo(SizeSource.CATALOG);
        assertThat(duct.catalogUse().rows()).containsExactly("144 fibers", "pvc40 4 in", "sdr13.5 1-1/4 in");
        assertThat(details(FindingCode.MISSING_VALUE)).containsExactly("no duct_type is recorded");
    }

    @Test
    void aNominalSizeGivesTheDiameterOfEverySeries() throws IOException {
        Duct duct = duct("", "D1", 4.0, "round", null, null, 1L, null, 11.0, "1-1/4 in", 0L, null, null, null, null);

        assertThat(duct.contents().innerducts().get(0).wallMm()).isCloseTo(42.164 / 11, within(1e-9));
        assertThat(duct.sizeSource(Term.INNERDUCT_OUTSIDE_DIAMETER)).isEqualTo(SizeSource.CATALOG);
        assertThat(duct.sizeSource(Term.INNERDUCT_WALL, Term.INNERDUCT_SDR)).isEqualTo(SizeSource.RECORDED);
        assertThat(duct.catalogUse().rows()).containsExactly("1-1/4 in of any series");
    }

    @Test
    void aRowThatADefaultNamesCountsAsAssumed() throws IOException {
        Duct duct = duct(
                "assumed: {duct_size: pvc80 4 in, innerduct_size: sdr11 1 in, cable_type: 96 fibers, cable_may_move: no}\n",
                "D1",
                null,
                null,
                null,
                null,
                1L,
                null,
                null,
                null,
                1L,
                null,
                null,
                null,
                null);

        assertThat(duct.insideDiameterMm()).isCloseTo(3.786 * 25.4, within(1e-9));
        assertThat(duct.contents().innerducts().get(0).outsideDiameterMm()).isCloseTo(1.315 * 25.4, within(1e-9));
        assertThat(duct.contents().cables()).extracting(Cable::mayMove).containsExactly(false);
        assertThat(duct.sizeSource(Term.INSIDE_DIAMETER)).isEqualTo(SizeSource.ASSUMED);
        assertThat(duct.catalogUse().terms()).isEmpty();
        assertThat(duct.catalogUse().rows()).containsExactly("96 fibers", "pvc80 4 in", "sdr11 1 in");
        assertThat(details(FindingCode.MISSING_VALUE))
                .contains("no inside_diameter is recorded; assumed the catalog's 'pvc80 4 in'");
    }

    private ContentsTable table(String rows) throws IOException {
        Path file = folder.resolve("contents.csv");
        Files.writeString(file, "duct,item,kind,inside,outside_diameter,mass,catalog,may_move,in_service\n" + rows);
        Path yaml = folder.resolve("t.yaml");
        Files.writeString(
                yaml, "inputs:\n  contents: {file: '" + file + "', diameter_unit: in, mass_unit: lb/1000ft}\n");
        return new ContentsTableReader(file, ConfigReader.read(yaml), findings).read();
    }

    @Test
    void rowsOfTheContentsTableMayNameRowsOfTheCatalog() throws IOException {
        ContentsTable.Listed listed = table("""
                        D1,i1,innerduct,,,,sdr11 1 in,,
                        D1,c1,cable,i1,,,288 fibers,no,live
                        D1,c2,cable,,0.7,,288 fibers,yes,live
                        """).find("D1").orElseThrow();

        Innerduct innerduct = listed.contents().innerducts().get(0);
        assertThat(innerduct.outsideDiameterMm()).isCloseTo(1.315 * 25.4, within(1e-9));
        assertThat(innerduct.wallMm()).isCloseTo(0.120 * 25.4, within(1e-9));
        assertThat(innerduct.cables())
                .containsExactly(new Cable("c1", 15.2, 0.19, org.spanroom.model.network.Service.LIVE, false));
        assertThat(listed.contents().looseCables()).extracting(Cable::mayMove).containsExactly(true);
        assertThat(listed.assumed()).isEmpty();
        assertThat(listed.catalogUse().rows()).containsExactly("288 fibers", "sdr11 1 in");
        assertThat(listed.catalogUse().terms())
                .containsExactlyInAnyOrder(
                        Term.INNERDUCT_OUTSIDE_DIAMETER,
                        Term.INNERDUCT_SDR,
                        Term.CABLE_OUTSIDE_DIAMETER,
                        Term.CABLE_MASS);
        assertThat(findings.all())
                .singleElement()
                .satisfies(finding -> assertThat(finding.detail())
                        .isEqualTo("line 4: cable_outside_diameter is recorded as 17.78 mm, the catalog's '288 fibers'"
                                + " has 15.2 mm"));
    }

    @Test
    void wrongNamesInTheContentsTableAreTold() throws IOException {
        ContentsTable.Listed listed = table("D1,i1,innerduct,,,,288 fibers,,\nD1,c1,cable,i1,0.5,90,,perhaps,live\n")
                .find("D1")
                .orElseThrow();

        assertThat(listed.assumed()).contains(Term.INNERDUCT_OUTSIDE_DIAMETER);
        assertThat(details(FindingCode.CATALOG_NAME_UNKNOWN))
                .singleElement()
                .asString()
                .startsWith("line 2: the catalog has no row '288 fibers'; the nearest are ");
        assertThat(details(FindingCode.UNUSABLE_VALUE))
                .containsExactly("line 3: 'perhaps' is not in any word list for may_move");
    }
}
