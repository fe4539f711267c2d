package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.input.InputData;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.network.Network;
import org.spanroom.model.rank.Assessment;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.testing.Changed;

/** Low, likely and high money of spans of the demo city, against the same sums calculated in the plainest way. */
class MoneyRunTest {
    private static final RunConfig CONFIG = ConfigReader.read(Path.of("sample-gis", "spanroom.yaml"));
    private static final int SPANS = 120;
    private static final int DRAWINGS = 64;

    private static final List<Assessment> ASSESSED = new ArrayList<>();
    private static Rates rates;

    @BeforeAll
    static void assessSomeSpans() {
        var run = new RankRun(CONFIG, Progress.SILENT);
        InputData inputs = run.read();
        Network network = run.cut(inputs);
        var assessor = new SpanAssessor(
                CONFIG,
                new PermitAssessor(inputs.zones(), CONFIG.permit(), ConfiguredParts.access(CONFIG)),
                network.spans().size());
        rates = assessor.rates();
        for (int number = 0; number < network.spans().size() && ASSESSED.size() < SPANS; number++) {
            Assessment one = assessor.assess(number, network.spans().get(number));
            if (one.effort().isPresent()) {
                ASSESSED.add(one);
            }
        }
    }

    @Test
    void totalsAreThePercentilesOfJointDraws() {
        MoneyTotals totals = of(CONFIG, ASSESSED).totals();
        MoneyRanges ranges = totals.ranges().orElseThrow();

        assertThat(totals.currency()).isEqualTo("USD");
        assertThat(totals.recoveryMoney()).isEqualTo(sum(rates, EffortAssessor::costMoney), within(0.01 * SPANS));
        assertThat(totals.newBuildMoney()).isEqualTo(sum(rates, EffortAssessor::newBuildMoney), within(0.01 * SPANS));
        assertRange(ranges.recovery(), drawn(MoneyRunTest::recovery));
        assertRange(ranges.newBuild(), drawn(MoneyRunTest::newBuild));
        assertRange(ranges.saving(), drawn((span, one) -> newBuild(span, one) - recovery(span, one)));
    }

    /** A total is surer than its parts: its ends are inside of the sums of the spans' ends. */
    @Test
    void totalsAreNoSumsOfTheSpansOwnPercentiles() {
        MoneyRun run = of(CONFIG, ASSESSED);
        MoneyRange total = run.totals().ranges().orElseThrow().saving();
        double lows = 0;
        double highs = 0;
        for (int number = 0; number < ASSESSED.size(); number++) {
            MoneyRange own = run.of(number).orElseThrow().saving();
            lows += own.lowMoney();
            highs += own.highMoney();
        }

        assertThat(total.lowMoney()).isGreaterThan(1.001 * lows);
        assertThat(total.highMoney()).isLessThan(0.999 * highs);
    }

    /** Kept in a number of seven digits. */
    @Test
    void aSpansRangeIsThatOfItsOwnDraws() {
        MoneyRun run = of(CONFIG, ASSESSED);
        for (int number = 0; number < ASSESSED.size(); number++) {
            EffortQuantities span = quantities(ASSESSED.get(number));
            List<Double> sorted = new ArrayList<>();
            for (int i = 0; i < DRAWINGS; i++) {
                sorted.add(recovery(span, rates.sampled(CONFIG.uncertainty().seed(), i)));
            }
            Collections.sort(sorted);
            MoneyRange found = run.of(number).orElseThrow().recovery();
            assertThat(found.lowMoney()).isEqualTo(percentile(sorted, 0.1), within(0.02));
            assertThat(found.likelyMoney()).isEqualTo(percentile(sorted, 0.5), within(0.02));
            assertThat(found.highMoney()).isEqualTo(percentile(sorted, 0.9), within(0.02));
        }
    }

    /** Bit for bit: sums are made in whole steps of money. */
    @Test
    void theOrderInWhichSpansComeDoesNotShow() {
        MoneyTotals inOrder = of(CONFIG, ASSESSED).totals();
        for (int seed = 0; seed < 10; seed++) {
            List<Assessment> shuffled = new ArrayList<>(ASSESSED);
            Collections.shuffle(shuffled, new Random(seed));
            assertThat(of(CONFIG, shuffled).totals()).isEqualTo(inOrder);
        }
    }

    @Test
    void thePercentilesAreThoseOfTheSettings() {
        RunConfig median = CONFIG.withUncertainty(
                Changed.of(Changed.of(CONFIG.uncertainty(), "moneyHighRatio", 1.0), "moneyLowRatio", 0.5));
        MoneyRange total = of(median, ASSESSED).totals().ranges().orElseThrow().recovery();
        List<Double> drawn = drawn(MoneyRunTest::recovery);

        assertThat(total.lowMoney()).isEqualTo(percentile(drawn, 0.5), within(0.01 * SPANS));
        assertThat(total.highMoney()).isEqualTo(drawn.get(DRAWINGS - 1), within(0.01 * SPANS));
    }

    @Test
    void withoutASimulationThereIsTheFigureAtTheRatesValuesOnly() {
        MoneyRun run = of(CONFIG.withUncertainty(CONFIG.uncertainty().withSimulated(false)), ASSESSED);

        assertThat(run.totals().ranges()).isEmpty();
        assertThat(run.of(0)).isEmpty();
        assertThat(run.totals().savingMoney())
                .isEqualTo(of(CONFIG, ASSESSED).totals().savingMoney());
    }

    @Test
    void aSpanWithoutEffortHasNoMoney() {
        Assessment one = ASSESSED.get(0);
        var nothing = new Assessment(one.span(), one.bends(), one.room(), one.pull(), one.permits(), Optional.empty());
        MoneyRun run = of(CONFIG, List.of(nothing));

        assertThat(run.of(0)).isEmpty();
        assertThat(run.totals().recoveryMoney()).isZero();
    }

    /** On two threads' sums, alternately. */
    private static MoneyRun of(RunConfig config, List<Assessment> spans) {
        var run = new MoneyRun(config, rates, spans.size());
        List<MoneyRun.Sums> threads = List.of(run.begin(), run.begin());
        for (int number = 0; number < spans.size(); number++) {
            run.add(number, spans.get(number), threads.get(number % 2));
        }
        return run;
    }

    private static void assertRange(MoneyRange range, List<Double> drawn) {
        assertThat(range.lowMoney()).isEqualTo(percentile(drawn, 0.1), within(0.01 * SPANS));
        assertThat(range.likelyMoney()).isEqualTo(percentile(drawn, 0.5), within(0.01 * SPANS));
        assertThat(range.highMoney()).isEqualTo(percentile(drawn, 0.9), within(0.01 * SPANS));
    }

    /** Returns the total of each drawing, in rising order. */
    private static List<Double> drawn(ToDoubleBiFunction<EffortQuantities, Rates> money) {
        List<Double> totals = new ArrayList<>();
        for (int i = 0; i < DRAWINGS; i++) {
            totals.add(sum(rates.sampled(CONFIG.uncertainty().seed(), i), money));
        }
        Collections.sort(totals);
        return totals;
    }

    private static double sum(Rates drawing, ToDoubleBiFunction<EffortQuantities, Rates> money) {
        return ASSESSED.stream()
                .mapToDouble(one -> money.applyAsDouble(quantities(one), drawing))
                .sum();
    }

    /** Of 64 values the place is 63 p: for p = 0.1 between the seventh and the eighth, 0.3 of the way. */
    private static double percentile(List<Double> sorted, double p) {
        int below = (int) Math.floor(63 * p);
        double rest = 63 * p - below;
        return rest == 0 ? sorted.get(below) : sorted.get(below) * (1 - rest) + sorted.get(below + 1) * rest;
    }

    private static EffortQuantities quantities(Assessment one) {
        return one.effort().orElseThrow().quantities();
    }

    private static double recovery(EffortQuantities span, Rates drawing) {
        return EffortAssessor.costMoney(span, drawing);
    }

    private static double newBuild(EffortQuantities span, Rates drawing) {
        return EffortAssessor.newBuildMoney(span, drawing);
    }
}
