package org.spanroom.input.fields;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ContentsConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;

class ContentsTableTest {
    private static final String HEADER = "duct,item,kind,inside,outside_diameter,sdr,wall,mass,in_service\n";

    @TempDir
    Path folder;

    private final FindingLog findings = new FindingLog();

    private ContentsTable read(byte[] bytes) throws IOException {
        Path file = folder.resolve("contents.csv");
        Files.write(file, bytes);
        RunConfig defaults = ShippedConfig.get();
        RunConfig config = defaults.withInputs(defaults.inputs()
                .withContents(new ContentsConfig(
                        java.util.Optional.of(file), java.util.Optional.empty(), Unit.IN, Unit.LB_PER_1000_FT)));
        return new ContentsTableReader(file, config, findings).read();
    }

    private ContentsTable read(String text) throws IOException {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    private static Contents contents(ContentsTable table, String duct) {
        return table.find(duct).orElseThrow().contents();
    }

    @Test
    void itemsLieWhereTheTableSaysInAnyOrder() throws IOException {
        ContentsTable table = read(HEADER
                + "D1,c1,cable,i2,0.5,,,100,live\n"
                + "D1,i1,innerduct,,1.66,13.5,,,\n"
                + "D1,i2,innerduct,,1.315,,0.1,,\n"
                + "D1,c2,cable,,0.7,,,170,dead\n"
                + "\n"
                + "D2,c1,cable,,0.7,,,170,unknown\n");

        Contents contents = contents(table, "D1");
        assertThat(contents.innerducts()).extracting(Innerduct::id).containsExactly("i1", "i2");
        assertThat(contents.innerducts().get(0).isEmpty()).isTrue();
        assertThat(contents.innerducts().get(0).wallMm()).isCloseTo(1.66 * 25.4 / 13.5, within(1e-9));
        assertThat(contents.innerducts().get(1).wallMm()).isCloseTo(2.54, within(1e-9));
        assertThat(contents.innerducts().get(1).cables()).extracting("id").containsExactly("c1");
        assertThat(contents.looseCables()).extracting("service").containsExactly(Service.DEAD);
        assertThat(contents(table, "D2").looseCables()).extracting("service").containsExactly(Service.UNKNOWN);
        assertThat(findings.all()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {",", ";", "\t"})
    void separatorsMayBeCommasSemicolonsAndTabs(String separator) throws IOException {
        ContentsTable table =
                read((HEADER + "D1,\"i,1;\tx\",Innerduct,,1.66,11,,,\n").replaceAll(",(?!1;)", separator));

        assertThat(contents(table, "D1").innerducts()).extracting(Innerduct::id).containsExactly("i,1;\tx");
    }

    @Test
    void byteOrderMarksAndOtherEncodingsAreUnderstood() throws IOException {
        String text = HEADER + "Größe,i1,innerduct,,1.66,11,,,\n";

        assertThat(read("\uFEFF" + text).find("Größe")).isPresent();
        assertThat(read(("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE)).find("Größe"))
                .isPresent();
        assertThat(findings.all()).isEmpty();
        assertThat(read(text.getBytes(Charset.forName("windows-1252"))).find("Größe"))
                .isPresent();
        assertThat(findings.all()).extracting(Finding::code).containsExactly(FindingCode.ENCODING_ASSUMED);
    }

    @Test
    void columnsThatAreNotReadAreNamed() throws IOException {
        read("duct,kind,shade,class,inside_diameter,outside_diameter\nD1,innerduct,red,A,1.3,1.66\n");

        assertThat(findings.all()).anySatisfy(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.LAYER_ISSUE);
            assertThat(finding.detail())
                    .contains("columns not used: shade, class, inside_diameter;")
                    .contains("outside_diameter, sdr");
        });
    }

    @Test
    void everyRowThatCannotBeUsedIsTold() throws IOException {
        ContentsTable table = read(HEADER
                + ",i1,innerduct,,1.66,11,,,\n"
                + "D1,s1,pipe,,1.66,11,,,\n"
                + "D1,i1,innerduct,,1.66,11,,,\n"
                + "D1,i1,innerduct,,1.66,11,,,\n"
                + "D1\n"
                + "D9,x,junk\n");

        assertThat(contents(table, "D1").innerducts()).hasSize(1);
        assertThat(contents(table, "D9").known()).isFalse();
        assertThat(findings.all())
                .allSatisfy(finding -> assertThat(finding.code()).isEqualTo(FindingCode.CONTENTS_ROW_UNUSABLE))
                .extracting(Finding::detail)
                .containsExactlyInAnyOrder(
                        "line 2: it names no duct",
                        "line 3: its kind is 'pipe', not innerduct, sleeve or cable",
                        "line 5: the duct already has an item 'i1'",
                        "line 6: its kind is '', not innerduct, sleeve or cable",
                        "line 7: its kind is 'junk', not innerduct, sleeve or cable");
    }

    /** An export that wrote a row twice; the second cable is counted, so that the room is not overstated. */
    @Test
    void aCableThatIsListedTwiceIsReportedAndCounted() throws IOException {
        ContentsTable table = read(HEADER + "D1,c1,cable,,0.5,,,100,live\n" + "D1,c1,cable,,0.5,,,100,live\n"
                + "D1,,cable,,0.5,,,100,live\n" + "D2,c1,cable,,0.5,,,100,live\n");

        assertThat(contents(table, "D1").cables()).hasSize(3);
        assertThat(findings.all())
                .extracting(Finding::detail)
                .containsExactly(
                        "line 3: the duct already has a cable 'c1'; both are counted. Remove one row, or give each "
                                + "cable its own item");
    }

    @ParameterizedTest
    @CsvSource({"1e300,1.0E300 in", "1e-300,1.0E-300 in", "0.0001,0.0001 in", "123456,123456 in"})
    void aNumberOutOfRangeIsWrittenBriefly(String recorded, String written) throws IOException {
        read(HEADER + "D1,c1,cable,," + recorded + ",,,100,live\n");

        assertThat(findings.all())
                .extracting(Finding::detail)
                .singleElement(InstanceOfAssertFactories.STRING)
                .contains(written + " is outside the plausible range");
    }

    /** The last cell of the header is empty in both rows, so that a decimal comma moves every cell and leaves no text over. */
    @Test
    void aDecimalCommaIsRejectedAlsoWhereTheSurplusCellIsEmpty() throws IOException {
        ContentsTable table = read(HEADER + "D1,c1,cable,,0,5,,,100,\n" + "D1,c2,cable,,0.5,,,100,live\n");

        assertThat(contents(table, "D1").cables()).extracting("id").containsExactly("c2");
        assertThat(findings.all())
                .singleElement()
                .extracting(Finding::detail)
                .isEqualTo(
                        "line 2: it has 10 cells, and the header 9. Put a cell that contains the separator into quotes (\"),"
                                + " or remove separators at the end of the row");
    }

    /** The wall of (2.2), outside diameter over SDR; 1.315 in is the outside diameter of 1 in IPS pipe (ASTM D3035, read in a reprint). */
    @ParameterizedTest(name = "SDR {0}, wall {1} in")
    @org.junit.jupiter.params.provider.CsvSource({
        "11, 0.3, true",
        "11, 0.12, false",
        "11, 0.1195, false",
        "13.5, 0.12, true",
        "'', 0.3, false",
        "11, '', false"
    })
    void aWallThatIsNotThatOfTheSdrIsAFinding(String sdr, String wall, boolean told) throws IOException {
        ContentsTable table = read(HEADER + "D1,i1,innerduct,,1.315," + sdr + "," + wall + ",,\n");

        double wallMm = 25.4 * (wall.isEmpty() ? 1.315 / Double.parseDouble(sdr) : Double.parseDouble(wall));
        assertThat(contents(table, "D1").innerducts().get(0).wallMm()).isCloseTo(wallMm, within(1e-9));
        assertThat(findings.all().stream()
                        .map(Finding::code)
                        .filter(code -> code != FindingCode.MISSING_VALUE)
                        .toList())
                .isEqualTo(told ? List.of(FindingCode.WALL_DISAGREES) : List.of());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "D1,i1,innerduct,,1.66,11,,,,,,,2",
                "D1,c1,cable,,0.5,,,100,live,,,,2",
                "D1,i1,innerduct,,1.66,11,,,,,,3,"
            })
    void cellsOfWhatIsNoSleeveAreAFinding(String row) throws IOException {
        read(SLEEVES + row + "\n");

        assertThat(findings.all()).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.UNUSABLE_VALUE);
            assertThat(finding.detail())
                    .contains("is not used: the row is not a sleeve")
                    .contains("positions_reserved");
        });
    }

    private static final String SLEEVES =
            "duct,item,kind,inside,outside_diameter,sdr,wall,mass,in_service,catalog,may_move,cells,reserved\n";

    @Test
    void sleevesHoldTheCablesThatNameThem() throws IOException {
        ContentsTable table = read(SLEEVES
                + "D1,c1,cable,s1,0.5,,,100,live,,,,\n"
                + "D1,i1,innerduct,,1.66,13.5,,,,,,,\n"
                + "D1,s1,sleeve,,,,,,,,,3,1\n"
                + "D1,c2,cable,i1,0.5,,,100,live,,,,\n"
                + "D1,c3,cable,,0.5,,,100,live,,,,\n");

        Contents contents = contents(table, "D1");
        assertThat(contents.sleeves()).singleElement().satisfies(sleeve -> {
            assertThat(sleeve.id()).isEqualTo("s1");
            assertThat(sleeve.cells()).isEqualTo(3);
            assertThat(sleeve.reservedCells()).isEqualTo(1);
            assertThat(sleeve.freeCells()).isEqualTo(1);
            assertThat(sleeve.cables()).extracting("id").containsExactly("c1");
        });
        assertThat(contents.cables()).extracting("id").containsExactly("c2", "c1", "c3");
        assertThat(contents.cablesBeside()).extracting("id").containsExactly("c1", "c3");
        assertThat(contents.looseCables()).extracting("id").containsExactly("c3");
        assertThat(table.find("D1").orElseThrow().assumed()).doesNotContain(Term.SLEEVE_CELLS);
        assertThat(findings.all()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "many", "2.5", "0", "40"})
    void cellsThatAreNotRecordedOrNotBelievedAreThoseOfTheSleeveInUse(String cells) throws IOException {
        ContentsTable table = read(SLEEVES + "D1,s1,sleeve,,,,,,,,," + cells + ",\n");

        ContentsTable.Listed listed = table.find("D1").orElseThrow();
        assertThat(listed.contents().sleeves().get(0).cells())
                .isEqualTo(ShippedConfig.get().room().cellsPerSleeve());
        assertThat(listed.assumed()).contains(Term.SLEEVE_CELLS);
        assertThat(listed.rejected().isEmpty()).isEqualTo(cells.isEmpty());
        assertThat(findings.all()).hasSize(1);
    }

    @ParameterizedTest(name = "{0} cells, {1} reserved")
    @org.junit.jupiter.params.provider.CsvSource({"1, 0, true", "2, 0, false", "2, 1, true", "3, 1, false"})
    void moreCablesAndReservedCellsThanCellsAreToldOf(int cells, int reserved, boolean told) throws IOException {
        ContentsTable table = read(SLEEVES
                + "D1,s1,sleeve,,,,,,,,," + cells + "," + reserved + "\n"
                + "D1,c1,cable,s1,0.5,,,100,live,,,,\n"
                + "D1,c2,cable,s1,0.5,,,100,live,,,,\n");

        assertThat(contents(table, "D1").sleeves().get(0).cables()).hasSize(2);
        assertThat(findings.all().stream().map(Finding::code).toList())
                .isEqualTo(told ? List.of(FindingCode.CABLES_EXCEED_CELLS) : List.of());
    }

    @Test
    void rowsAndValuesThatWereRejectedWereRecordedAllTheSame() throws IOException {
        ContentsTable table = read(SLEEVES + "D1,c1,cable,,999,,,100,live,,,,\n" + "D2,x9,pipe,,,,,,,,,,\n");

        assertThat(table.find("D1").orElseThrow().rejected()).singleElement().satisfies(value -> {
            assertThat(value.name()).isEqualTo("cable_outside_diameter");
            assertThat(value.recorded()).isEqualTo("999 in");
            assertThat(value.why()).contains("plausible range");
        });
        ContentsTable.Listed unknown = table.find("D2").orElseThrow();
        assertThat(unknown.contents().known()).isFalse();
        assertThat(unknown.rejected()).singleElement().satisfies(value -> {
            assertThat(value.isContents()).isTrue();
            assertThat(value.words()).contains("pipe 'x9'").contains("not innerduct, sleeve or cable");
        });
    }

    @Test
    void whatIsNotGivenOrNotBelievedIsAssumedAndTold() throws IOException {
        ContentsTable table = read(HEADER
                + "D1,i1,innerduct,,166,11,,,\n"
                + "D1,c1,cable,i7,half,,,,perhaps\n"
                + "D1,i2,innerduct,i1,1.66,,1.5,,\n");

        Contents contents = contents(table, "D1");
        assertThat(contents.innerducts().get(0).outsideDiameterMm()).isEqualTo(42.164);
        assertThat(contents.looseCables()).singleElement().satisfies(cable -> {
            assertThat(cable.outsideDiameterMm()).isEqualTo(17.78);
            assertThat(cable.service()).isEqualTo(Service.UNKNOWN);
        });
        assertThat(table.find("D1").orElseThrow().assumed())
                .containsExactlyInAnyOrder(
                        Term.INNERDUCT_OUTSIDE_DIAMETER,
                        Term.INNERDUCT_SDR,
                        Term.CABLE_OUTSIDE_DIAMETER,
                        Term.CABLE_MASS,
                        Term.IN_SERVICE);
        assertThat(findings.all())
                .extracting(Finding::field)
                .contains("outside_diameter", "mass", "in_service", "inside", "wall", "sdr");
        assertThat(findings.all())
                .anySatisfy(finding -> assertThat(finding.detail()).contains("it would be plausible in mm"));
    }

    @Test
    void ductsThatNoRouteHasAreTold() throws IOException {
        ContentsTable table = read(HEADER + "D1,i1,innerduct,,1.66,11,,,\nD2,i1,innerduct,,1.66,11,,,\n");
        table.find("D1");

        table.reportUnknownDucts(findings);

        assertThat(findings.all()).singleElement().satisfies(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.CONTENTS_DUCT_UNKNOWN);
            assertThat(finding.featureId()).isEqualTo("D2");
        });
    }

    static List<String> notTables() {
        return List.of("", "\n\n", "a,b,c\n1,2,3\n", "duct\nD1\n");
    }

    @ParameterizedTest
    @org.junit.jupiter.params.provider.MethodSource("notTables")
    void whatIsNoContentsTableIsRefusedInOneLine(String text) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("contents table")
                .extracting(Throwable::getMessage)
                .asString()
                .doesNotContain("\n");
    }

    @Test
    void quotesThatNeverCloseEndNothing() throws IOException {
        ContentsTable table = read(HEADER + "D1,i1,innerduct,,1.66,11,,,\nD2,\"i1,innerduct\nD3,x\n");

        assertThat(contents(table, "D1").innerducts()).hasSize(1);
        assertThat(findings.all()).isNotEmpty();
    }
}
