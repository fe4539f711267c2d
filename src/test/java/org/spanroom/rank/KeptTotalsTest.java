package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.model.rank.KeptTotals;

class KeptTotalsTest {
    /** A field with a value of its own for each span, such as an object number, takes no more room than one of a thousand streets. */
    @ParameterizedTest
    @ValueSource(ints = {1, 7, 512, 999, 1000, 1001, 5000})
    void anyNumberOfValuesAddsUpAndTheFirstThousandHaveSumsOfTheirOwn(int values) {
        KeptTotals totals = KeptTotals.NONE;
        for (int value = 0; value < values; value += 100) {
            Map<String, KeptTotals.Sum> chunk = new LinkedHashMap<>();
            for (int i = value; i < Math.min(values, value + 100); i++) {
                chunk.put("v" + i, new KeptTotals.Sum(1, i, 0.5));
            }
            totals = totals.plus(new KeptTotals(chunk, KeptTotals.Sum.NONE));
        }

        KeptTotals.Sum all = totals.byValue().values().stream().reduce(totals.others(), KeptTotals.Sum::plus);

        assertThat(totals.byValue()).hasSize(Math.min(values, KeptTotals.MOST)).containsKey("v0");
        assertThat(all.ranked()).isEqualTo(values);
        assertThat(all.positionsGained()).isEqualTo((long) values * (values - 1) / 2);
        assertThat(all.lengthM()).isCloseTo(0.5 * values, within(1e-9));
        assertThat(totals.mostGainedFirst().get(0).getKey()).isEqualTo("v" + (Math.min(values, KeptTotals.MOST) - 1));
    }
}
