package org.spanroom.model.effort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;

class RatesTest {
    private final Rates rates = Rates.of(ShippedConfig.get().rates());
    private final RateRows standard = rates.rows(Set.of(), "");

    @Test
    void everyShippedRateHasARangeRoundItsValueASourceAndADate() {
        assertThat(ShippedConfig.get().rates().standard()).hasSize(RateKey.values().length);
        assertThat(ShippedConfig.get().rates().standard().values()).allSatisfy(rate -> {
            assertThat(rate.low()).isLessThanOrEqualTo(rate.value());
            assertThat(rate.high()).isGreaterThanOrEqualTo(rate.value());
            assertThat(rate.source()).isNotBlank();
        });
    }

    @ParameterizedTest
    @CsvSource({"2, 3, 4", "5, 3, 4", "2, 3, 1"})
    void aValueOutsideOfItsRangeIsRefused(double value, double low, double high) {
        assertThatThrownBy(() -> new Rate(value, low, high, "x", "2026")).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @CsvSource({"''", "26", "2026-5", "yesterday"})
    void aDateIsAYearAMonthOrADay(String date) {
        assertThatThrownBy(() -> new Rate(1, 1, 1, "x", date)).hasMessageContaining("date");
    }

    @Test
    void whatIsDividedByCannotBeNothing() {
        assertThatThrownBy(() -> new RateOverride("x", RateKey.BAG_KG, 1, 0, 2, "x", "2026"))
                .hasMessageContaining("bag_kg");
    }

    /**
     * From 0 over 1 to 4, by hand: half of all is below 1, and of either half a quarter in the outer half of its side, so an eighth
     * below 0.5 and an eighth above 2.5.
     */
    @ParameterizedTest
    @CsvSource({"0, 0", "0.125, 0.5", "0.5, 1", "0.875, 2.5", "1, 4"})
    void halfOfAllDrawsLieBelowTheValue(double share, double expected) {
        assertThat(new Rate(1, 0, 4, "x", "2026").quantileInUnit(share)).isCloseTo(expected, within(1e-9));
    }

    @Test
    void aRateWithoutARangeIsAlwaysItself() {
        assertThat(new Rate(3, 3, 3, "x", "2026").quantileInUnit(0.7)).isEqualTo(3);
    }

    /** The centroid of a triangle is a third from its upright side: the mean is (low + 4 value + high) / 6. */
    @Test
    void manyDrawsHaveTheMeanOfTwoTriangles() {
        Rate rate = rates.rate(RateKey.LABOR_MONEY_PER_HOUR, standard);
        double sum = 0;
        for (int i = 0; i < 4000; i++) {
            double drawn = rates.sampled(1, i).inUnit(RateKey.LABOR_MONEY_PER_HOUR, standard);
            assertThat(drawn).isBetween(rate.low(), rate.high());
            sum += drawn;
        }

        assertThat(sum / 4000).isCloseTo((rate.low() + 4 * rate.value() + rate.high()) / 6, within(0.6));
    }

    /** The definition of a Latin hypercube: each 64 samples have one in each 64th of every rate's range, by shares of its draws. */
    @Test
    void each64SamplesFillTheRangeOfEveryRateEvenly() {
        for (int first : new int[] {0, 64, 640}) {
            for (RateKey key : RateKey.values()) {
                Rate rate = rates.rate(key, standard);
                double[] drawn = IntStream.range(first, first + 64)
                        .mapToDouble(sample -> rates.sampled(3, sample).inUnit(key, standard))
                        .sorted()
                        .toArray();
                for (int part = 0; part < 64; part++) {
                    assertThat(drawn[part])
                            .as(key.key())
                            .isBetween(
                                    rate.quantileInUnit(part / 64.0),
                                    rate.quantileInUnit(Math.min(1, (part + 1) / 64.0)));
                }
            }
        }
    }

    /** Independent orders: 64 pairs of ranks correlate by 0.126 in the root mean square, as 1 / sqrt(n - 1) says. */
    @Test
    void ratesAreDrawnInOrdersOfTheirOwn() {
        List<RateKey> keys = Stream.of(RateKey.values())
                .filter(key -> rates.rate(key, standard).low()
                        < rates.rate(key, standard).value())
                .filter(key -> rates.rate(key, standard).value()
                        < rates.rate(key, standard).high())
                .toList();
        double[][] ranks = keys.stream().map(this::ranks).toArray(double[][]::new);
        double squares = 0;
        int pairs = 0;
        for (int i = 0; i < ranks.length; i++) {
            for (int j = 0; j < i; j++) {
                double correlation = 0;
                for (int sample = 0; sample < 64; sample++) {
                    correlation += (ranks[i][sample] - 31.5) * (ranks[j][sample] - 31.5) / (64 * 341.25);
                }
                squares += correlation * correlation;
                pairs++;
            }
        }

        assertThat(pairs).isGreaterThan(500);
        assertThat(Math.sqrt(squares / pairs)).isCloseTo(1 / Math.sqrt(63), within(0.01));
    }

    private double[] ranks(RateKey key) {
        double[] drawn = IntStream.range(0, 64)
                .mapToDouble(sample -> rates.sampled(3, sample).inUnit(key, standard))
                .toArray();
        return Arrays.stream(drawn)
                .map(own -> Arrays.stream(drawn).filter(other -> other < own).count())
                .toArray();
    }

    /** To the last bit: the end of a range may be a minimum that a source states. */
    @Test
    void noDrawOfAnyShippedRateLeavesItsRange() {
        for (int sample = 0; sample < 500; sample++) {
            Rates drawn = rates.sampled(1, sample);
            for (String kind : List.of("", "handhole", "pull box", "vault", "maintenance hole")) {
                RateRows there = rates.rows(Set.of("rail", "heritage"), kind);
                for (RateKey key : RateKey.values()) {
                    Rate rate = rates.rate(key, there);
                    assertThat(drawn.inUnit(key, there)).as(key.key()).isBetween(rate.low(), rate.high());
                }
            }
        }
    }

    @Test
    void theSameSeedAndSampleDrawTheSameAndOthersDoNot() {
        double drawn = rates.sampled(5, 3).inUnit(RateKey.SET_UP_HOURS, standard);

        assertThat(rates.sampled(5, 3).inUnit(RateKey.SET_UP_HOURS, standard)).isEqualTo(drawn);
        assertThat(rates.sampled(5, 4).inUnit(RateKey.SET_UP_HOURS, standard)).isNotEqualTo(drawn);
        assertThat(rates.sampled(6, 3).inUnit(RateKey.SET_UP_HOURS, standard)).isNotEqualTo(drawn);
        assertThat(rates.sampled(5, 3).rate(RateKey.SET_UP_HOURS, standard))
                .isEqualTo(rates.rate(RateKey.SET_UP_HOURS, standard));
    }

    @Test
    void aVaultsKindComesBeforeAZonesAndTheCostlierZoneHolds() {
        RateSettings shipped = ShippedConfig.get().rates();
        var settings = new RateSettings(
                "EUR",
                shipped.surfaces(),
                Surface.VERGE,
                shipped.standard(),
                List.of(override("crypt", RateKey.VAULT_VOLUME_M3, 7)),
                List.of(
                        override("a", RateKey.VAULT_VOLUME_M3, 90),
                        override("b", RateKey.VAULT_VOLUME_M3, 60),
                        override("a", RateKey.DAY_WINDOW_HOURS, 6),
                        override("b", RateKey.DAY_WINDOW_HOURS, 5)));
        Rates own = Rates.of(settings);

        assertThat(own.inUnit(RateKey.VAULT_VOLUME_M3, own.rows(Set.of("a", "b"), "")))
                .isEqualTo(90);
        assertThat(own.inUnit(RateKey.DAY_WINDOW_HOURS, own.rows(Set.of("a", "b"), "")))
                .isEqualTo(5);
        assertThat(own.inUnit(RateKey.VAULT_VOLUME_M3, own.rows(Set.of("a", "b"), "CRYPT ")))
                .isEqualTo(7);
        assertThat(own.inUnit(RateKey.VAULT_VOLUME_M3, own.rows(Set.of("c"), "hut")))
                .isEqualTo(13.6);
        assertThat(settings.surfaceOf("moss")).isEqualTo(Surface.VERGE);
        assertThat(settings.surfaceOf(" Asphalt")).isEqualTo(Surface.ROADWAY);
        assertThat(settings.knowsSurface("moss")).isFalse();
    }

    private static RateOverride override(String kind, RateKey key, double value) {
        return new RateOverride(kind, key, value, value, value, "test", "2026");
    }
}
