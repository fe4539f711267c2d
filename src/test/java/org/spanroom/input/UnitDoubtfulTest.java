package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.fields.ContentsTableReader;

/** A whole field in another unit than the config says is one finding. Bores of 20 to 500 mm, and cables of 2 to 110 mm, are plausible. */
class UnitDoubtfulTest {
    @TempDir
    private Path folder;

    private final FindingLog log = new FindingLog();

    private List<Finding> doubts() {
        return log.all().stream()
                .filter(finding -> finding.code() == FindingCode.UNIT_DOUBTFUL)
                .toList();
    }

    private RunConfig config(String yaml) throws IOException {
        return ConfigReader.read(Files.writeString(folder.resolve("config.yaml"), yaml));
    }

    private void read(FakeLayer layer, String fields, int threads) throws IOException {
        Path file = Files.writeString(folder.resolve("fake.geojson"), "{}");
        RunConfig config = config("inputs: {routes: {file: " + file + ", fields: {" + fields + "}}}\n");
        new InputReader(config.withThreads(threads), log, (path, name, findings) -> layer).read();
    }

    private static FakeLayer layer(String values) {
        var layer = new FakeLayer("OGC:CRS84", "B");
        Arrays.stream(values.split(" ")).forEach(value -> layer.line(new double[] {0, 0, 0.001, 0}, value));
        return layer;
    }

    /**
     * By hand: 4 is 101.6 mm in inches, 40 mm in centimeters and 1,219 mm in feet; 1.5 is 38.1 mm, 15 mm and 457 mm; 0.1 is 30.5 mm in
     * feet, 100 mm in meters and 2.5 mm in inches.
     */
    @ParameterizedTest(name = "{0} in {1}")
    @CsvSource(
            nullValues = "-",
            delimiter = '|',
            value = {
                "4 4 4 1.5 1.5 1.5 | mm | 6 of 6 values are implausible in millimeters (mm); plausible would be 6 in inches"
                        + " (in), 3 in centimeters (cm), 3 in feet (ft)",
                "1.5 1.5 1.5 1.5 1.5 100 | mm | 5 of 6 values are implausible in millimeters (mm); plausible would be 5 in"
                        + " inches (in), 5 in feet (ft)",
                "0.1 0.1 0.1 0.1 0.1 | mm | 5 of 5 values are implausible in millimeters (mm); plausible would be 5 in feet"
                        + " (ft), 5 in meters (m)",
                "100 100 100 100 100 | in | 5 of 5 values are implausible in inches (in); plausible would be 5 in"
                        + " millimeters (mm)",
                // too few
                "4 4 4 4 | mm | -",
                // mixed units: fewer than half are implausible
                "4 4 4 4 4 100 100 100 100 100 100 | mm | -",
                // values with a unit of their own are good
                "4in 4in 4in 4in 4in | mm | -",
                // right
                "4 4 4 4 4 4 | in | -",
                // in no unit
                "-9 -9 -9 -9 -9 -9 | mm | -",
            })
    void mostValuesOfAFieldDecide(String values, String unit, String expected) throws IOException {
        for (int threads : new int[] {1, 2}) {
            read(layer(values), "inside_diameter: {field: B, unit: " + unit + "}", threads);
        }

        if (expected == null) {
            assertThat(doubts()).isEmpty();
            return;
        }
        Finding once = Finding.of(
                        FindingCode.UNIT_DOUBTFUL, "fake.geojson", "", "check the unit of B in the config: " + expected)
                .inField("B");
        assertThat(doubts()).as("the same for one thread and for two").containsExactly(once, once);
    }

    @Test
    void aColumnOfTheContentsTableIsOneFieldWhateverItIsOf() throws IOException {
        Path file = folder.resolve("contents.csv");
        Files.writeString(file, """
                duct,item,kind,inside,outside_diameter,sdr,mass
                d1,i1,innerduct,,1.66,11,
                d1,i2,innerduct,,1.66,11,
                d1,i3,innerduct,,1.66,11,
                d1,c1,cable,i1,0.8,,0.2
                d1,c2,cable,i2,0.8,,0.2
                """);

        new ContentsTableReader(file, config("inputs: {contents: {diameter_unit: mm, mass_unit: kg/m}}\n"), log).read();

        assertThat(doubts()).singleElement().satisfies(finding -> {
            assertThat(finding.field()).isEqualTo("outside_diameter");
            assertThat(finding.detail())
                    .contains("5 of 5 values are implausible in millimeters (mm)")
                    .contains("5 in inches (in), 5 in centimeters (cm)");
        });
    }
}
