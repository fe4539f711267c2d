package org.spanroom.model.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class PackingTest {
    private static final Packing.Evidence ROOMY = new Packing.Evidence(3, "", 0, Optional.empty());

    @Test
    void evidenceIsCalculatedOnceAndOnlyWhenItIsAskedFor() {
        var calculated = new AtomicInteger();
        Packing packing = Packing.of(PackingOutcome.FITS, () -> {
            calculated.incrementAndGet();
            return ROOMY;
        });

        assertThat(packing.outcome()).isEqualTo(PackingOutcome.FITS);
        assertThat(calculated).hasValue(0);
        assertThat(packing.marginMm()).isEqualTo(3);
        assertThat(packing.evidence()).isSameAs(ROOMY);
        assertThat(calculated).hasValue(1);
    }

    @Test
    void packingsAreEqualWhereTheirOutcomesAndEvidenceAre() {
        Packing later = Packing.of(PackingOutcome.FITS, () -> ROOMY);
        var known = new Packing(PackingOutcome.FITS, 3, "", 0, Optional.empty());

        assertThat(later).isEqualTo(known).hasSameHashCodeAs(known);
        assertThat(later).isNotEqualTo(new Packing(PackingOutcome.FITS, 2, "", 0, Optional.empty()));
        assertThat(later).isNotEqualTo(new Packing(PackingOutcome.UNDECIDED, 3, "", 0, Optional.empty()));
    }

    @Test
    void aMarginIsANumberAndAGapIsNotLessThanNone() {
        assertThatThrownBy(() -> new Packing.Evidence(Double.NaN, "", 0, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Packing.Evidence(0, "", -1, Optional.empty()))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
