package org.spanroom.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.geojson.GeoJsonSource;

/** Reading a GeoJSON file of 10 000 lines with ten vertices and ten attributes each, five of which are wanted. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class GeoJsonBench {
    private static final int FEATURES = 10_000;

    private Path file;

    /** Writes the file. */
    @Setup
    public void write() throws IOException {
        file = Files.createTempFile("bench", ".geojson");
        var text = new StringBuilder("{\"type\":\"FeatureCollection\",\"features\":[\n");
        for (int i = 0; i < FEATURES; i++) {
            text.append(i == 0 ? "" : ",\n").append("{\"type\":\"Feature\",\"properties\":{");
            for (int field = 0; field < 10; field++) {
                text.append(field == 0 ? "" : ",")
                        .append("\"field_")
                        .append(field)
                        .append("\":\"value ");
                text.append((i + field) % 97).append('"');
            }
            text.append("},\"geometry\":{\"type\":\"LineString\",\"coordinates\":[");
            for (int vertex = 0; vertex < 10; vertex++) {
                text.append(vertex == 0 ? "" : ",");
                text.append(String.format(Locale.ROOT, "[%.8f,%.8f]", -30 + i * 1e-5, 40 + vertex * 1e-4));
            }
            text.append("]}}");
        }
        Files.writeString(file, text.append("\n]}\n"));
    }

    /** The whole file. */
    @Benchmark
    public long read() {
        try (GeoJsonSource source = GeoJsonSource.open(file, new FindingLog())) {
            return source.read(List.of("field_0", "field_2", "field_4", "field_6", "field_8"), feature -> {});
        }
    }

    /** Removes the file. */
    @TearDown
    public void remove() throws IOException {
        Files.delete(file);
    }
}
