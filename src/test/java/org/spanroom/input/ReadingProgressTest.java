package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ConfigReader;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;

class ReadingProgressTest {
    private static final SourceFeature ANY = new SourceFeature(
            1, "", "Point", new SourceGeometry(SourceGeometry.Kind.NONE, List.of(), false, List.of()), List.of());

    private record Report(long features, double doneShare) {}

    private final List<Report> reports = Collections.synchronizedList(new ArrayList<>());

    @TempDir
    Path folder;

    @ParameterizedTest(name = "{0} threads")
    @ValueSource(ints = {1, 2})
    void countGoesWithTheFeaturesAndShareWithTheBytes(int threads) throws IOException {
        Path routes =
                geoJson("routes.geojson", 4_000, "{\"type\":\"LineString\",\"coordinates\":[[%1$s,40],[%1$s,40.001]]}");
        Path vaults = geoJson("vaults.geojson", 2_600, "{\"type\":\"Point\",\"coordinates\":[%s,40]}");
        Path yaml = Files.writeString(
                folder.resolve("c.yaml"),
                "inputs: {routes: {file: '" + routes + "'}, vaults: {file: '" + vaults + "'}}\nthreads: " + threads
                        + "\n");

        var data = new InputReader(ConfigReader.read(yaml), new FindingLog(), this::report).read();

        assertThat(data.routes()).hasSize(4_000);
        assertThat(reports.stream().mapToLong(Report::features).sum()).isEqualTo(4_000 + 2_500);
        assertThat(reports).extracting(Report::doneShare).allMatch(share -> share >= 0 && share <= 1);
        if (threads == 1) { // with more, the reader may be at the end before anything is reported
            assertThat(reports).extracting(Report::doneShare).anyMatch(share -> share > 0.1 && share < 0.6);
        }
        assertThat(reports.stream().mapToDouble(Report::doneShare).max().orElseThrow())
                .isBetween(0.95, 1.0);
    }

    @Test
    void eachFileWeighsAsMuchAsItsBytes() throws IOException {
        var tally = new ReadingTally(this::report);
        tally.expect("routes", Files.write(folder.resolve("routes"), new byte[3_000]));
        tally.expect("vaults", Files.write(folder.resolve("vaults"), new byte[1_000]));
        tally.expect("zones", folder.resolve("absent"));

        Consumer<SourceFeature> vaults =
                tally.of("vaults", folder.resolve("vaults")).counting(new Announcing(1_000), feature -> {});
        IntStream.range(0, 1_000).forEach(n -> vaults.accept(ANY));
        tally.of("vaults", folder.resolve("vaults")).end();
        Consumer<SourceFeature> routes =
                tally.of("routes", folder.resolve("routes")).counting(new Announcing(2_000), feature -> {});
        IntStream.range(0, 500).forEach(n -> routes.accept(ANY));

        assertThat(reports).extracting(Report::features).containsExactly(500L, 500L, 500L);
        assertThat(reports.get(0).doneShare).isEqualTo(0.5 * 1_000 / 4_000, within(1e-12));
        assertThat(reports.get(1).doneShare).isEqualTo(1.0 * 1_000 / 4_000, within(1e-12));
        assertThat(reports.get(2).doneShare).isEqualTo((1_000 + 0.25 * 3_000) / 4_000, within(1e-12));
    }

    @Test
    void layerThatAnnouncesTooFewIsNeverMoreThanDone() {
        assertThat(new Announcing(10).shareRead(500)).isEqualTo(1);
    }

    @Test
    void layerThatAnnouncesNothingLeavesTheShareUnknown() throws IOException {
        var tally = new ReadingTally(this::report);
        tally.expect("routes", Files.write(folder.resolve("routes"), new byte[3_000]));

        Consumer<SourceFeature> routes =
                tally.of("routes", folder.resolve("routes")).counting(new Announcing(-1), feature -> {});
        IntStream.range(0, 500).forEach(n -> routes.accept(ANY));

        assertThat(reports).singleElement().extracting(Report::doneShare).isEqualTo(Double.NaN);
    }

    private void report(long features, double doneShare) {
        reports.add(new Report(features, doneShare));
    }

    private Path geoJson(String name, int features, String geometry) throws IOException {
        return Files.writeString(
                folder.resolve(name),
                IntStream.range(0, features)
                        .mapToObj(n -> "{\"type\":\"Feature\",\"properties\":{\"id\":\"F" + n + "\"},\"geometry\":"
                                + String.format(Locale.ROOT, geometry, "-100." + (10_000 + n)) + "}")
                        .collect(Collectors.joining(",\n", "{\"type\":\"FeatureCollection\",\"features\":[\n", "]}")));
    }

    /** Says how many features it has, and has none. */
    private record Announcing(long count) implements LayerSource {
        @Override
        public LayerHeader header() {
            return new LayerHeader(Path.of("any"), "any", List.of(), Optional.empty(), count);
        }

        @Override
        public long read(List<String> wantedFields, Consumer<SourceFeature> sink) {
            return 0;
        }

        @Override
        public void close() {}
    }
}
