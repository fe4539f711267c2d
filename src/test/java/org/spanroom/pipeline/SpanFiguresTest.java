package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.input.InputData;
import org.spanroom.model.bore.Room;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanFigures;
import org.spanroom.model.rank.UncertaintySettings;
import org.spanroom.permit.PermitAssessor;

/** What is kept of each span of the demo city against what its full assessment says. */
class SpanFiguresTest {
    private static final RunConfig CONFIG = ConfigReader.read(Path.of("sample-gis", "spanroom.yaml"));

    private static Network network;
    private static PermitAssessor permits;
    private static AssessedSpans ranked;
    private static final Map<String, RankedSpan> ASSESSED = new HashMap<>();

    @BeforeAll
    static void rankDemo() {
        var run = new RankRun(CONFIG, Progress.SILENT);
        InputData inputs = run.read();
        permits = new PermitAssessor(inputs.zones(), CONFIG.permit(), ConfiguredParts.access(CONFIG));
        network = run.cut(inputs);
        ranked = run.rank(network, permits, LearnedChances.NONE);
        for (int place = 0; place < ranked.size(); place++) {
            RankedSpan span = ranked.at(place);
            ASSESSED.put(span.span().id(), span);
        }
    }

    private static SpanFigures figures(UncertaintySettings uncertainty) {
        return new RankRun(CONFIG.withUncertainty(uncertainty), Progress.SILENT)
                .rank(network, permits, LearnedChances.NONE)
                .figures();
    }

    @Test
    void figuresAreThoseOfTheFullAssessment() {
        SpanFigures figures = ranked.figures();
        SpanList spans = network.spans();
        for (int number = 0; number < spans.size(); number++) {
            RankedSpan span = ASSESSED.get(spans.id(number));
            Room room = span.assessment().room();
            var effort = span.assessment().effort();
            assertThat(figures.recoveryMoney(number))
                    .isEqualTo(effort.map(Effort::recoveryMoney).orElse(0.0));
            assertThat(figures.siteHours(number))
                    .isEqualTo(effort.map(e -> e.time().siteHours()).orElse(0.0));
            assertThat(figures.positionsNow(number))
                    .isEqualTo(room.positionsNow().orElse(0));
            assertThat(figures.positionsAfter(number))
                    .isEqualTo(room.positionsAfter().orElse(0));
            assertThat(figures.recoveryLeadDays(number))
                    .isEqualTo(span.assessment().permits().recoveryLeadDays());
            assertThat(figures.exclusion(number)).isEqualTo(span.verdict().findFirst());
            assertThat(figures.cautions(number))
                    .isEqualTo(span.verdict().cautionKeys().size());
            assertThat(figures.exclusion(number).isEmpty())
                    .isEqualTo(span.rank().isPresent());
        }
        assertThat(numbers().filter(number -> figures.positionsAfter(number) > figures.positionsNow(number)))
                .isNotEmpty();
        assertThat(numbers().mapToObj(figures::exclusion).distinct().count()).isGreaterThan(5);
    }

    /** Spans that are excluded for good have none; those excluded for now, e.g. by an embargo, have theirs, though no chance is reported. */
    @Test
    void drawsAreAsManyAsTheChanceSays() {
        SpanFigures figures = ranked.figures();
        int forNow = 0;
        for (int number = 0; number < network.spans().size(); number++) {
            RankedSpan span = ASSESSED.get(network.spans().id(number));
            if (span.verdict().mayOpen()) {
                forNow += figures.feasibleDraws(number) == 0 ? 0 : 1;
                continue;
            }
            double feasibleRatio =
                    span.sureness().map(sure -> sure.feasibleRatio()).orElse(0.0);
            assertThat(Long.bitCount(figures.feasibleDraws(number)) / 64.0).isEqualTo(feasibleRatio);
        }
        assertThat(forNow).isPositive();
        assertThat(numbers().mapToLong(figures::feasibleDraws).distinct().count())
                .isGreaterThan(50);
    }

    @Test
    void maskHasTheFirstDrawsOfMoreAndAllOfFewer() {
        SpanFigures of64 = ranked.figures();
        SpanFigures of100 = figures(samples(100));
        SpanFigures of8 = figures(samples(8));

        numbers().forEach(number -> {
            assertThat(of100.feasibleDraws(number)).isEqualTo(of64.feasibleDraws(number));
            assertThat(of8.feasibleDraws(number)).isEqualTo(of64.feasibleDraws(number) & 0xFF);
        });
    }

    @Test
    void withoutASimulationNoDrawIsFeasible() {
        SpanFigures figures = figures(CONFIG.uncertainty().withSimulated(false));

        assertThat(numbers().mapToLong(figures::feasibleDraws)).containsOnly(0L);
    }

    private static IntStream numbers() {
        return IntStream.range(0, network.spans().size());
    }

    private static UncertaintySettings samples(int samples) {
        UncertaintySettings shipped = CONFIG.uncertainty();
        return new UncertaintySettings(
                true,
                shipped.seed(),
                samples,
                shipped.topCount(),
                shipped.diameterRatio(),
                shipped.otherSizeRatio(),
                shipped.moreCableRatio(),
                shipped.moreCableAssumedRatio(),
                shipped.blockedRatio(),
                shipped.blockedUnknownRatio(),
                shipped.leastChangeRatio(),
                shipped.moneyLowRatio(),
                shipped.moneyHighRatio());
    }
}
