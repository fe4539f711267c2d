package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class UnitSystemTest {
    /**
     * How much of the metric unit one US unit is, to the seven digits of NIST SP 811 (2008), Appendix B.8, from memory; square inch,
     * pound-force and pound per cubic foot also as a manual of the US Navy's facilities command has them in its Appendix B (SI conversion
     * factors: 645.16, 4.448 22, 16.0185).
     */
    @ParameterizedTest
    @CsvSource({
        "m,     ft,     0.3048",
        "mm,    in,     25.4",
        "km,    mi,     1.609344",
        "mm2,   in2,    645.16",
        "m3,    ft3,    0.02831685",
        "l,     gal,    3.785412",
        "kg,    lb,     0.4535924",
        "N,     lbf,    4.448222",
        "N/m,   lbf/ft, 14.59390",
        "kg/m,  lb/ft,  1.488164",
        "kg/m3, lb/ft3, 16.01846",
        "MPa,   psi,    0.006894757",
        "rad/m, rad/ft, 3.280840"
    })
    void oneUsUnitIsThePublishedNumberOfMetricOnes(String metric, String symbol, double published) {
        UsUnit unit = UsUnit.findFor(metric).orElseThrow();

        assertThat(unit.symbol()).isEqualTo(symbol);
        assertThat(unit.of(published)).isCloseTo(1, within(5e-7));
        assertThat(unit.perUnit(1)).isCloseTo(published, within(5e-7 * published));
    }

    /** No unit is left out of the table above, and none stands twice for a metric one. */
    @Test
    void everyMetricUnitHasOneUsUnit() {
        assertThat(Arrays.stream(UsUnit.values()).map(UsUnit::metric))
                .doesNotHaveDuplicates()
                .containsExactlyInAnyOrder(
                        "m", "mm", "km", "mm2", "m3", "l", "kg", "N", "N/m", "kg/m", "kg/m3", "MPa", "rad/m");
        assertThat(Arrays.stream(UsUnit.values()).map(UsUnit::word)).doesNotHaveDuplicates();
    }

    /** A step of the last digit is neither far coarser nor far finer than that of the metric value. */
    @ParameterizedTest
    @EnumSource(UsUnit.class)
    void aTwinIsAboutAsFineAsTheMetricValue(UsUnit unit) {
        double metricStep = Math.pow(10, -3);
        double step = unit.perUnit(Math.pow(10, -unit.decimals(3)));

        assertThat(step / metricStep).isBetween(0.2, 7.0);
        assertThat(unit.decimals(0)).isNotNegative();
    }

    @Test
    void metricLeavesEverythingAsItIs() {
        var random = new Random(7);
        for (UsUnit unit : UsUnit.values()) {
            double value = random.nextGaussian() * 1e4;
            assertThat(UnitSystem.METRIC.value(value, unit.metric())).isEqualTo(value);
            assertThat(UnitSystem.METRIC.perUnit(value, unit.metric())).isEqualTo(value);
            assertThat(UnitSystem.METRIC.unit(unit.metric())).isEqualTo(unit.metric());
            assertThat(UnitSystem.METRIC.decimals(2, unit.metric())).isEqualTo(2);
        }
        assertThat(UnitSystem.METRIC.sentence("3 innerducts do not go into 96.6 mm"))
                .isEqualTo("3 innerducts do not go into 96.6 mm");
    }

    @Test
    void whatBothSystemsShareStays() {
        for (String unit : new String[] {"h", "%", "degrees", "USD", "points", "", "diameters", "times"}) {
            assertThat(UnitSystem.US.unit(unit)).isEqualTo(unit);
            assertThat(UnitSystem.US.value(12.5, unit)).isEqualTo(12.5);
        }
        assertThat(UnitSystem.US.unit("m from A")).isEqualTo("ft from A");
        assertThat(UnitSystem.US.value(0.3048, "m from A")).isEqualTo(1);
        assertThat(UnitSystem.US.value(Double.NaN, "m")).isNaN();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "they do not go into 96.6 mm: at least 0.30 mm short | they do not go into 3.80 in: at least 0.012 in short",
                "a new trench on 12.34 m, until 2027-03-31 | a new trench on 40.49 ft, until 2027-03-31",
                "2,906 N and 14.6 N/m at 1,000 m | 653 lbf and 1.00 lbf/ft at 3,281 ft",
                "3 more, 2 nights, V-3 m4, 12 mains, 5 Nm | 3 more, 2 nights, V-3 m4, 12 mains, 5 Nm",
                "1,000 kg/m3 in 1.000 m3 and 3 l | 62.4 lb/ft3 in 35.31 ft3 and 1 gal"
            })
    void quantitiesOfASentenceAreConverted(String metric, String us) {
        assertThat(UnitSystem.US.sentence(metric)).isEqualTo(us);
    }
}
