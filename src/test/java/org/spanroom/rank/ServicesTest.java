package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Service;

class ServicesTest {
    @Test
    void aCableCountsInAnInnerductAndBesideIt() {
        var loose = new Contents(
                HandMade.holding(Service.LIVE).innerducts(), List.of(new Cable("c", 12, 0.2, Service.DEAD)), true);

        assertThat(Services.has(loose, Service.LIVE)).isTrue();
        assertThat(Services.has(loose, Service.DEAD)).isTrue();
        assertThat(Services.has(loose, Service.UNKNOWN)).isFalse();
    }
}
