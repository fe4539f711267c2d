package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;

class FeatureRelayTest {
    @ParameterizedTest(name = "{0} features on {1} threads")
    @CsvSource({"0, 2", "1, 2", "256, 2", "257, 2", "20000, 2", "1000, 1"})
    @Timeout(60)
    void featuresArriveInFileOrder(long count, int threads) {
        var arrived = new ArrayList<Long>();

        long met = FeatureRelay.read(
                new Counting(count, Long.MAX_VALUE), List.of(), feature -> arrived.add(feature.number()), threads);

        assertThat(met).isEqualTo(count);
        assertThat(arrived).isEqualTo(LongStream.rangeClosed(1, count).boxed().toList());
    }

    @Test
    @Timeout(60)
    void whatIsReadBeforeTheFileBreaksIsTaken() {
        var arrived = new ArrayList<Long>();

        assertThatThrownBy(() -> FeatureRelay.read(
                        new Counting(20_000, 10_000), List.of(), feature -> arrived.add(feature.number()), 2))
                .isInstanceOf(InputException.class);
        assertThat(arrived).hasSizeBetween(10_000 - 256, 10_000);
    }

    @Test
    @Timeout(60)
    void failureOfTheTakerEndsTheReading() {
        Consumer<SourceFeature> failing = feature -> {
            if (feature.number() == 5_000) {
                throw new ArithmeticException("at " + feature.number());
            }
        };

        assertThatThrownBy(() -> FeatureRelay.read(new Counting(1_000_000, Long.MAX_VALUE), List.of(), failing, 2))
                .isInstanceOf(ArithmeticException.class);
    }

    /** A layer of this many features that breaks after some of them. */
    private record Counting(long count, long breaksAfter) implements LayerSource {
        @Override
        public LayerHeader header() {
            return new LayerHeader(Path.of("counting"), "counting", List.of(), Optional.empty(), count);
        }

        @Override
        public long read(List<String> wantedFields, Consumer<SourceFeature> sink) {
            var nothing = new SourceGeometry(SourceGeometry.Kind.NONE, List.of(), false, List.of());
            for (long number = 1; number <= count; number++) {
                if (number > breaksAfter) {
                    throw new InputException(Path.of("counting"), "it breaks", "Fix it.");
                }
                sink.accept(new SourceFeature(number, "", "null", nothing, List.of()));
            }
            return count;
        }

        @Override
        public void close() {
            // nothing is open
        }
    }
}
