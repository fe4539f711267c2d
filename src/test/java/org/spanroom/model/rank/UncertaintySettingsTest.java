package org.spanroom.model.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;

class UncertaintySettingsTest {
    private static final double LEAST_RATIO = 0.013;

    /** Returns settings in which one chance is given and all others are 0, which is no chance. */
    private static UncertaintySettings with(int chance, double ratio, double leastChangeRatio) {
        double[] chances = new double[5];
        chances[chance] = ratio;
        return new UncertaintySettings(
                true,
                1,
                64,
                20,
                0.06,
                chances[0],
                chances[1],
                chances[2],
                chances[3],
                chances[4],
                leastChangeRatio,
                0.1,
                0.9);
    }

    /** Where one unknown alone decides, the expected change is its chance, or that of the contrary. */
    @ParameterizedTest(name = "chance {0}")
    @ValueSource(ints = {0, 1, 2, 3, 4})
    void noChanceMayEqualTheLeastChange(int chance) {
        for (double ratio : new double[] {LEAST_RATIO, 1 - LEAST_RATIO, LEAST_RATIO + 0.003, LEAST_RATIO - 0.003}) {
            assertThatThrownBy(() -> with(chance, ratio, LEAST_RATIO))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("leastChangeRatio");
        }
        for (double ratio : new double[] {0, LEAST_RATIO + 0.004, LEAST_RATIO - 0.004, 0.5, 1}) {
            assertThatCode(() -> with(chance, ratio, LEAST_RATIO)).doesNotThrowAnyException();
        }
    }

    /** Sizes that are wrong to one side have half of the chance. */
    @Test
    void halfOfTheChanceOfOtherSizesCountsToo() {
        assertThatThrownBy(() -> with(0, 2 * LEAST_RATIO, LEAST_RATIO)).hasMessageContaining("half of otherSizeRatio");
    }

    @Test
    void theShippedLeastChangeIsUnlikeAnyShippedChance() {
        UncertaintySettings shipped = ShippedConfig.get().uncertainty();
        double[] chances = {
            shipped.otherSizeRatio(),
            shipped.otherSizeRatio() / 2,
            shipped.moreCableRatio(),
            shipped.moreCableAssumedRatio(),
            shipped.blockedRatio(),
            shipped.blockedUnknownRatio()
        };

        assertThat(DoubleStream.of(chances).map(chance -> Math.abs(chance - shipped.leastChangeRatio())))
                .allSatisfy(apart -> assertThat(apart).isGreaterThan(0.005));
    }
}
