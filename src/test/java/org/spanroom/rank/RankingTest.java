package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.Angle;
import org.spanroom.model.Assessment;
import org.spanroom.model.Bend;
import org.spanroom.model.Bends;
import org.spanroom.model.BoreShape;
import org.spanroom.model.Condition;
import org.spanroom.model.Contents;
import org.spanroom.model.Duct;
import org.spanroom.model.Exclusion;
import org.spanroom.model.Line;
import org.spanroom.model.PullAssessment;
import org.spanroom.model.Room;
import org.spanroom.model.ScoringSettings;
import org.spanroom.model.Span;
import org.spanroom.model.Vault;

class RankingTest {
    private static final ScoringSettings SETTINGS = new ScoringSettings(Map.of(
            "room_gained", criterion(0.6, Map.of(0.0, 0.0, 3.0, 0.5, 6.0, 0.8, 9.0, 1.0)),
            "length", criterion(0.2, Map.of(0.0, 0.0, 60.0, 0.5, 183.0, 1.0)),
            "bends", criterion(0.2, Map.of(0.0, 1.0, 90.0, 0.7, 180.0, 0.3, 360.0, 0.0))));

    private final Ranking ranking = new Ranking(SETTINGS);

    /** Worked by hand on the curve (0, 1), (90, 0.7), (180, 0.3), (360, 0). */
    @ParameterizedTest(name = "{0} degrees are worth {1}")
    @CsvSource({"-5, 1", "0, 1", "45, 0.85", "90, 0.7", "135, 0.5", "180, 0.3", "270, 0.15", "360, 0", "500, 0"})
    void curveIsReadPiecewiseLinearly(double quantity, double value) {
        var curve = new ValueCurve(new TreeMap<>(Map.of(0.0, 1.0, 90.0, 0.7, 180.0, 0.3, 360.0, 0.0)));

        assertThat(curve.valueAt(quantity)).isCloseTo(value, within(1e-12));
    }

    /** Worked by hand: 0.6 x 0.5 for 3 cables, 0.2 x 0.5 for 60 m, 0.2 x 0.85 for 45 degrees. */
    @Test
    void scoreIsTheWeightedSumOfItsParts() {
        var score = ranking.score(assessment("a", 3, 60, 45));

        assertThat(score.totalPoints()).isCloseTo(30 + 10 + 17, within(1e-9));
        assertThat(score.parts())
                .extracting(part -> part.criterion())
                .containsExactly("room_gained", "length", "bends");
    }

    @Test
    void equalScoresAreOrderedByIdAndExcludedSpansComeLastWithoutARank() {
        var excluded = excluded(assessment("a", 9, 180, 0));

        var all = List.of(excluded, assessment("c", 3, 60, 0), assessment("b", 3, 60, 0));

        assertThat(ranked(all)).containsExactly("b", "c", "a");
        assertThat(standings(all).countRanked()).isEqualTo(2);
    }

    @Test
    void shippedScoringNamesEveryCriterion() {
        assertThat(ScoringSettings.defaults().criteria().keySet()).isEqualTo(Ranking.criteria());
    }

    @Test
    void unknownCriterionIsRefusedByName() {
        var settings = new ScoringSettings(
                Map.of("lenght", new ScoringSettings.Criterion(1, new TreeMap<>(Map.of(0.0, 1.0)))));

        assertThatThrownBy(() -> new Ranking(settings))
                .hasMessageContaining("lenght")
                .hasMessageContaining("length");
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void orderOfTwoDoesNotDependOnTheOthersNorOnTheOrderOfReading(long seed) {
        var random = new Random(seed);
        var all = new ArrayList<Assessment>();
        for (int i = 0; i < 60; i++) {
            var one = assessment("s" + i, random.nextInt(10), 1 + random.nextInt(3) * 50, random.nextInt(4) * 45);
            all.add(random.nextInt(5) == 0 ? excluded(one) : one);
        }
        List<String> before = ranked(all);

        Collections.shuffle(all, random);
        var fewer = all.subList(0, 30);
        var kept = ranked(fewer);

        assertThat(ranked(all)).isEqualTo(before);
        assertThat(before.stream().filter(kept::contains)).isEqualTo(kept);
    }

    /** Against sorting by definition; many points are equal or differ in their last bits only. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void standingsAreInTheOrderOfPointsThenIds(long seed) {
        var random = new Random(seed);
        int count = random.nextInt(3000);
        var standings = new Standings(count);
        double[] points = new double[count];
        for (int span = 0; span < count; span++) {
            points[span] = random.nextInt(40) + (random.nextBoolean() ? 0 : random.nextInt(4) * 0x1p-47);
            if (random.nextInt(5) == 0) {
                points[span] = -1;
                standings.excluded(span);
            } else {
                standings.ranked(span, points[span]);
            }
        }
        List<Integer> expected = IntStream.range(0, count)
                .boxed()
                .sorted(Comparator.<Integer>comparingDouble(span -> -points[span])
                        .thenComparing(span -> "id" + span))
                .toList();

        assertThat(standings.bestFirst(span -> "id" + span))
                .containsExactly(expected.stream().mapToInt(Integer::intValue).toArray());
    }

    static LongStream seeds() {
        return LongStream.range(0, 50);
    }

    private static ScoringSettings.Criterion criterion(double weightRatio, Map<Double, Double> curve) {
        return new ScoringSettings.Criterion(weightRatio, new TreeMap<>(curve));
    }

    private List<String> ranked(List<Assessment> all) {
        return Arrays.stream(standings(all).bestFirst(i -> all.get(i).span().id()))
                .mapToObj(i -> all.get(i).span().id())
                .toList();
    }

    private Standings standings(List<Assessment> all) {
        var standings = new Standings(all.size());
        for (int i = 0; i < all.size(); i++) {
            ranking.stand(i, all.get(i), standings);
        }
        return standings;
    }

    private static Assessment excluded(Assessment one) {
        Room room = one.room();
        var without = new Room(
                room.boreAreaMm2(),
                0.5,
                0.1,
                0,
                0,
                0,
                0,
                room.newCables(),
                "none",
                Optional.of(Exclusion.NO_INNERDUCT));
        return new Assessment(one.span(), one.bends(), without, one.pull());
    }

    private static Assessment assessment(String id, int newCables, double lengthM, double turnDeg) {
        var duct = new Duct(
                "d",
                "",
                BoreShape.ROUND,
                100,
                "",
                "",
                false,
                Contents.UNKNOWN,
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                Set.of());
        var vault = new Vault(0, "v", 0, 0, List.of(), OptionalDouble.empty(), "");
        var line = Line.ofXy(0, 0, lengthM, 0);
        var span = new Span(id, duct, List.of("r"), vault, vault, line, line, lengthM, lengthM, 0, 0, "");
        var bends = turnDeg == 0
                ? Bends.NONE
                : new Bends(List.of(new Bend(Angle.ofDeg(turnDeg), Bend.Turn.LEFT, 0, 0.1, 1, true)));
        return new Assessment(
                span,
                bends,
                new Room(7854, 0.5, 0.1, 3000, 3, 0, 3, newCables, "", Optional.empty()),
                PullAssessment.nothing(Exclusion.NO_INNERDUCT));
    }
}
