package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.network.VaultKind;

class VaultKindTest {
    private static final VaultKind SMALL = new VaultKind(false, false);
    private static final VaultKind LARGE = new VaultKind(true, true);

    @Test
    void aListedKindIsFoundWhateverItsCaseAndSpaces() {
        Map<String, VaultKind> kinds = Map.of("pull box", SMALL);

        assertThat(VaultKind.of(kinds, " Pull Box ")).isEqualTo(SMALL);
    }

    @Test
    void anUnlistedOrUnrecordedKindIsEnteredAndTakesTheMachine() {
        Map<String, VaultKind> kinds = Map.of("pull box", SMALL);

        assertThat(VaultKind.of(kinds, "maintenance hole")).isEqualTo(LARGE);
        assertThat(VaultKind.of(kinds, "")).isEqualTo(LARGE);
    }

    /** Common practice, no source: a handhole is worked on from the surface. */
    @Test
    void crewsDoNotEnterTheSmallKindsThatAreShipped() {
        assertThat(ShippedConfig.get().vaultKinds().keySet()).containsExactly("handhole", "pull box");
        assertThat(VaultKind.of(ShippedConfig.get().vaultKinds(), "Handhole")).isEqualTo(SMALL);
    }
}
