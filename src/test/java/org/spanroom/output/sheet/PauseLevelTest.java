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
                "600  | 4000 | pull 900 N (202 lbf)",
                "20   | 4000 | pull 400 N (90 lbf)",
                "0    | 4000 | pull 400 N (90 lbf)",
                "2500 | 4000 | pull 3,750 N (843 lbf)",
                "2600 | 4000 | pull: at STOP, which is near the calculated force",
                "3999 | 4000 | pull: at STOP, which is near the calculated force",
                "4000 | 4000 | pull: none; the calculated force is not below STOP, so prove first that it can be done",
                "1e9  | 4000 | pull: none; the calculated force is not below STOP, so prove first that it can be done"
            })
    void itLiesBetweenThePlannedForceAndStop(double plannedN, double stopN, String words) {
        var level = new PauseLevel(
                new SheetUnits(UnitSystem.METRIC), ShippedConfig.get().pull().pause());

        assertEquals(words, level.words("pull", plannedN, stopN));
    }
}
