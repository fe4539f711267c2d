package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Of a layer with one fault everywhere a thousand findings are listed; the counts are of all. */
class FindingCountsTest {
    private static final int BROKEN = 1500;
    private static final String GOOD = "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"LineString\","
            + "\"coordinates\":[[-30,40],[-30,40.001]]}}";
    private static final String BAD =
            ",{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"Point\",\"coordinates\":[1,2]}}";

    @TempDir
    Path folder;

    @Test
    void theReportsAndTheRecordCountWhatIsNotListedToo() throws IOException {
        Path routes = Files.writeString(
                folder.resolve("routes.geojson"),
                "{\"type\":\"FeatureCollection\",\"features\":[" + GOOD + BAD.repeat(BROKEN) + "]}");
        Path vaults = Files.writeString(
                folder.resolve("vaults.geojson"),
                "{\"type\":\"FeatureCollection\",\"features\":["
                        + BAD.substring(1).replace("1,2", "-30,40") + BAD.replace("1,2", "-30,40.001") + "]}");
        Path results = folder.resolve("run");

        CommandRun rank = CommandRun.of(
                "rank", "--routes", routes.toString(), "--vaults", vaults.toString(), "--output", results.toString());
        CommandRun check = CommandRun.of("check", "--routes", routes.toString(), "--vaults", vaults.toString());

        assertThat(rank.exitCode()).as(rank.err()).isZero();
        JsonNode run = new ObjectMapper().readTree(results.resolve("run.json").toFile());
        assertThat(run.at("/findings_by_code/wrong_geometry_type").asInt()).isEqualTo(BROKEN);
        assertThat(run.at("/findings_by_severity/rejected").asInt()).isEqualTo(BROKEN);
        assertThat(run.at("/findings").asInt()).isGreaterThanOrEqualTo(BROKEN);
        assertThat(rank.out()).contains("   1,500 the feature has a geometry type that this layer cannot use");
        assertThat(check.out()).contains("wrong_geometry_type (1,500): ");
        assertThat(Files.readAllLines(results.resolve("findings.csv")).stream()
                        .filter(line -> line.contains("wrong_geometry_type")))
                .hasSize(1001);
    }
}
