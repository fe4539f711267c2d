package org.spanroom.model.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IdKeyTest {
    @ParameterizedTest
    @CsvSource({"00012,12", "1012.0,1012", " MH-7 ,mh-7", "0,0", "000,0", "MH007,mh007", "1.50,1.50", "'',''", "0.0,0"})
    void spellingsOfOneIdHaveOneKey(String id, String key) {
        assertThat(IdKey.of(id)).isEqualTo(key);
    }

    @Test
    void guidsWithAndWithoutBracesInEitherCaseAreOne() {
        var random = new Random(1);
        for (int k = 0; k < 200; k++) {
            String guid = new UUID(random.nextLong(), random.nextLong()).toString();
            assertThat(IdKey.of("{" + guid.toUpperCase(java.util.Locale.ROOT) + "}"))
                    .isEqualTo(guid)
                    .isEqualTo(IdKey.of(guid));
        }
    }

    @Test
    void whatIsNoGuidKeepsItsBraces() {
        assertThat(IdKey.of("{12}")).isEqualTo("{12}");
    }
}
