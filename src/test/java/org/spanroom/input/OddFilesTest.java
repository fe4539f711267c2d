package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.LayerInfo;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.testing.OpenData;

/**
 * Every file of three public collections of odd and damaged files ends as read, as read with findings, or in one line:
 * GDAL's autotest suite (MIT), mapbox/geojsonhint (ISC), mbostock/shapefile (BSD).
 */
class OddFilesTest {
    private static final Duration LONGEST = Duration.ofSeconds(20);

    @TestFactory
    Stream<DynamicTest> everyOddFileEndsInOneOfThreeWays() {
        return OpenData.filesBelow("odd-files", "").stream()
                .map(file -> DynamicTest.dynamicTest(
                        file.getParent().getFileName() + "/" + file.getFileName(), () -> endsInOneOfThreeWays(file)));
    }

    /** Reads a file and returns how it ended, in one line. */
    static String endsInOneOfThreeWays(Path file) {
        return assertTimeoutPreemptively(LONGEST, () -> {
            try {
                var ends = new ArrayList<String>();
                for (LayerInfo info : LayerSources.list(file)) {
                    ends.add(read(file, info.name()));
                }
                return String.join("; ", ends);
            } catch (InputException e) {
                assertThat(e.getMessage())
                        .startsWith(file.toString().substring(0, 3))
                        .doesNotContain("\n", "\r");
                return "refused: " + e.getMessage();
            }
        });
    }

    private static String read(Path file, String layer) {
        List<String> fields;
        try (LayerSource source = LayerSources.open(file, Optional.of(layer), new FindingLog())) {
            fields = source.header().fields();
        }
        ReadLayer read = ReadLayer.of(file, Optional.of(layer), fields);

        assertThat(read.met()).isEqualTo(read.features().size() + read.rejected());
        assertThat(read.features()).allSatisfy(feature -> {
            assertThat(feature.values()).hasSize(fields.size());
            assertThat(feature.values())
                    .allSatisfy(value -> assertThat(value == null
                                    || value instanceof String
                                    || value instanceof Long
                                    || value instanceof Double
                                    || value instanceof Boolean)
                            .as("type of " + value)
                            .isTrue());
            assertThat(feature.geometry().parts())
                    .allSatisfy(part -> assertThat(part)
                            .satisfies(ordinates -> assertThat(ordinates).doesNotContain(Double.NaN)));
        });
        return "read " + read.features().size() + " of " + read.met() + " " + read.details() + " "
                + read.header().crsDefinition().map(crs -> crs.substring(0, Math.min(30, crs.length())));
    }
}
