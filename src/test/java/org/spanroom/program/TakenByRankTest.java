package org.spanroom.program;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanroom.program.NetworkBuilder.duct;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.program.EligibleSpan;

/** Spans of 1,000 each, of which 50 (half an hour at 100) is the set-up at each of their two vaults. */
class TakenByRankTest {
    private static final double MONEY = 1_000;

    private static ProgramCase chainOfThree() {
        return new ProgramCase(new NetworkBuilder(4)
                .section(0, 1, 50, duct("third", 0, 4, MONEY))
                .section(1, 2, 50, duct("first", 0, 2, MONEY))
                .section(2, 3, 50, duct("second", 0, 3, MONEY))
                .build());
    }

    private static List<EligibleSpan> ranked(ProgramCase of) {
        return of.rank("first", 1).rank("second", 5).rank("third", 7).inputs().eligibleSpans();
    }

    /** The second one costs 950 after the first, whose vault it shares; the third 950 too. */
    @ParameterizedTest
    @CsvSource({"999, 0", "1000, 2", "1949, 2", "1950, 5", "2899, 5", "2900, 9", "100000, 9"})
    void spansComeByRankAndShareTheSetUpOfAVault(double money, int positions) {
        assertThat(TakenByRank.positions(ranked(chainOfThree()), money)).isEqualTo(positions);
    }

    @Test
    void theFirstSpanThatTheMoneyDoesNotCoverIsTheEnd() {
        assertThat(TakenByRank.positions(
                        ranked(new ProgramCase(new NetworkBuilder(6)
                                .section(0, 1, 50, duct("first", 0, 2, MONEY))
                                .section(2, 3, 50, duct("second", 0, 3, 5 * MONEY))
                                .section(4, 5, 50, duct("third", 0, 4, MONEY))
                                .build())),
                        3 * MONEY))
                .isEqualTo(2);
    }

    @Test
    void workByNightSharesNoSetUpWithWorkByDay() {
        assertThat(TakenByRank.positions(ranked(chainOfThree().nights("first")), 1_999))
                .isEqualTo(2);
        assertThat(TakenByRank.positions(ranked(chainOfThree().nights("first")), 2_000))
                .isEqualTo(5);
    }

    @Test
    void spansWithoutARankAreLeftOut() {
        assertThat(TakenByRank.positions(
                        chainOfThree().rank("second", 1).inputs().eligibleSpans(), 100_000))
                .isEqualTo(3);
    }
}
