package org.spanroom.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class FillerTest {
    /**
     * Counts from the packings of Graham, Lubachevsky, Nurmela and Ostergard (circle) and Birgin and Gentil (square) against
     * the inside diameters of NEC Chapter 9 Table 4, NEMA TC 10 and Hawkins Electrical Guide; capped at 4.
     */
    @ParameterizedTest(name = "{0} {1} in takes {3} of {2} in")
    @CsvSource({
        "round, 2.047, 1.315, 1", "round, 2.047, 1.900, 1", "round, 3.042, 1.315, 3", "round, 3.042, 1.660, 1",
        "round, 3.521, 1.315, 4", "round, 3.521, 1.660, 2", "round, 3.521, 1.900, 1", "round, 3.998, 1.315, 4",
        "round, 3.998, 1.660, 3", "round, 3.998, 1.900, 2", "round, 3.786, 1.660, 3", "round, 3.786, 1.900, 1",
        "round, 4.289, 1.660, 4", "round, 4.289, 1.900, 3", "round, 4.050, 1.660, 4", "round, 4.050, 1.900, 2",
        "round, 5.016, 1.900, 4", "round, 3.500, 1.660, 2", "square, 3.500, 1.660, 4", "square, 3.250, 1.660, 2"
    })
    void boreTakesThePublishedNumberOfInnerducts(String shape, double insideIn, double outsideIn, int count) {
        assertThat(new Bore(shape, insideIn).roomFor(outsideIn)).isEqualTo(count);
    }

    /** ASTM D3035: minimum wall is outside diameter over SDR, to 0.001 in. */
    @Test
    void innerductWallsFollowFromTheirSdr() {
        assertThat(InnerductSize.ALL)
                .allSatisfy(size -> assertThat(size.wallIn()).isCloseTo(size.outsideIn() / size.sdr(), within(0.0006)));
    }

    @ParameterizedTest
    @EnumSource(BoreType.class)
    void whatIsInventedGoesIn(BoreType type) {
        for (long seed = 0; seed < 500; seed++) {
            var chance = new Chance(seed);
            Bore bore = type.bore(chance);
            Filling filling = new Filler(chance).fill(bore);

            if (filling.rows().isEmpty()) {
                filling.innerduct()
                        .ifPresent(
                                size -> assertThat(filling.innerducts()).isBetween(1, bore.roomFor(size.outsideIn())));
                assertThat(filling.cables()).isLessThanOrEqualTo(Math.max(4, filling.innerducts()));
            }
            assertThat(filling.rows().stream()
                            .filter(row -> !row.kind().equals("sleeve"))
                            .filter(row -> !row.inside().startsWith("I"))
                            .mapToDouble(row -> Math.PI / 4 * row.outsideIn() * row.outsideIn())
                            .sum())
                    .isLessThan(0.8 * bore.areaIn2());
        }
    }

    /**
     * Each kind of contents by itself. Areas in the sense of FillerTest's other check; a loose cable beside equal innerducts is
     * no wider than the gap that Descartes' circle theorem leaves between them and the smallest bore around them: for
     * curvatures 1, 1 and that of the bore k, the gap's is 2 - k + 2 sqrt(1 - 2 k).
     */
    @ParameterizedTest
    @EnumSource(BoreType.class)
    void crowdedDuctsTakeTheirLooseCables(BoreType type) {
        for (long seed = 0; seed < 300; seed++) {
            var chance = new Chance(seed);
            Bore bore = type.bore(chance);
            new CrowdedFiller(chance).find(bore, "live").ifPresent(filling -> {
                int count = filling.innerducts();
                double outsideIn = filling.innerduct().orElseThrow().outsideIn();
                // Of the bore, with the innerducts' radius as 1: 2, 1 + 2/sqrt(3), 1 + sqrt(2).
                double k =
                        1 / List.of(2.0, 1 + 2 / Math.sqrt(3), 1 + Math.sqrt(2)).get(count - 2);
                double gapIn = outsideIn / (2 - k + 2 * Math.sqrt(Math.max(0, 1 - 2 * k)));
                List<ListedItem> loose = filling.rows().stream()
                        .filter(row ->
                                row.kind().equals("cable") && row.inside().isEmpty())
                        .toList();
                assertThat(count).isBetween(2, bore.roomFor(outsideIn));
                assertThat(loose)
                        .hasSizeBetween(1, bore.isSquare() ? 1 : 4)
                        .allSatisfy(cable -> assertThat(cable.outsideIn()).isLessThan(gapIn));
            });
        }
    }

    @ParameterizedTest
    @EnumSource(BoreType.class)
    void sleevesAreNoMoreThanADuctOfTheSizeTakes(BoreType type) {
        for (long seed = 0; seed < 300; seed++) {
            var chance = new Chance(seed);
            Bore bore = type.bore(chance);
            Filling filling = new SleeveFiller(chance).fill(bore, "live");
            List<ListedItem> sleeves = filling.rows().stream()
                    .filter(row -> row.kind().equals("sleeve"))
                    .toList();
            double filledIn2 = filling.rows().stream()
                    .filter(row -> !row.kind().equals("sleeve"))
                    .filter(row -> !row.inside().startsWith("I"))
                    .mapToDouble(row -> Math.PI / 4 * row.outsideIn() * row.outsideIn())
                    .sum();

            // One in a 2-in duct, two in a 3-in, three in a 4-in: common practice, no source.
            assertThat(sleeves).hasSizeBetween(1, bore.insideIn() < 2.8 ? 1 : bore.insideIn() < 3.6 ? 2 : 3);
            assertThat(filledIn2).isLessThan(0.5 * bore.areaIn2());
        }
    }

    /** The bounds of a uniform draw, and its mean within five standard errors: 5 * 0.2887 / sqrt(10000). */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void sharesAreSpreadEvenly(long seed) {
        var chance = new Chance(seed);
        double sum = 0;
        for (int i = 0; i < 10_000; i++) {
            double share = chance.share();
            assertThat(share).isBetween(0.0, Math.nextDown(1.0));
            sum += share;
        }
        assertThat(sum / 10_000).isCloseTo(0.5, within(0.0145));
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 10);
    }
}
