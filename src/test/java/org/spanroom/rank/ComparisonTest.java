package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.spanroom.model.rank.SpanMove;
import org.spanroom.model.rank.SpanMove.Cause;
import org.spanroom.model.rank.Standing;

/** Two small runs, each difference once. */
class ComparisonTest {
    @Test
    void everyCauseIsToldApartAndTheUnmovedAreLeftOut() {
        var comparison = new Comparison();
        comparison.before("same", ranked(1, 90, Map.of("room", 90.0)));
        comparison.before("passed", ranked(2, 80, Map.of("room", 80.0)));
        comparison.before("risen", ranked(3, 70, Map.of("room", 60.0, "ease", 10.0)));
        comparison.before("lost", ranked(4, 60, Map.of("room", 60.0)));
        comparison.before("gone", ranked(5, 50, Map.of("room", 50.0)));
        comparison.before("barred", barred("duct_blocked"));
        comparison.before("freed", barred("contents_unknown"));
        comparison.after("same", ranked(1, 90, Map.of("room", 90.0)));
        comparison.after("risen", ranked(2, 85, Map.of("room", 70.0, "ease", 15.0)));
        comparison.after("passed", ranked(3, 80, Map.of("room", 80.0)));
        comparison.after("fresh", ranked(4, 75, Map.of("room", 75.0)));
        comparison.after("freed", ranked(5, 40, Map.of("room", 40.0)));
        comparison.after("lost", barred("duct_collapsed"));
        comparison.after("barred", barred("duct_collapsed"));

        List<SpanMove> moves = comparison.moves();

        assertThat(moves)
                .extracting(SpanMove::spanId, SpanMove::cause)
                .containsExactly(
                        tuple("fresh", Cause.NEW),
                        tuple("gone", Cause.GONE),
                        tuple("lost", Cause.EXCLUDED),
                        tuple("freed", Cause.ADMITTED),
                        tuple("risen", Cause.SCORE),
                        tuple("passed", Cause.OTHERS),
                        tuple("barred", Cause.REASON));
    }

    /** An excluded span whose score changed is not one that is excluded for a different reason. */
    @Test
    void aScoreOfAnExcludedSpanIsNoReason() {
        var comparison = new Comparison();
        comparison.before("barred", new Standing(OptionalInt.empty(), 60, "duct_blocked", new TreeMap<>()));
        comparison.after("barred", new Standing(OptionalInt.empty(), 50, "duct_blocked", new TreeMap<>()));

        assertThat(comparison.moves()).extracting(SpanMove::cause).containsExactly(Cause.SCORE);
    }

    @Test
    void theLargestPartOfAChangeStandsFirst() {
        var comparison = new Comparison();
        comparison.before("s", ranked(9, 70, Map.of("room", 60.0, "ease", 10.0)));
        comparison.after("s", ranked(2, 73, Map.of("room", 40.0, "ease", 15.0, "saving", 18.0)));

        SpanMove move = comparison.moves().get(0);

        assertThat(move.partChanges()).containsExactly("room -20.00", "saving +18.00", "ease +5.00");
        assertThat(move.rankGain()).hasValue(7);
    }

    @Test
    void ofOneCauseTheFarthestMoveStandsFirstThenTheBetterRank() {
        var comparison = new Comparison();
        comparison.before("one down", ranked(2, 80, Map.of()));
        comparison.before("four up", ranked(9, 50, Map.of()));
        comparison.before("four down", ranked(4, 70, Map.of()));
        comparison.after("four up", ranked(5, 50, Map.of()));
        comparison.after("one down", ranked(3, 80, Map.of()));
        comparison.after("four down", ranked(8, 70, Map.of()));

        assertThat(comparison.moves()).extracting(SpanMove::spanId).containsExactly("four down", "four up", "one down");
    }

    private static Standing ranked(int rank, double points, Map<String, Double> parts) {
        return new Standing(OptionalInt.of(rank), points, "", new TreeMap<>(parts));
    }

    private static Standing barred(String reason) {
        return new Standing(OptionalInt.empty(), 0, reason, new TreeMap<>());
    }
}
