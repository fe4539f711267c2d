package org.spanroom.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.spanroom.model.BendSettings;

class BendAccuracyTest {
    @Test
    void theCorpusIsReadAsWellAsPromised() {
        BendAccuracy accuracy = BendAccuracy.measure(1, 3000, BendSettings.defaults());

        assertThat(accuracy.totalWithin2Ratio()).isGreaterThan(0.95);
    }
}
