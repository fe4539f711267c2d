package org.spanroom.program.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.Unserved.Reason;

/** Cases worked by hand. */
class DesignSearchTest {
    private static final double MUST = Double.POSITIVE_INFINITY;
    private static final SearchSettings SHORT = new SearchSettings(3, 200, 2);

    private final List<Piece> pieces = new ArrayList<>();
    private final List<Demand> demands = new ArrayList<>();

    @Test
    void cablesAreNotSplitOverDucts() {
        piece(0, 1, 10, new Bin(4, 4, 0), new Bin(4, 4, 0));
        demand(0, 1, 3, MUST);
        demand(0, 1, 3, MUST);
        demand(0, 1, 2, MUST);

        var result = searched(2);

        assertThat(served(result)).hasSize(2);
        assertThat(result.unserved().values()).containsExactly(new Unserved(Reason.CROWDED_OUT, 0));
        assertThat(result.design().totalMoney()).isInfinite();
    }

    @Test
    void aMustIsServedByANewBuildWhereNothingElseServesIt() {
        pieces.add(new Piece(0, 1, 10, List.of(), new NewDucts(3, 7_000, 100, 1)));
        pieces.add(new Piece(1, 2, 10, List.of(new Bin(0, 2, 50)), new NewDucts(6, 9_000, 100, 1)));
        demand(0, 2, 3, MUST);

        var result = searched(3);

        assertThat(result.design().ways()).containsExactly(List.of(0, 1));
        assertThat(result.design().workMoney()).isEqualTo(16_000);
        assertThat(result.design().uses().get(1).built()).isEqualTo(1);
    }

    @Test
    void anEmptyDuctIsUsedBeforeRecoveryAlsoOnALongerWay() {
        piece(0, 1, 10, new Bin(0, 9, 1));
        piece(0, 2, 500, new Bin(3, 3, 0));
        piece(2, 1, 500, new Bin(3, 3, 0));
        demand(0, 1, 3, MUST);

        assertThat(searched(3).design().ways()).containsExactly(List.of(1, 2));
    }

    @Test
    void ofWaysOfOneCostTheShorterIsTaken() {
        piece(0, 1, 30, new Bin(0, 9, 5));
        piece(0, 1, 20, new Bin(0, 9, 5));
        piece(1, 0, 40, new Bin(0, 9, 5));
        demand(0, 1, 1, MUST);

        assertThat(searched(2).design().ways()).containsExactly(List.of(1));
    }

    @Test
    void parallelPiecesServeWhatOneCannot() {
        piece(0, 1, 10, new Bin(2, 2, 0));
        piece(1, 0, 99, new Bin(2, 2, 0));
        demand(0, 1, 2, MUST);
        demand(1, 0, 2, MUST);

        assertThat(searched(2).design().ways()).containsExactlyInAnyOrder(List.of(0), List.of(1));
    }

    @Test
    void aSharedCostIsPaidOnceAndMakesBothWorthIt() {
        piece(0, 1, 10, new Bin(0, 4, 100));
        demand(0, 1, 2, 60);
        demand(1, 0, 2, 60);

        var result = searched(2);

        assertThat(served(result)).hasSize(2);
        assertThat(result.design().totalMoney()).isEqualTo(100);
    }

    @Test
    void loopsAndDeadEndsLeadNowhere() {
        piece(0, 1, 10, new Bin(1, 1, 0));
        piece(1, 2, 10, new Bin(1, 1, 0));
        piece(2, 3, 10, new Bin(1, 1, 0));
        piece(3, 1, 10, new Bin(1, 1, 0));
        piece(3, 4, 10, new Bin(1, 1, 0));
        piece(1, 5, 10, new Bin(1, 1, 0));
        demand(0, 5, 1, MUST);

        assertThat(searched(6).design().ways()).containsExactly(List.of(0, 5));
    }

    @Test
    void whatIsNotServedHasItsReason() {
        piece(0, 1, 10, new Bin(0, 2, 100));
        piece(2, 3, 10, new Bin(0, 0, 0));
        demand(0, 1, 1, 99);
        demand(0, 1, 3, MUST);
        demand(0, 2, 1, MUST);
        demand(2, 3, 1, 500);

        var result = searched(4);

        assertThat(served(result)).isEmpty();
        assertThat(result.unserved().get(0)).isEqualTo(new Unserved(Reason.NOT_WORTH_IT, 100));
        assertThat(result.unserved().get(1)).isEqualTo(new Unserved(Reason.TOO_MANY_CABLES, MUST));
        assertThat(result.unserved().get(2)).isEqualTo(new Unserved(Reason.NO_WAY, MUST));
        assertThat(result.unserved().get(3)).isEqualTo(new Unserved(Reason.NO_WAY, MUST));
    }

    @Test
    void aPrizeAsLargeAsTheCostIsServed() {
        piece(0, 1, 10, new Bin(0, 2, 100));
        demand(0, 1, 1, 100);

        assertThat(served(searched(2))).hasSize(1);
    }

    @Test
    void aMustGoesBeforeWhatIsWorthALot() {
        piece(0, 1, 10, new Bin(0, 2, 100));
        demand(0, 1, 2, 1e9);
        demand(0, 1, 1, MUST);

        var result = searched(2);

        assertThat(served(result)).containsExactly(1);
        assertThat(result.unserved().get(0)).isEqualTo(new Unserved(Reason.CROWDED_OUT, 100));
    }

    @Test
    void nothingToDoIsNoProblem() {
        assertThat(new DesignSearch(new DesignProblem(0, List.of(), List.of()))
                        .run(SHORT)
                        .design()
                        .totalMoney())
                .isZero();
        piece(0, 1, 10, new Bin(1, 1, 0));
        assertThat(searched(2).design().uses()).isEmpty();
    }

    @Test
    void theSameSeedGivesTheSameWhateverTheThreads() {
        DesignProblem problem = InventedCity.drawn(400, 30, 5);
        var settings = new SearchSettings(7, 300, 3);

        var result = new DesignSearch(problem).run(settings);

        assertThat(new DesignSearch(problem).run(settings, ManyThreads.SPREAD, () -> false))
                .isEqualTo(result);
        assertThat(result.isWhole()).isTrue();
        assertThat(result.iterations()).isEqualTo(900);
    }

    @Test
    void aStoppedSearchHasADesignAndSaysSo() {
        DesignProblem problem = InventedCity.drawn(400, 30, 5);
        var asked = new AtomicInteger();

        var result = new DesignSearch(problem).run(SHORT, Spread.ON_ONE_THREAD, () -> asked.incrementAndGet() > 20);

        assertThat(result.isWhole()).isFalse();
        assertThat(result.iterations()).isEqualTo(20);
        assertThat(DesignChecker.problems(problem, result.design())).isEmpty();
        assertThat(served(result)).isNotEmpty();
    }

    /** Also that contraction loses nothing: ways are those of pieces. */
    @Test
    void designsOfInventedCitiesHoldUpAndLongerSearchesAreNoWorse() {
        for (int seed = 0; seed < 10; seed++) {
            DesignProblem problem = InventedCity.drawn(300, 20, seed);

            var start = new DesignSearch(problem).run(SHORT.withIterations(0));
            var result = new DesignSearch(problem).run(SHORT.withIterations(500));

            assertThat(DesignChecker.problems(problem, result.design()))
                    .as("city %d", seed)
                    .isEmpty();
            assertThat(DesignChecker.problems(problem, start.design()))
                    .as("city %d", seed)
                    .isEmpty();
            assertThat(result.design().totalMoney())
                    .isLessThanOrEqualTo(start.design().totalMoney());
        }
    }

    @Test
    void moreDemandsGetMoreIterations() {
        assertThat(SearchSettings.forDemands(0)).isEqualTo(SearchSettings.DEFAULT);
        assertThat(SearchSettings.forDemands(100)).isEqualTo(SearchSettings.DEFAULT);
        assertThat(SearchSettings.forDemands(300)).isEqualTo(SearchSettings.DEFAULT.withIterations(60_000));
        assertThat(SearchSettings.forDemands(Integer.MAX_VALUE).iterations()).isEqualTo(Integer.MAX_VALUE);
    }

    @Test
    void settingsThatMeanNothingAreRejected() {
        assertThatThrownBy(() -> new SearchSettings(1, -1, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new SearchSettings(1, 1, 0)).isInstanceOf(IllegalArgumentException.class);
    }

    private void piece(int from, int to, double lengthM, Bin... bins) {
        pieces.add(new Piece(from, to, lengthM, List.of(bins), NewDucts.NONE));
    }

    private void demand(int from, int to, int cables, double prize) {
        demands.add(new Demand(from, to, cables, prize));
    }

    private DesignSearch.Result searched(int places) {
        var problem = new DesignProblem(places, pieces, demands);
        var result = new DesignSearch(problem).run(SHORT);
        assertThat(DesignChecker.problems(problem, result.design())).isEmpty();
        return result;
    }

    private static List<Integer> served(DesignSearch.Result result) {
        return IntStream.range(0, result.design().ways().size())
                .filter(demand -> !result.design().ways().get(demand).isEmpty())
                .boxed()
                .toList();
    }
}
