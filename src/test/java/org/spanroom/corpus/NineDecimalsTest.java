package org.spanroom.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.StringJoiner;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.spanroom.bend.BendFinder;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.corpus.DrawnSpan.Shape;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.InputData;
import org.spanroom.input.InputReader;
import org.spanroom.input.ShapefileBytes;
import org.spanroom.model.Line;
import org.spanroom.model.network.Span;
import org.spanroom.network.SpanCutter;

/**
 * A law: the same ducts have the same bends whether a file holds all digits of their coordinates or nine decimals of a degree.
 * Spans of every class of the corpus go the whole way, from a shapefile, which holds doubles, and from GeoJSON.
 */
class NineDecimalsTest {
    private static final int SPANS_OF_EACH = 60;

    /** About a meter, at the equator and the meridian that the spans are put on. */
    private static final double DEG_TO_M = 111_000;

    @TempDir
    private Path folder;

    @Test
    void fullPrecisionAndNineDecimalsGiveTheSameSpansAndBends() throws IOException {
        List<double[]> lines = lines();
        List<Span> full = spans(shapefile(lines), "EPSG:4326", geoJson("full", lines, Double::toString));
        String nine = "%.9f";
        DoubleFunction<String> cut = deg -> String.format(Locale.ROOT, nine, deg);
        List<Span> rounded = spans(geoJson("lines", lines, cut), "OGC:CRS84", geoJson("ends", lines, cut));

        assertThat(full).hasSizeGreaterThanOrEqualTo(lines.size());
        assertThat(rounded)
                .extracting(Span::ground)
                .isEqualTo(full.stream().map(Span::ground).toList());
        var finder = new BendFinder(ShippedConfig.get().bend());
        for (int i = 0; i < full.size(); i++) {
            assertThat(finder.find(rounded.get(i).ground(), 100))
                    .isEqualTo(finder.find(full.get(i).ground(), 100));
        }
    }

    private static List<double[]> lines() {
        List<double[]> lines = new ArrayList<>();
        for (int number = 0; number < SPANS_OF_EACH; number++) {
            lines.add(degrees(SpanDrawer.draw(5, number).drawn(), lines.size()));
            for (Shape shape : BendAccuracy.HARD) {
                lines.add(degrees(SpanDrawer.draw(5, number, shape).drawn(), lines.size()));
            }
        }
        return lines;
    }

    /** Puts each span at a place of its own, 5 km from the next. */
    private static double[] degrees(Line line, int place) {
        double[] xy = new double[2 * line.size()];
        for (int vertex = 0; vertex < line.size(); vertex++) {
            xy[2 * vertex] = 0.05 * (place % 20) + line.x(vertex) / DEG_TO_M;
            xy[2 * vertex + 1] = 0.05 * (place / 20) - 0.3 + line.y(vertex) / DEG_TO_M;
        }
        return xy;
    }

    private Path shapefile(List<double[]> lines) throws IOException {
        var file = new ShapefileBytes(3);
        lines.forEach(line -> file.add(ShapefileBytes.parts(3, new double[][] {line})));
        return file.write(folder, "lines");
    }

    /** Writes a line for each, or, in a layer of another name, a point for each end. */
    private Path geoJson(String name, List<double[]> lines, DoubleFunction<String> digits) throws IOException {
        var features = new StringJoiner(",", "{\"type\":\"FeatureCollection\",\"features\":[", "]}");
        for (double[] line : lines) {
            if (name.equals("lines")) {
                features.add(feature("LineString", "[" + vertices(line, 0, line.length, digits) + "]"));
            } else {
                features.add(feature("Point", vertices(line, 0, 2, digits)));
                features.add(feature("Point", vertices(line, line.length - 2, line.length, digits)));
            }
        }
        return Files.writeString(folder.resolve(name + ".geojson"), features.toString());
    }

    private static String feature(String type, String coordinates) {
        return "{\"type\":\"Feature\",\"properties\":{},\"geometry\":{\"type\":\"" + type + "\",\"coordinates\":"
                + coordinates + "}}";
    }

    private static String vertices(double[] line, int from, int to, DoubleFunction<String> digits) {
        var all = new StringJoiner(",");
        for (int at = from; at < to; at += 2) {
            all.add("[" + digits.apply(line[at]) + "," + digits.apply(line[at + 1]) + "]");
        }
        return all.toString();
    }

    private List<Span> spans(Path routes, String crs, Path vaults) throws IOException {
        Path yaml = Files.writeString(
                folder.resolve("c.yaml"),
                "inputs:\n  routes:\n    file: " + routes + "\n    crs: " + crs + "\n  vaults:\n    file: " + vaults
                        + "\n");
        RunConfig config = ConfigReader.read(yaml);
        InputData data = new InputReader(config, new FindingLog()).read();
        List<Span> spans = new ArrayList<>();
        new SpanCutter(config.network(), 1)
                .cut(data.routes(), data.vaults(), new FindingLog())
                .spans()
                .forEach(spans::add);
        return spans;
    }
}
