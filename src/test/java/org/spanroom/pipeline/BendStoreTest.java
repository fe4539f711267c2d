package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.bend.BendFinder;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;
import org.spanroom.model.bend.BendSettings;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;

class BendStoreTest {
    private static final BendSettings SETTINGS = ShippedConfig.get().bend();

    /** Spans on one line with bores to either side of where the assumed sweep changes, requested twice. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatIsKeptIsToTheLastBitWhatIsFound(long seed) {
        var random = new Random(seed);
        Line line = walk(random);
        var store = new BendStore(SETTINGS, 4);
        var finder = new BendFinder(SETTINGS);
        List<Span> spans = List.of(span(line, 100), span(line, 50), span(line, 100), span(walk(random), 50));

        for (int round = 0; round < 2; round++) {
            for (int number = 0; number < spans.size(); number++) {
                Span span = spans.get(number);
                Bends found = finder.find(span.ground(), span.duct().insideDiameterMm());
                assertThat(store.of(number, span)).isEqualTo(found);
            }
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 30);
    }

    private static Line walk(Random random) {
        double[] xy = new double[2 * (2 + random.nextInt(12))];
        for (int at = 2; at < xy.length; at += 2) {
            xy[at] = xy[at - 2] + 5 + 20 * random.nextDouble();
            xy[at + 1] = xy[at - 1] + 20 * random.nextGaussian();
        }
        return Line.ofXy(xy);
    }

    private static Span span(Line line, double insideMm) {
        var duct = new Duct(
                "d",
                "",
                BoreShape.ROUND,
                insideMm,
                "",
                "",
                false,
                Contents.UNKNOWN,
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                Set.of());
        var vault = new Vault(0, "v", 0, 0, List.of(), OptionalDouble.empty(), "");
        return new Span("s", duct, List.of("r"), vault, vault, line, line, line.planeLength(), 1, 0, 0, "");
    }
}
