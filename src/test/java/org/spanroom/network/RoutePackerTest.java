package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.Line;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/** Spans come out of their packed form as they were put in, bit for bit, whether each begins where the one before it ends or not. */
class RoutePackerTest {
    private static final int VAULTS = 9;

    @ParameterizedTest
    @CsvSource({
        "1, true, false",
        "2, true, false",
        "2, false, false",
        "7, true, false",
        "7, false, false",
        "7, true, true",
        "7, false, true"
    })
    void spansComeOutAsTheyWerePutIn(int count, boolean linked, boolean withHeights) {
        for (long seed = 0; seed < 40; seed++) {
            var random = new Random(seed);
            Line line = line(random, 3 * count + 1, withHeights);
            boolean recorded = seed % 2 == 0;
            List<Put> put = put(random, count, linked, recorded, line);
            var packer = new RoutePacker(vaults());
            packer.clear();
            for (Put span : put) {
                packer.add(span.ends, span.line, line);
            }
            ChainSpans spans = packer.spans(route(line));
            assertThat(spans.size()).isEqualTo(count);
            for (int at = 0; at < count; at++) {
                compare(spans, at, put.get(at));
            }
        }
    }

    private record Put(RoutePacker.Ends ends, SpanLine line) {}

    private static void compare(ChainSpans spans, int at, Put put) {
        assertThat(spans.fromVault(at)).isEqualTo(put.ends.fromVault());
        assertThat(spans.toVault(at)).isEqualTo(put.ends.toVault());
        assertThat(spans.lengthM(at)).isEqualTo(put.ends.lengthM());
        assertThat(spans.drawnLengthM(at)).isEqualTo(put.ends.drawnM());
        assertThat(spans.lonLat(at)).isEqualTo(put.line.lonLat());
        assertThat(spans.span(at).fromOffsetM()).isEqualTo(put.ends.fromOffsetM());
        assertThat(spans.span(at).toOffsetM()).isEqualTo(put.ends.toOffsetM());
    }

    /** Each span has its own stretch of the route's vertices, and ends of its own a little beside the route's. */
    private static List<Put> put(Random random, int count, boolean linked, boolean recorded, Line line) {
        var put = new ArrayList<Put>();
        double[] stop = stop(random, line, 0);
        for (int at = 0; at < count; at++) {
            double[] from = linked ? stop : stop(random, line, 3 * at);
            double[] to = stop(random, line, 3 * at + 3);
            var spanLine = new SpanLine(new GroundStep());
            spanLine.clear();
            spanLine.begin(line.hasZ());
            spanLine.add(from[2], from[3], from[4]);
            for (int vertex = 3 * at + 1; vertex < 3 * at + 3; vertex++) {
                spanLine.add(line.x(vertex), line.y(vertex), line.hasZ() ? line.z(vertex) : 0);
            }
            spanLine.add(to[2], to[3], to[4]);
            double drawnM = random.nextDouble(10, 200);
            double lengthM = recorded ? drawnM * 1.01 : drawnM;
            var ends = new RoutePacker.Ends((int) from[0], (int) to[0], lengthM, drawnM, from[1], to[1]);
            put.add(new Put(ends, spanLine));
            stop = to;
        }
        return put;
    }

    /** Returns a vault's number, its offset, longitude, latitude, height. */
    private static double[] stop(Random random, Line line, int vertex) {
        return new double[] {
            random.nextInt(VAULTS),
            random.nextDouble(3),
            line.x(vertex) + random.nextDouble(1e-5),
            line.y(vertex) + random.nextDouble(1e-5),
            random.nextDouble(9)
        };
    }

    private static Line line(Random random, int vertices, boolean withHeights) {
        int dimension = withHeights ? 3 : 2;
        double[] ordinates = new double[dimension * vertices];
        for (int i = 0; i < ordinates.length; i++) {
            ordinates[i] = 7 + 1e-4 * Math.floorDiv(i, dimension) + random.nextDouble(1e-5);
        }
        return Line.wrap(ordinates, withHeights);
    }

    private static List<Vault> vaults() {
        return IntStream.range(0, VAULTS)
                .mapToObj(number -> new Vault(number, "V" + number, 7, 7, List.of(), OptionalDouble.empty(), ""))
                .toList();
    }

    private static Route route(Line line) {
        return new Route(
                0,
                "R",
                Sketch.duct("D", "HDPE", false),
                line,
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                "");
    }
}
