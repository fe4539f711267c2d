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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
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
        read("duct,kind,outside_diameter_in,mass\nD1,innerduct,1.66,\n");

        assertThat(findings.all()).anySatisfy(finding -> {
            assertThat(finding.code()).isEqualTo(FindingCode.LAYER_ISSUE);
            assertThat(finding.detail())
                    .contains("not read: outside_diameter_in;")
                    .contains("outside_diameter, sdr");
        });
    }

    @Test
    void everyRowThatCannotBeUsedIsTold() throws IOException {
        ContentsTable table = read(HEADER
                + ",i1,innerduct,,1.66,11,,,\n"
                + "D1,s1,sleeve,,1.66,11,,,\n"
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
                        "line 3: its kind is 'sleeve', not innerduct or cable",
                        "line 5: the duct has an innerduct 'i1' already",
                        "line 6: its kind is '', not innerduct or cable",
                        "line 7: its kind is 'junk', not innerduct or cable");
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

        table.tellUnknownDucts(findings);

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
