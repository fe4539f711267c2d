package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.FrictionSets;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullLimits;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.rank.Ranking;
import org.spanroom.rank.Simulation;
import org.spanroom.rank.SpanOutlook;

/**
 * The chance that a pull can be done, beside pulls that are calculated with friction as it was drawn. Each limit is interpolated by itself: a
 * total of bends that is used 90 % whatever the friction is no force that grows from there.
 */
class FeasibleChanceTest {
    private static final PullSettings SETTINGS = ShippedConfig.get().pull();
    private static final int FRICTIONS = 400;

    private final Ranking ranking =
            new Ranking(ShippedConfig.get().scoring(), ShippedConfig.get().room());
    private final Simulation simulation = ranking.simulation(ShippedConfig.get().uncertainty());

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void isThatOfSamplingEachLimit(long seed) {
        var random = new Random(seed);
        Span span = span(random);
        Bends bends = bends(random, span.lengthM());
        PullSettings settings = with(SETTINGS.friction(), limits(random, span, bends));

        PullAssessment assessment = new PullAssessor(settings).assess(span, bends);
        SpanEnd end = assessment.outcome().findBetterEnd().orElseThrow();
        var situation =
                new SpanOutlook.Situation(0, 0, 1, new double[ranking.weighted().size()], true, new double[0]);
        double chance = simulation
                .scores(new SpanOutlook("span-" + seed, List.of(situation), assessment.useByFriction(end), 0))
                .feasibleRatio();

        // 64 equidistributed samples are within one of them; what the interpolation adds is less than another.
        assertThat(chance).isEqualTo(sampled(span, bends, end, settings), within(2.0 / 64));
    }

    private static double sampled(Span span, Bends bends, SpanEnd end, PullSettings settings) {
        int feasible = 0;
        for (int i = 0; i < FRICTIONS; i++) {
            double share = (i + 0.5) / FRICTIONS;
            // The inverse of a triangular distribution on 0 to 1 about its middle (any textbook on statistics).
            double place = share < 0.5 ? Math.sqrt(share / 2) : 1 - Math.sqrt((1 - share) / 2);
            FrictionSet drawn = at(settings.friction(), place);
            PullSettings one = with(new FrictionSets(drawn, drawn, drawn), settings.limits());
            feasible +=
                    new PullAssessor(one).assess(span, bends).useByFriction(end).mostRatio(Friction.DRY) <= 1 ? 1 : 0;
        }
        return feasible / (double) FRICTIONS;
    }

    private static FrictionSet at(FrictionSets sets, double place) {
        FrictionSet low = place < 0.5 ? sets.lubricated() : sets.dry();
        FrictionSet high = place < 0.5 ? sets.dry() : sets.bad();
        double share = place < 0.5 ? 2 * place : 2 * place - 1;
        return new FrictionSet(
                low.ductRatio() + share * (high.ductRatio() - low.ductRatio()),
                low.jacketRatio() + share * (high.jacketRatio() - low.jacketRatio()),
                low.neighborRatio() + share * (high.neighborRatio() - low.neighborRatio()));
    }

    private static Span span(Random random) {
        var innerducts = new ArrayList<Innerduct>();
        int count = 1 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            innerducts.add(PullCase.innerduct(
                    "i" + i, 1.66, 0.123, PullCase.cable("c" + i, 0.5 + 0.3 * random.nextDouble(), 0.1 + 0.1 * i)));
        }
        return PullCase.span(PullCase.ductWith(innerducts.toArray(Innerduct[]::new)), 150 + 150 * random.nextDouble());
    }

    private static Bends bends(Random random, double lengthM) {
        return PullCase.bends(
                lengthM * 0.3, 20 + 60 * random.nextDouble(), 2, lengthM * 0.8, 20 + 60 * random.nextDouble(), 3);
    }

    /**
     * The shipped limits, with so small a total of bends allowed that it is used 60 to 99 % whatever the friction, and a stress by which the
     * innerduct's strength is used 60 to 130 % when dry: either may be the tightest, and many a pull fails in some of the states only.
     */
    private static PullLimits limits(Random random, Span span, Bends bends) {
        PullLimits d = SETTINGS.limits();
        double strengthRatio = new PullAssessor(SETTINGS)
                .assess(span, bends)
                .useByFriction(SpanEnd.A)
                .ratio(LimitKind.INNERDUCT_STRENGTH, Friction.DRY);
        double totalDeg = bends.total().deg();
        return new PullLimits(
                d.innerductStressMpa() * strengthRatio / (0.6 + 0.7 * random.nextDouble()),
                d.machinePullN(),
                d.cableRatingN(),
                d.holdShareRatio(),
                d.innerductSidewallNPerM(),
                d.cableSidewallNPerM(),
                d.cableRadiusRatio(),
                d.innerductRadii(),
                d.vaultExitRadiusM(),
                d.warnTotalDeg(),
                totalDeg / (0.6 + 0.39 * random.nextDouble()),
                d.warnLengthM(),
                d.refuseLengthM(),
                d.exitRadii(),
                d.outsideSlackM());
    }

    private static PullSettings with(FrictionSets friction, PullLimits limits) {
        return new PullSettings(
                friction,
                Friction.DRY,
                SETTINGS.wanderRadPerM(),
                SETTINGS.breakawayRatio(),
                SETTINGS.slitterDragN(),
                SETTINGS.simpleCapstan(),
                SETTINGS.sealedWhenFlooded(),
                SETTINGS.innerductDensityKgPerM3(),
                SETTINGS.gradeToleranceM(),
                SETTINGS.gradeRadiusM(),
                SETTINGS.endPreferencePoints(),
                SETTINGS.neighbors(),
                limits);
    }
}
