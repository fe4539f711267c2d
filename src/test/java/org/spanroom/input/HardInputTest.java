package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.locationtech.jts.geom.util.GeometryFixer;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.InputConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.finding.Severity;

/**
 * Every way to be odd or broken that we know of, from the file to routes, vaults and zones: each ends in results and findings, or in one
 * line that names the file and the remedy; and every feature is used or rejected, with a word about it.
 */
class HardInputTest {
    private static final Duration LONGEST = Duration.ofSeconds(60);

    @TempDir
    private Path folder;

    static Stream<HardCase> cases() {
        return Stream.of(
                        HardJson.cases(),
                        HardShapes.cases(),
                        HardGeoPackages.cases(),
                        HardTables.cases(),
                        HardVaults.cases(),
                        HardZones.cases())
                .flatMap(List::stream);
    }

    /** The build runs all this a second time without assertions, since libraries behave otherwise then. */
    @Test
    void assertionsOfLibrariesAreAsTheBuildSays() {
        boolean off = "off".equals(System.getProperty("spanroom.assertions"));

        assertThat(GeometryFixer.class.desiredAssertionStatus()).isEqualTo(!off);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void endsAsExpected(HardCase hard) throws Exception {
        Path file = hard.maker().write(folder);
        var findings = new FindingLog();
        try {
            InputData data = assertTimeoutPreemptively(
                    LONGEST, () -> new InputReader(config(hard.role(), file), findings).read());
            InputRecord record = data.records().stream()
                    .filter(found -> found.role().equals(hard.role()))
                    .findFirst()
                    .orElseThrow();

            assertThat(hard.refused()).as("refused").isFalse();
            assertThat(record.featuresUsed())
                    .as(hard + ": used; " + findings.all())
                    .isEqualTo(hard.used());
            assertThat(record.featuresRejected()).as("rejected").isEqualTo(hard.rejected());
            assertThat(told(findings.all(), record))
                    .as("rejected features told")
                    .isGreaterThanOrEqualTo(hard.rejected());
            assertThat(hard.words())
                    .allSatisfy(words -> assertThat(lines(findings)).anySatisfy(line -> {
                        assertThat(line).startsWith(words.substring(0, words.indexOf(": ") + 2));
                        assertThat(line).contains(words.substring(words.indexOf(": ") + 2));
                    }));
            assertThat(lines(findings)).allSatisfy(line -> assertThat(line).hasSizeLessThan(2_100));
        } catch (InputException e) {
            assertThat(hard.refused()).as("refused: " + e.getMessage()).isTrue();
            assertThat(e.getMessage())
                    .contains(folder + "/")
                    .contains(hard.words().toArray(String[]::new))
                    .doesNotContain(
                            "\n", "\r", "StreamReadConstraints", "Feature '", "Exception", "REDACTED", "(JSON String")
                    .hasSizeLessThan(2_100);
        }
    }

    /** Returns how many rejected features the findings speak of: one each, and those that a sum represents. */
    private static long told(List<Finding> findings, InputRecord record) {
        return findings.stream()
                .filter(finding -> finding.code().severity() == Severity.REJECTED)
                .filter(finding -> finding.source().equals(record.source()))
                .mapToLong(finding -> finding.detail().endsWith(" of this kind, not listed")
                        ? Long.parseLong(finding.detail()
                                .substring(0, finding.detail().indexOf(' '))
                                .replace(",", ""))
                        : 1)
                .sum();
    }

    private static List<String> lines(FindingLog findings) {
        return findings.all().stream()
                .map(finding -> finding.code().key() + ": " + finding.detail())
                .toList();
    }

    /** A config that reads one file in its role, beside a layer of one route where it is not the routes. */
    private RunConfig config(String role, Path file) throws Exception {
        Path yaml = Files.writeString(folder.resolve("config.yaml"), """
                inputs:
                  routes:
                    fields: {route: route}
                  vaults:
                    fields: {}
                  zones:
                    fields: {zone: zone, zone_kind: kind, zone_name: title, zone_from: from, zone_until: until}
                permit: {on_date: 2027-01-15}
                """);
        RunConfig config = ConfigReader.read(yaml);
        InputConfig inputs = config.inputs();
        Path plain = Files.writeString(folder.resolve("plain.geojson"), HardJson.collection(HardJson.line(1)));
        LayerConfig routes = inputs.routes().withFile(role.equals("routes") ? file : plain);
        InputConfig given = inputs.withRoutes(routes);
        if (role.equals("vaults")) {
            given = given.withVaults(inputs.vaults().withFile(file));
        }
        if (role.equals("zones")) {
            given = given.withZones(inputs.zones().withFile(file));
        }
        return config.withInputs(
                role.equals("contents") ? given.withContents(inputs.contents().withFile(file)) : given);
    }

    static Optional<HardCase> find(String name) {
        return cases().filter(hard -> hard.toString().equals(name)).findFirst();
    }
}
