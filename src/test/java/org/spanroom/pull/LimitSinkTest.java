package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;

/** Which of many limits is named: of equals the first, and one that is used in full does not fail. */
class LimitSinkTest {
    @Test
    void theTightestIsTheFirstOfEquals() {
        var tightest = new LimitSink.Tightest();

        tightest.offer(LimitKind.CABLE_HOLD, 5, 10, 3);
        tightest.offer(LimitKind.MACHINE_PULL, 20, 20, 7);
        tightest.offer(LimitKind.VAULT_EXIT_RADIUS, 0.5, 0.5, 9);

        assertThat(tightest.use()).isEqualTo(new LimitUse(LimitKind.MACHINE_PULL, 20, 20, 7));
        assertThat(tightest.use().utilizationRatio()).isEqualTo(1);
        assertThat(tightest.failing()).isEmpty();
    }

    @Test
    void eachKindKeepsItsOwnTightestAndOfEqualsTheFirst() {
        var each = new LimitSink.EachKind();

        each.offer(LimitKind.INNERDUCT_SIDEWALL, 5, 10, 30);
        each.offer(LimitKind.CABLE_SIDEWALL, 9, 10, 30);
        each.offer(LimitKind.INNERDUCT_SIDEWALL, 8, 10, 60);
        each.offer(LimitKind.INNERDUCT_SIDEWALL, 8, 10, 90);
        each.offer(LimitKind.INNERDUCT_SIDEWALL, 7, 10, 95);

        assertThat(each.uses())
                .containsExactly(
                        new LimitUse(LimitKind.CABLE_SIDEWALL, 9, 10, 30),
                        new LimitUse(LimitKind.INNERDUCT_SIDEWALL, 8, 10, 60));
    }
}
