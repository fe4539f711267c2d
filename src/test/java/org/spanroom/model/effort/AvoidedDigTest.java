package org.spanroom.model.effort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** By hand: ducts add up, what is dug once for a section counts once. */
class AvoidedDigTest {
    @Test
    void oneTrenchOfASectionIsDugAndSurfacedOnce() {
        var dig = new AvoidedDig();
        dig.add("S1", 90, 0, 500, 300);
        dig.add("S1", 100, 5, 540, 330);
        dig.add("S1", 95, 0, 200, 0);
        dig.add("S2", 0, 40, 80, 0);

        assertThat(dig.trenchM()).isCloseTo(100, within(1e-9));
        assertThat(dig.boreM()).isCloseTo(5 + 40, within(1e-9));
        assertThat(dig.co2eKg()).isCloseTo(200 + 210 + 200 + 80 + 330, within(1e-9));
    }

    @Test
    void nothingAvoidsNothing() {
        assertThat(new AvoidedDig().co2eKg()).isZero();
    }
}
