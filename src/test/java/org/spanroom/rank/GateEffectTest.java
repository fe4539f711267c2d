package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.model.rank.GateEffect;

class GateEffectTest {
    /** A gate without an effect would make the whole network unusable for programs. */
    @ParameterizedTest
    @EnumSource(Gate.class)
    void everyGateSaysWhatItCloses(Gate gate) {
        assertThat(GateEffect.isGate(gate.key())).isTrue();
        assertThat(GateEffect.of(gate.key())).isNotNull();
    }

    @Test
    void thereAreNoEffectsOfOtherWords() {
        assertThat(Arrays.stream(Gate.values()).map(Gate::key)).doesNotContain("sleeve");
        assertThat(GateEffect.isGate("sleeve")).isFalse();
        assertThatThrownBy(() -> GateEffect.of("sleeve")).isInstanceOf(IllegalArgumentException.class);
    }

    /** The classes are those of the task: an excluded span still gives its positions of today, unless nothing can be placed in it. */
    @ParameterizedTest
    @CsvSource({
        "duct_collapsed, CLOSES_USE",
        "duct_blocked, CLOSES_USE",
        "work_done, CLOSES_RECOVERY",
        "in_work, CLOSES_RECOVERY",
        "contents_unknown, CLOSES_USE",
        "no_outer_duct, CLOSES_USE",
        "owner_consent_missing, CLOSES_USE",
        "no_innerduct, CLOSES_RECOVERY",
        "pull_fails, CLOSES_RECOVERY",
        "splice_inside, CLOSES_RECOVERY",
        "embargo, OPENS_LATER",
        "empty_duct_in_bank, OPENS_LATER"
    })
    void aGateClosesRecoveryNotUse(String key, GateEffect effect) {
        assertThat(GateEffect.of(key)).isEqualTo(effect);
    }
}
