package org.spanroom.output.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.Answer;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultNeeds;
import org.spanroom.model.network.VaultUse;

class PurgeMinutesTest {
    private static VaultWords words(double purgeMinutes) {
        VaultNeeds unknown = VaultNeeds.UNKNOWN;
        var needs = new VaultNeeds(
                Answer.YES,
                OptionalDouble.of(purgeMinutes),
                List.of(),
                OptionalDouble.of(8),
                Answer.UNKNOWN,
                List.of(),
                unknown.pumped(),
                unknown.inRoadway());
        var vault = new Vault(0, "V", -30, 40, List.of(), OptionalDouble.empty(), "vault");
        return new VaultWords(new VaultUse(vault, List.of(), 1, List.of(), needs), new SheetUnits(UnitSystem.METRIC));
    }

    /** The shipped minimum, 0.16667 h, is 10 minutes; a real part of a minute goes up. */
    @ParameterizedTest
    @CsvSource({"10.0002, 10", "10, 10", "9.9998, 10", "10.02, 11", "10.5, 11", "5.25, 6"})
    void aMinuteThatIsOnlyRoundingIsNotAdded(double minutes, String shown) {
        assertEquals(shown, words(minutes).plannedPurgeMinutes());
    }
}
