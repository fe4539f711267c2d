package org.spanroom.bend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.spanroom.model.Bend;
import org.spanroom.model.BendSettings;
import org.spanroom.model.Bends;
import org.spanroom.model.Line;

/** Shapes whose bends are known by construction. */
class BendFinderTest {
    private static final double FOUR_INCH_MM = 102.26;

    private final BendFinder finder = new BendFinder(BendSettings.defaults());

    @Test
    void aRightAngleAtOneVertexIsOneAssumedSweep() {
        Bends bends = find(0, 0, 100, 0, 100, 80);

        assertThat(bends.list()).hasSize(1);
        Bend bend = bends.list().get(0);
        assertThat(bend.deflection().deg()).isCloseTo(90, within(1e-6));
        assertThat(bend.turn()).isEqualTo(Bend.Turn.LEFT);
        assertThat(bend.middleM()).isCloseTo(100, within(1e-6));
        assertThat(bend.radiusM()).isCloseTo(0.9144, within(1e-9));
        assertThat(bend.arcLengthM()).isCloseTo(0.9144 * Math.PI / 2, within(1e-9));
        assertThat(bend.radiusAssumed()).isTrue();
    }

    private Bends find(double... xy) {
        return finder.find(Line.ofXy(xy), FOUR_INCH_MM);
    }
}
