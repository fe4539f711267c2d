package org.spanroom.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.finding.InputException;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.Surface;
import org.spanroom.model.permit.ZoneRule;

class ConfigReaderTest {
    @TempDir
    Path folder;

    private RunConfig read(String yaml) throws IOException {
        Path file = folder.resolve("c.yaml");
        Files.writeString(file, yaml);
        return ConfigReader.read(file);
    }

    @Test
    void anEmptyFileGivesTheShippedValues() throws IOException {
        assertThat(read("")).isEqualTo(ShippedConfig.get());
        assertThat(read("# nothing\n")).isEqualTo(ShippedConfig.get());
        assertThat(read("inputs:\nassumed:\n")).isEqualTo(ShippedConfig.get());
    }

    @Test
    void aConfigWithOnlyInputsWorks() throws IOException {
        RunConfig config = read("""
                inputs:
                  routes:
                    file: data/ducts.gpkg
                    layer: ducts
                    crs: EPSG:2263
                    fields:
                      route: ID
                      inside_diameter: {field: BORE, unit: in}
                      recorded_length: LEN
                      condition:
                  vaults:
                    file: data/mh.geojson
                """);

        LayerConfig routes = config.inputs().routes();
        assertThat(routes.file()).contains(folder.resolve("data/ducts.gpkg"));
        assertThat(routes.layer()).contains("ducts");
        assertThat(routes.crs()).contains("EPSG:2263");
        assertThat(routes.fields().find(Term.INSIDE_DIAMETER).orElseThrow().unit())
                .contains(Unit.IN);
        assertThat(routes.fields().find(Term.RECORDED_LENGTH).orElseThrow().unit())
                .contains(Unit.M);
        assertThat(routes.fields().find(Term.ROUTE).orElseThrow().unit()).isEmpty();
        assertThat(routes.fields().find(Term.CONDITION)).isEmpty();
        assertThat(routes.fields().fieldNames()).containsExactly("ID", "BORE", "LEN");
        assertThat(config.assumed()).isEqualTo(ShippedConfig.get().assumed());
    }

    /** 1 in = 25.4 mm and 1 lb/1000 ft = 0.00148816 kg/m (NIST SP 811, from memory). */
    @Test
    void quantitiesAreKeptInOneUnit() throws IOException {
        RunConfig config = read("""
                assumed:
                  inside_diameter: 4 in
                  cable_mass: 170 lb/1000ft
                  innerduct_count: 3
                  flooded: yes
                  in_service: live
                  innerduct_sdr:
                plausible:
                  inside_diameter: {least: 1in, most: 30 cm}
                  recorded_length: {most: 1 km}
                """);

        assertThat(config.assumed().findNumber(Term.INSIDE_DIAMETER).orElseThrow())
                .isCloseTo(101.6, within(1e-9));
        assertThat(config.assumed().findNumber(Term.CABLE_MASS).orElseThrow()).isCloseTo(0.252987, within(1e-6));
        assertThat(config.assumed().findNumber(Term.INNERDUCT_COUNT)).hasValue(3);
        assertThat(config.assumed().findNumber(Term.INNERDUCT_SDR)).isEmpty();
        assertThat(config.assumed().findWord(Term.FLOODED)).contains("yes");
        assertThat(config.plausible().contains(Term.INSIDE_DIAMETER, 25.4)).isTrue();
        assertThat(config.plausible().contains(Term.INSIDE_DIAMETER, 300.1)).isFalse();
        assertThat(config.plausible().contains(Term.RECORDED_LENGTH, 1001)).isFalse();
    }

    @Test
    void wordListsAreComparedWithoutCase() throws IOException {
        RunConfig config = read("values:\n  live: [IN USE, 1, true]\n");

        assertThat(config.values().live()).containsExactly("in use", "1", "true");
        assertThat(config.values().dead())
                .isEqualTo(ShippedConfig.get().values().dead());
    }

    static List<List<String>> mistakes() {
        return List.of(
                List.of(
                        "scoring:\n  gates: {splice_insde: true}",
                        "line 2: unknown key 'splice_insde' in gates. Did you mean 'splice_inside'?"),
                List.of(
                        "scoring:\n  criteria:\n    knowlege: {weight_ratio: 1}",
                        "line 3: unknown key 'knowlege' in criteria. Did you mean 'knowledge'?"),
                List.of("inptus: {}", "line 1: unknown key 'inptus' in the config. Did you mean 'inputs'?"),
                List.of(
                        "threads: 2\ninputs:\n  route: {}",
                        "line 3: unknown key 'route' in inputs. Did you mean 'routes'?"),
                List.of("inputs:\n  routes:\n    fields:\n      bore: B", "line 4: 'bore' is not a term"),
                List.of(
                        "inputs:\n  routes:\n    fields:\n      inside_diametre: B",
                        "line 4: 'inside_diametre' is not a term. Did you mean 'inside_diameter'?"),
                List.of(
                        "inputs:\n  routes:\n    fields:\n      inside_diameter: {field: B, unit: inch}",
                        "line 4: 'inch' is not a known unit. Possible for inside_diameter: mm, cm, m, km, in, ft, ft_us."),
                List.of("assumed:\n  inside_diameter: 4,5 in", "4,5 in'. A decimal point is expected, as in 4.5 in."),
                List.of("assumed:\n  inside_diameter: 1,250 mm", "as in 4.5, and no comma between digits."),
                List.of(
                        "bend:\n  minimum_deflection_deg: 4,5",
                        "minimum_deflection_deg must be a number, is '4,5'. A decimal point is expected, as in 4.5."),
                List.of(
                        "inputs:\n  routes:\n    fields:\n      inside_diameter: {field: B, unit: kg/m}",
                        "line 4: 'kg/m' is not a unit of inside_diameter"),
                List.of(
                        "inputs:\n  routes:\n    fields:\n      route: {field: B, unit: m}",
                        "line 4: route has no unit"),
                List.of(
                        "inputs:\n  routes:\n    fields:\n      route: [a]",
                        "line 4: route must be a section of keys, is a list"),
                List.of(
                        "inputs:\n  routes:\n    fields:\n      vault: V",
                        "inputs.routes.fields: vault is not a term of routes"),
                List.of(
                        "inputs:\n  vaults:\n    fields:\n      duct: V",
                        "inputs.vaults.fields: duct is not a term of vaults"),
                List.of(
                        "inputs:\n  contents:\n    diameter_unit: kg/m",
                        "line 3: diameter_unit must be a unit of length"),
                List.of("threads: many", "line 1: threads must be a whole number, is 'many'"),
                List.of("threads: 1.5", "line 1: threads must be a whole number, is '1.5'"),
                List.of(
                        "strict: false\nthreads: -1",
                        "line 2: threads must be from 0 to 1024, is '-1'. Check the number."),
                List.of("strict: maybe", "line 1: strict must be true or false, is 'maybe'"),
                List.of("strict: [true]", "line 1: strict must be a single value, is a list"),
                List.of("values:\n  live: yes", "line 2: live must be a list, such as [a, b], is 'yes'"),
                List.of(
                        "network:\n  lengths: draw",
                        "line 2: 'draw' is not a valid value for lengths. Did you mean 'drawn'?"),
                List.of("assumed:\n  inside_diameter: 4", "line 2: inside_diameter must be a number with a unit"),
                List.of(
                        "assumed:\n  inside_diameter: -4 in",
                        "line 2: inside_diameter must be 0, or from 0.01 to 10000 mm, is '-4 in'"),
                List.of("assumed:\n  innerduct_count: 2.5", "line 2: innerduct_count must be a whole number, is '2.5'"),
                List.of("assumed:\n  in_service: perhaps", "line 2: 'perhaps' is not a valid value for in_service"),
                List.of("assumed:\n  route: r", "line 2: no value can be assumed for route"),
                List.of(
                        "plausible:\n  inside_diameter: {least: 3 m, most: 2 mm}",
                        "line 2: inside_diameter: least 3000.0"),
                List.of(
                        "plausible:\n  cable_count: {least: 0, most: 301}",
                        "line 2: cable_count must be from 0 to 300, is '301'"),
                List.of(
                        "plausible:\n  innerduct_count: {least: 0, most: 1000000000}",
                        "line 2: innerduct_count must be from 0 to 300, is '1000000000'"),
                List.of(
                        "permit:\n  on_date: +999999999-12-31",
                        "on_date must be a date in the form 2027-03-31, in the years 1900 to 2200, was '+999999999-12-31'"),
                List.of(
                        "inputs:\n  field_book:\n    as_of: 2201-01-01",
                        "as_of must be a date in the form 2027-03-31, in the years 1900 to 2200, was '2201-01-01'"),
                List.of("plausible:\n  owner: {least: 3}", "line 2: owner is not a quantity"),
                List.of("values:\n  live: [up]\n  dead: [up]", "line 2: the word 'up' is listed in both dead and live"),
                List.of("threads: 1\nthreads: 2", "line 2: the key 'threads' is repeated here"),
                List.of("- a\n- b", "line 1: the config must be a section of keys, is a list"),
                List.of("threads: 1\n---\nthreads: 2", "a second document begins here"),
                List.of("threads: &t 1\nstrict: *t", "anchors and aliases are not supported"),
                List.of("inputs: {routes: {file: a", "this is not valid YAML"),
                List.of("a:\n\t- b", "this is not valid YAML"),
                List.of("x: " + "[".repeat(100_000), "the nesting is deeper than 20"));
    }

    @ParameterizedTest
    @MethodSource("mistakes")
    void everyMistakeIsNamedInOneLine(List<String> yamlAndMessage) {
        assertThatThrownBy(() -> read(yamlAndMessage.get(0)))
                .isInstanceOf(InputException.class)
                .hasMessageStartingWith(folder.resolve("c.yaml") + ": ")
                .hasMessageContaining(yamlAndMessage.get(1))
                .extracting(Throwable::getMessage)
                .asString()
                .doesNotContain("\n")
                .hasSizeLessThan(1000);
    }

    /** Ten lines of aliases that would mean ten thousand million words. */
    @Test
    void aBombOfAliasesIsRefusedAtOnce() {
        var bomb = new StringBuilder("a0: &a0 [x]\n");
        for (int i = 1; i <= 10; i++) {
            String previous = "*a" + (i - 1);
            bomb.append("a" + i + ": &a" + i + " [" + (previous + ", ").repeat(9) + previous + "]\n");
        }

        assertThatThrownBy(() -> read(bomb.toString()))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("anchors and aliases are not supported");
    }

    @Test
    void aMissingFileAndAWrongEncodingAreNamed() throws IOException {
        assertThatThrownBy(() -> ConfigReader.read(folder.resolve("none.yaml")))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("there is no such file");

        Path latin = folder.resolve("latin.yaml");
        Files.write(latin, "values:\n  live: [größe]\n".getBytes(StandardCharsets.ISO_8859_1));
        assertThatThrownBy(() -> ConfigReader.read(latin))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("not text in UTF-8");
    }

    @Test
    void aConfigWrittenOutReadsTheSame() throws IOException {
        RunConfig config = read("""
                inputs:
                  routes: {file: a.shp, fields: {duct: D, cable_mass: {field: W, unit: lb/ft}}}
                  contents: {file: c.csv, diameter_unit: in, mass_unit: lb/1000ft}
                assumed: {innerduct_count: 3, owner: city}
                output: {folder: out}
                strict: true
                """);

        String json = new ObjectMapper().writeValueAsString(ConfigReader.asMap(config));

        assertThat(read(json)).isEqualTo(config);
        assertThat(read(new ObjectMapper().writeValueAsString(ConfigReader.asMap(ShippedConfig.get()))))
                .isEqualTo(ShippedConfig.get());
    }

    @Test
    void filesAreNamedRelativeToTheConfigAndResultsAreNot() throws IOException {
        Path sub = Files.createDirectory(folder.resolve("sub"));
        Files.writeString(folder.resolve("weights.yaml"), "criteria:\n  length: {weight_ratio: 7}\n");
        Path file = sub.resolve("c.yaml");
        Files.writeString(file, """
                scoring: ../weights.yaml
                inputs:
                  routes: {file: ducts.shp}
                  vaults: {file: ../data/./vaults.shp}
                  contents: {file: '%s'}
                output: {folder: out, packing_file: packings.txt}
                """.formatted(folder.resolve("a/../c.csv")));

        RunConfig config = ConfigReader.read(file);

        assertThat(config.scoring().criteria().get("length").weightRatio()).isEqualTo(7);
        assertThat(config.inputs().routes().file()).contains(sub.resolve("ducts.shp"));
        assertThat(config.inputs().vaults().file()).contains(folder.resolve("data/vaults.shp"));
        assertThat(config.inputs().contents().file()).contains(folder.resolve("a/../c.csv"));
        assertThat(config.output().folder()).contains(Path.of("out"));
        assertThat(config.output().packingFile()).contains(Path.of("packings.txt"));
    }

    @Test
    void aFileBelowTheWorkingDirectoryKeepsAShortName() {
        LayerConfig routes = ConfigReader.read(
                        Path.of("sample-gis", "spanroom.yaml").toAbsolutePath())
                .inputs()
                .routes();

        assertThat(routes.file()).contains(Path.of("sample-gis", "ducts.geojson"));
    }

    /** A missing value is written as a missing key; it must not come back as the shipped one. */
    @Test
    void theRecordOfARunKeepsWhatWasTakenAway() throws IOException {
        RunConfig config = read("assumed: {cable_mass: , flooded: }\n");
        Path record = folder.resolve("run.json");
        Files.writeString(
                record, new ObjectMapper().writeValueAsString(java.util.Map.of("config", ConfigReader.asMap(config))));

        assertThat(config.assumed().findNumber(Term.CABLE_MASS)).isEmpty();
        assertThat(ConfigReader.readRecorded(record)).isEqualTo(config);
    }

    @Test
    void aWordThatIsAKeyIsFilledUpAndACurveIsNot() throws IOException {
        RunConfig config = read("""
                rates:
                  surfaces: {verge: [meadow]}
                  standard: {crew_persons: {value: 9, high: 9}}
                scoring:
                  gates: {pull_fails: true}
                  criteria: {length: {curve: {0: 1}}}
                  knowledge: {terms: {year: 4}}
                """);

        RunConfig shipped = ShippedConfig.get();
        assertThat(config.rates().surfaces().get(Surface.VERGE)).containsExactly("meadow");
        assertThat(config.rates().surfaces().get(Surface.ROADWAY))
                .isEqualTo(shipped.rates().surfaces().get(Surface.ROADWAY));
        assertThat(config.rates().standard().get(RateKey.CREW_PERSONS).low())
                .isEqualTo(shipped.rates().standard().get(RateKey.CREW_PERSONS).low());
        assertThat(config.scoring().gates().values()).doesNotContain(false);
        assertThat(config.scoring().criteria().get("length").curve()).hasSize(1);
        assertThat(config.scoring().knowledge().terms()).containsEntry(Term.CABLE_COUNT, 3.0);
    }

    @Test
    void aRuleOfAZoneKindIsAFlagOfItsOwn() throws IOException {
        RunConfig config = read("""
                permit:
                  kinds:
                    cut_ban: {night_only: true}
                    night_only: {night_only: false}
                    parade: {cut_ban: true, recovery_lead_days: 1, new_build_lead_days: 2}
                """);

        assertThat(config.permit().kind("cut_ban").rules())
                .containsExactlyInAnyOrder(ZoneRule.CUT_BAN, ZoneRule.NIGHT_ONLY);
        assertThat(config.permit().kind("night_only").rules()).isEmpty();
        assertThat(config.permit().kind("parade").rules()).containsExactly(ZoneRule.CUT_BAN);
        assertThat(ConfigReader.asMap(config).toString())
                .contains(
                        "parade={words=[], recovery_at_vault=[], recovery_along=[], new_build=[], cut_ban=true, night_only=false,");
    }

    @Test
    void aSectionMayStandInAFileOfItsOwn(@TempDir Path folder) throws IOException {
        Path scoring = folder.resolve("scoring.yaml");
        Files.writeString(scoring, "criteria:\n  length: {weight_ratio: 7}\n");
        Path main = folder.resolve("main.yaml");
        Files.writeString(main, "threads: 3\nscoring: '" + scoring + "'\n");

        RunConfig config = ConfigReader.read(main);

        assertThat(config.threads()).isEqualTo(3);
        assertThat(config.scoring().criteria().get("length").weightRatio()).isEqualTo(7);
        assertThat(config.scoring().criteria().get("ease_bends"))
                .isEqualTo(ShippedConfig.get().scoring().criteria().get("ease_bends"));
    }

    @Test
    void aProblemInASectionsFileNamesThatFile(@TempDir Path folder) throws IOException {
        Path scoring = folder.resolve("scoring.yaml");
        Files.writeString(scoring, "criteria:\n  lenght: {weight_ratio: 7}\n");
        Path main = folder.resolve("main.yaml");
        Files.writeString(main, "scoring: '" + scoring + "'\n");

        assertThatThrownBy(() -> ConfigReader.read(main))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("scoring.yaml")
                .hasMessageContaining("lenght");
    }
}
