package org.spanroom.output.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.UnitSystem;

/** The level by hand: 1.5 times the planned force, between a tenth of STOP and STOP. Common practice, no source. */
class PauseLevelTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "600  | 4000 | 900 N",
                "20   | 4000 | 400 N",
                "0    | 4000 | 400 N",
                "2500 | 4000 | 3,750 N",
                "2600 | 4000 | at STOP",
                "3999 | 4000 | at STOP",
                "4000 | 4000 | none",
                "1e9  | 4000 | none"
            })
    void itLiesBetweenThePlannedForceAndStop(double plannedN, double stopN, String words) {
        var level = new PauseLevel(
                new SheetUnits(UnitSystem.METRIC), ShippedConfig.get().pull().pause());

        assertEquals(words, level.words(plannedN, stopN));
    }
}
