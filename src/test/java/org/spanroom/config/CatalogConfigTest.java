package org.spanroom.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.finding.InputException;
import org.spanroom.model.Term;
import org.spanroom.model.bore.Catalog;
import org.spanroom.model.bore.RoomSettings;

class CatalogConfigTest {
    @TempDir
    Path folder;

    private RunConfig read(String yaml) throws IOException {
        Path file = folder.resolve("c.yaml");
        Files.writeString(file, yaml);
        return ConfigReader.read(file);
    }

    @Test
    void theShippedCatalogIsReadWhole() throws IOException {
        Catalog catalog = read("").catalog();

        assertThat(catalog.outerDucts()).hasSizeGreaterThan(40);
        assertThat(catalog.innerducts()).hasSize(20);
        assertThat(catalog.sleeves()).hasSize(4);
        assertThat(catalog.designCables()).hasSize(5);
        assertThat(catalog).isSameAs(ShippedConfig.get().catalog());
    }

    @Test
    void rowsMayStandInTheConfigItself() throws IOException {
        RunConfig config = read("catalog:\n  design_cables:\n    - {name: ours, outside_diameter_mm: 9.5,"
                + " mass_kg_per_m: 0.08, fibers: 48, source: illustrative}\nroom: {design_cable: ours}\n");

        assertThat(config.catalog().findDesignCable("OURS")).isPresent();
        assertThat(config.room().designCableOutsideDiameterMm()).isEqualTo(9.5);
    }

    /** What run.json keeps of a config must give the same config again. */
    @Test
    void theRecordOfARunKeepsTheCatalog() throws IOException {
        RunConfig config = read("room: {sleeve: 2-cell, design_cable: 288 fibers}\n");
        Path record = folder.resolve("run.json");
        Files.writeString(
                record,
                new com.fasterxml.jackson.databind.ObjectMapper()
                        .writeValueAsString(java.util.Map.of("config", ConfigReader.asMap(config))));

        assertThat(ConfigReader.readRecorded(record)).isEqualTo(config);
    }

    /** 10.705 in2 for 4-in PVC Schedule 80 is in public copies of NEC Chapter 9 Table 4; 3.786 in gives 11.258. */
    @Test
    void aRowWhoseAreaIsWrongIsRefusedWithFileAndLine() throws IOException {
        Path catalog = folder.resolve("sizes.yaml");
        Files.writeString(
                catalog,
                "outer_ducts:\n  - {name: wrong row, type: PVC Schedule 80, trade_size: 4 in, bore_shape: round,"
                        + " inside_diameter_in: 3.786, area_in2: 10.705, source: a public copy}\n");

        assertThatThrownBy(() -> read("catalog: '" + catalog + "'\n"))
                .isInstanceOf(InputException.class)
                .hasMessageStartingWith(catalog + ": line 2: area_in2 of 'wrong row' must agree")
                .hasMessageContaining("11.258")
                .hasMessageContaining("check both against the row's source")
                .extracting(Throwable::getMessage)
                .asString()
                .doesNotContain("\n");
    }

    /** Cells and fabric as in the shipped rows, which are illustrative. */
    @ParameterizedTest(name = "{0}: {1} cells, up to {2} sleeves")
    @CsvSource({"1-cell, 1, 6", "2-cell, 2, 4", "3-cell, 3, 3", "4-cell, 4, 2"})
    void aNamedSleeveGivesCellsFabricAndSleevesPerDuct(String name, int cells, int sleeves) throws IOException {
        RoomSettings room =
                read("room:\n  sleeve: " + name + "\n  cells_per_sleeve:\n").room();

        assertThat(room.cellsPerSleeve()).isEqualTo(cells);
        assertThat(room.sleeveFabricMm()).isEqualTo(0.5);
        assertThat(room.sleevesFor(101.6)).isEqualTo(sleeves);
        assertThat(room.fillLimitMoreRatio())
                .isEqualTo(ShippedConfig.get().room().fillLimitMoreRatio());
    }

    @Test
    void aNumberBesideTheNameCounts() throws IOException {
        RoomSettings room = read("room: {sleeve: 2-cell, cells_per_sleeve: 5, design_cable: 432 fibers,"
                        + " design_cable_outside_diameter_mm: 11}\n")
                .room();

        assertThat(room.cellsPerSleeve()).isEqualTo(5);
        assertThat(room.designCableOutsideDiameterMm()).isEqualTo(11);
        assertThat(room.sleevesFor(101.6)).isEqualTo(4);
    }

    static List<List<String>> mistakes() {
        return List.of(
                List.of(
                        "room:\n  sleeve: 3-cel",
                        "line 2: sleeve: the catalog has no row '3-cel'. The nearest are: 3-cell"),
                List.of(
                        "room: {design_cable: 145 fibers}",
                        "line 1: design_cable: the catalog has no row '145 fibers'. The nearest are: 144 fibers"),
                List.of("catalog: {sleeves: []}\nroom: {sleeve: 3-cell}", "That list of the catalog is empty."),
                List.of(
                        "room: {sleeve: 4-cell, design_cable: 432 fibers}",
                        "line 1: the design cable of 17.8 mm does not fit into a cell of the sleeve '4-cell', which takes"
                                + " up to 16.0 mm"),
                List.of("room: {sleeve: 4-cell, design_cable_outside_diameter_mm: 16.1}", "of 16.1 mm"),
                List.of(
                        "assumed: {duct_size: pvc41 4 in}",
                        "assumed.duct_size: the catalog has no row 'pvc41 4 in'. The nearest are: pvc40 4 in"),
                List.of(
                        "catalog: none.yaml",
                        "none.yaml: there is no such file. Name a readable file at catalog in the config."),
                List.of("scoring: none.yaml", "at scoring in the config, or give it with --scoring."),
                List.of("catalog: {pipes: []}", "unknown key 'pipes' in catalog"));
    }

    @ParameterizedTest
    @MethodSource("mistakes")
    void everyMistakeIsNamedInOneLine(List<String> yamlAndMessage) {
        assertThatThrownBy(() -> read(yamlAndMessage.get(0)))
                .isInstanceOf(InputException.class)
                .hasMessageContaining(yamlAndMessage.get(1))
                .extracting(Throwable::getMessage)
                .asString()
                .doesNotContain("\n");
    }

    @Test
    void aDefaultMayNameARow() throws IOException {
        assertThat(read("assumed: {duct_size: PVC40 4 in}\n").assumed().findWord(Term.DUCT_SIZE))
                .contains("PVC40 4 in");
    }
}
