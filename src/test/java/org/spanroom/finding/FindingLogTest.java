package org.spanroom.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

class FindingLogTest {
    private static final Finding ONE = Finding.of(FindingCode.UNREADABLE_FEATURE, "a.shp", "7", "damaged");

    @Test
    void aFindingThatStandsForManyCountsAsMany() {
        var log = new FindingLog();
        log.add(ONE);
        log.add(Finding.of(FindingCode.UNREADABLE_FEATURE, "a.shp", "", "41 further ones")
                .standingFor(41));
        log.add(Finding.of(FindingCode.MISSING_VALUE, "a.shp", "", "all 9 features")
                .standingFor(9)
                .inField("owner")
                .at(1, 2)
                .withLengthM(3));

        assertThat(log.countByCode())
                .containsEntry(FindingCode.UNREADABLE_FEATURE, 42L)
                .containsEntry(FindingCode.MISSING_VALUE, 9L);
        assertThat(log.countToMend()).isEqualTo(42);
        assertThat(log.all()).hasSize(3);
    }

    @Test
    void aFindingStandsForOneAtLeast() {
        assertThat(ONE.count()).isOne();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ONE.standingFor(0))
                .withMessageContaining("count");
    }
}
