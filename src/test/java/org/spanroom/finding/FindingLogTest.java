package org.spanroom.finding;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
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
        assertThat(log.countToFix()).isEqualTo(42);
        assertThat(log.all()).hasSize(3);
    }

    /** Whatever order they come in, the same ones are listed; the rest is counted, and lengths are never left out. */
    @Test
    void ofACodeOnlySoManyAreListedAndAllCount() {
        List<Finding> many = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            many.add(Finding.of(FindingCode.PACKING_FILE_UNUSABLE, "spans", "S" + i, "jam"));
            many.add(Finding.of(FindingCode.END_WITHOUT_VAULT, "a.shp", "R" + i, "end")
                    .withLengthM(1 + i));
        }
        many.add(
                Finding.of(FindingCode.PACKING_FILE_UNUSABLE, "zzz", "S", "jam").standingFor(5));
        List<Finding> expected = new ArrayList<>(many.stream()
                .filter(finding -> finding.lengthM() > 0 || finding.featureId().matches("S[0-2]"))
                .toList());
        expected.add(Finding.of(FindingCode.PACKING_FILE_UNUSABLE, "spans", "", "7 more of this kind, not listed")
                .standingFor(7));
        expected.add(Finding.of(FindingCode.PACKING_FILE_UNUSABLE, "zzz", "", "5 more of this kind, not listed")
                .standingFor(5));

        for (int seed = 0; seed < 20; seed++) {
            Collections.shuffle(many, new Random(seed));
            var log = new FindingLog(3);
            many.forEach(log::add);

            assertThat(log.all())
                    .containsExactlyInAnyOrderElementsOf(expected)
                    .isSortedAccordingTo(Comparator.comparing(Finding::code)
                            .thenComparing(Finding::source)
                            .thenComparing(Finding::featureId));
            assertThat(log.countByCode())
                    .containsEntry(FindingCode.PACKING_FILE_UNUSABLE, 15L)
                    .containsEntry(FindingCode.END_WITHOUT_VAULT, 10L);
        }
    }

    @Test
    void aFindingStandsForOneAtLeast() {
        assertThat(ONE.count()).isOne();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ONE.standingFor(0))
                .withMessageContaining("count");
    }
}
