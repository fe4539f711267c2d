package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Unit;

/** Recorded lengths in another unit than the config says. The sketched routes are 100 m long. */
class LengthUnitsTest {
    private static List<Finding> doubts(String recordedM, Unit unit, int threads) {
        var sketch = new StringBuilder("vault A 0,0\nvault B 100,0\n");
        int number = 0;
        for (String length : recordedM.split(" ", -1)) {
            number++;
            sketch.append("route r%d d%d 0,0 100,0%s\n"
                    .formatted(number, number, length.equals("none") ? "" : " length=" + length));
        }
        Sketch drawn = Sketch.of(sketch.toString());
        var log = new FindingLog();
        new SpanCutter(
                        ShippedConfig.get().network(),
                        threads,
                        route -> "ducts",
                        vault -> "vaults",
                        Optional.of(new RecordedField("LEN", unit)))
                .cut(drawn.routes, drawn.vaults, log);
        return log.all().stream()
                .filter(finding -> finding.code() == FindingCode.UNIT_DOUBTFUL)
                .toList();
    }

    /** 1 ft = 0.3048 m. Lengths are those that the configured unit gives, in meters. */
    @ParameterizedTest(name = "{0} of {1}")
    @CsvSource(
            nullValues = "-",
            delimiter = '|',
            value = {
                "328 328 330 325 336 100 | M | 5 of 6 recorded lengths are 3.281 times the drawn ones, as if they were in"
                        + " feet (ft), not in meters (m)",
                "30.5 30.5 30.5 30.5 30.5 none none none none none none | FT | 5 of 5 recorded lengths are 0.3048 times the"
                        + " drawn ones, as if they were in meters (m), not in feet (ft)",
                "30.5 30.5 30.5 30.5 30.5 | FT_US | 5 of 5 recorded lengths are 0.3048 times the drawn ones, as if they were in"
                        + " meters (m), not in US survey feet (ft_us)",
                "0.1 0.1 0.1 0.1 0.1 | M | 5 of 5 recorded lengths are 0.001 times the drawn ones, as if they were in"
                        + " kilometers (km), not in meters (m)",
                // too few
                "328 328 328 328 | M | -",
                // mixed units
                "328 328 328 328 328 100 100 100 100 100 100 | M | -",
                // right, or wrong by no factor of a unit
                "100 100 101 99 102 100 | FT | -",
                "200 200 200 200 200 200 | M | -",
                // more than 3 % from the factor
                "340 340 340 340 340 340 | M | -",
            })
    void mostRecordedLengthsDecide(String recordedM, Unit unit, String expected) {
        List<Finding> one = doubts(recordedM, unit, 1);

        assertThat(doubts(recordedM, unit, 3)).isEqualTo(one);
        if (expected == null) {
            assertThat(one).isEmpty();
        } else {
            assertThat(one)
                    .containsExactly(Finding.of(
                                    FindingCode.UNIT_DOUBTFUL,
                                    "ducts",
                                    "",
                                    "check the unit of LEN in the config: " + expected)
                            .inField("LEN"));
        }
    }
}
