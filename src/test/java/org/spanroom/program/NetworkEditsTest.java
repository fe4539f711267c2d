package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;

/** What spans that are done, or cannot be done, leave of the offers. */
class NetworkEditsTest {
    private final DuctNetwork network = new NetworkBuilder(2)
            .section(0, 1, 100, NetworkBuilder.duct("A", 1, 9, 500), NetworkBuilder.duct("B", 2, 6, 400))
            .build();

    @Test
    void aSpanThatIsDoneGivesAllItsPositions() {
        DuctOffer duct = NetworkEdits.after(network, Set.of("A"), Set.of())
                .sections()
                .get(0)
                .ducts()
                .get(0);

        assertThat(duct.positionsNow()).isEqualTo(9);
        assertThat(duct.recovery()).isEmpty();
    }

    @Test
    void aSpanThatFailedKeepsThoseOfToday() {
        DuctNetwork after = NetworkEdits.after(network, Set.of(), Set.of("B"));

        assertThat(after.sections().get(0).ducts().get(1).positionsAfter()).isEqualTo(2);
        assertThat(after.sections().get(0).ducts().get(1).recovery()).isEmpty();
        assertThat(after.sections().get(0).ducts().get(0))
                .isEqualTo(network.sections().get(0).ducts().get(0));
    }

    @Test
    void withoutAnyTheNetworkStays() {
        assertThat(NetworkEdits.after(network, Set.of(), Set.of())).isSameAs(network);
    }
}
