package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.RankTotals;
import org.spanroom.model.rank.Ranked;
import org.spanroom.model.rank.Score;
import org.spanroom.model.rank.Verdict;

class SpanTallyTest {
    private static final Caution DOUBTFUL = new Caution(Caution.PULL_DOUBTFUL, "only when lubricated");
    private static final Caution OTHER = new Caution("water", "wet");
    private static final Exclusion WHY = new Exclusion(3, "why", "because");

    private record One(OptionalInt rank, Verdict verdict) implements Ranked {
        @Override
        public String spanId() {
            return "s";
        }

        @Override
        public Score score() {
            return new Score(List.of(), new double[0], new double[0]);
        }
    }

    @Test
    void rankedSpansThatComeOutOnlyWhenLubricatedAreCountedApart() {
        var tally = new SpanTally();
        tally.add(ranked(DOUBTFUL, OTHER), 3, 100, 101, List.of());
        tally.add(ranked(OTHER), 2, 10, 11, List.of());
        tally.add(ranked(DOUBTFUL), 1, 1, 1, List.of());
        // An excluded span is no ranked one, whatever else is said of it.
        tally.add(
                new One(OptionalInt.empty(), new Verdict(List.of(WHY), List.of(), List.of(DOUBTFUL))),
                9,
                9,
                9,
                List.of());

        RankTotals totals = tally.take();

        assertThat(totals.ranked()).isEqualTo(3);
        assertThat(totals.doubtful()).isEqualTo(2);
        assertThat(totals.excluded()).containsEntry(WHY, 1L);
        assertThat(totals.plus(totals).doubtful()).isEqualTo(4);
        assertThat(tally.take()).isEqualTo(RankTotals.NONE);
    }

    private static One ranked(Caution... cautions) {
        return new One(OptionalInt.of(1), new Verdict(List.of(), List.of(), List.of(cautions)));
    }
}
