package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Angle;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bend;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.network.VaultKind;
import org.spanroom.model.pull.EndPull;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.FrictionUse;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.pull.PullAssumption;
import org.spanroom.model.pull.PullLimits;
import org.spanroom.model.pull.PullOutcome;
import org.spanroom.model.pull.PullReason;
import org.spanroom.model.pull.PullSettings;
import org.spanroom.model.pull.PullTrace;
import org.spanroom.model.pull.PullTrace.SectionKind;

class PullAssessorTest {
    private static final Span ONE = PullCase.span(PullCase.ductWith(PullCase.exampleInnerduct("i1")), 150);
    /** Whatever the vault, the machine is outside. */
    private static final PullSites OUTSIDE = new PullSites(Map.of("", new VaultKind(false, false)), vault -> true);

    private static final Bends ONE_BEND = PullCase.bends(30, 45, 0.9144);

    private final PullAssessor assessor = new PullAssessor(ShippedConfig.get().pull());

    @Test
    void easySpanIsPossibleFromBothEndsAndNamesTheBetter() {
        PullAssessment assessment = assessor.assess(ONE, ONE_BEND);

        assertThat(assessment.outcome()).isInstanceOf(PullOutcome.FromBoth.class);
        EndPull fromA = assessment.pulls().get(0).fromA();
        EndPull fromB = assessment.pulls().get(0).fromB();
        // The bend is near A: cheap for the innerduct when A is the anchor.
        assertThat(fromB.forceRatio()).isLessThan(fromA.forceRatio());
        assertThat(assessment.outcome().findBetterEnd()).contains(SpanEnd.B);
        assertThat(assessment.utilizationPercent()).isEqualTo(fromB.tightest().utilizationPercent());
        assertThat(assessment.outcome().findTightest()).contains(fromB.tightest());
        assertThat(assessment.outcome().findFailing()).isEmpty();
        assertThat(fromA.pullingEnd()).isEqualTo(SpanEnd.A);
        assertThat(fromB.pullingEnd()).isEqualTo(SpanEnd.B);
        assertThat(assessment.pulls().get(0).reason()).isEqualTo(PullReason.ONLY_ONE);
    }

    @Test
    void whereBothEndsAskTheSameItIsTheFirst() {
        assertThat(assessor.assess(ONE, Bends.NONE).outcome().findBetterEnd()).contains(SpanEnd.A);
    }

    /** What one assessment says of the other states of friction is what an assessment judged by them says. */
    @Test
    void everyStateOfFrictionIsUsedAsIfItWereJudgedBy() {
        Span three = PullCase.span(
                PullCase.ductWith(
                        PullCase.exampleInnerduct("i1"),
                        PullCase.exampleInnerduct("i2"),
                        PullCase.innerduct("i3", 1.315, 0.097)),
                300,
                0,
                3,
                1);

        for (SpanEnd end : SpanEnd.values()) {
            FrictionUse use = assessor.assess(three, ONE_BEND).useByFriction(end);
            for (Friction friction : Friction.values()) {
                PullAssessment judged = new PullAssessor(judgedBy(friction)).assess(three, ONE_BEND);
                assertThat(100 * use.mostRatio(friction)).isEqualTo(worst(judged, end));
            }
            assertThat(use.mostRatio(Friction.LUBRICATED)).isLessThan(use.mostRatio(Friction.DRY));
            assertThat(use.mostRatio(Friction.DRY)).isLessThan(use.mostRatio(Friction.BAD));
        }
    }

    private static double worst(PullAssessment assessment, SpanEnd end) {
        return assessment.pulls().stream()
                .mapToDouble(pull -> pull.from(end).tightest().utilizationPercent())
                .max()
                .orElseThrow();
    }

    private static PullSettings judgedBy(Friction friction) {
        PullSettings shipped = ShippedConfig.get().pull();
        return new PullSettings(
                shipped.friction(),
                friction,
                shipped.wanderRadPerM(),
                shipped.breakawayRatio(),
                shipped.slitterDragN(),
                shipped.simpleCapstan(),
                shipped.sealedWhenFlooded(),
                shipped.innerductDensityKgPerM3(),
                shipped.gradeToleranceM(),
                shipped.gradeRadiusM(),
                shipped.endPreferencePoints(),
                shipped.neighbors(),
                shipped.limits());
    }

    @Test
    void forcesCountWithTheBreakawayFactorAgainstLimitsOnly() {
        PullTrace trace = assessor.trace(ONE, ONE_BEND, 1, Friction.DRY);

        assertThat(use(trace.fromB(), LimitKind.INNERDUCT_STRENGTH).foundSi())
                .isCloseTo(1.3 * trace.pull().fromB().dry().pullN(), within(1e-9));
        assertThat(use(trace.fromB(), LimitKind.CABLE_HOLD).foundSi())
                .isCloseTo(1.3 * trace.pull().fromB().dry().holdN(), within(1e-9));
        assertThat(trace.fromB().fallOff().get(0).forces())
                .isEqualTo(trace.pull().fromB().dry());
        // A limit that never fails is used most at the pulling end.
        assertThat(use(trace.fromB(), LimitKind.INNERDUCT_STRENGTH).atM()).isCloseTo(150, within(1e-9));
        assertThat(use(trace.fromA(), LimitKind.INNERDUCT_STRENGTH).atM()).isCloseTo(0, within(1e-9));
    }

    @Test
    void aTraceIsThatOfTheStateOfFrictionAskedFor() {
        PullTrace trace = assessor.trace(ONE, ONE_BEND, 1, Friction.BAD);

        List<PullTrace.Section> sections = trace.fromB().sections();
        assertThat(sections.get(sections.size() - 1).far().innerductN())
                .isCloseTo(trace.pull().fromB().bad().pullN(), within(1e-9));
        assertThat(sections.get(0).near().cableN())
                .isCloseTo(trace.pull().fromB().bad().holdN(), within(1e-9));
    }

    @Test
    void aTraceDistinguishesCrestsFromSags() {
        assertThat(kinds(0, 5, 0)).containsExactly(SectionKind.STRAIGHT, SectionKind.CREST, SectionKind.STRAIGHT);
        assertThat(kinds(5, 0, 6)).containsExactly(SectionKind.STRAIGHT, SectionKind.SAG, SectionKind.STRAIGHT);
    }

    private List<SectionKind> kinds(double... heightsM) {
        Span span = PullCase.span(ONE.duct(), 100, heightsM);
        return assessor.trace(span, Bends.NONE, 1, Friction.DRY).fromA().sections().stream()
                .map(PullTrace.Section::kind)
                .toList();
    }

    /** One limit made strict, at both ends the tightest; where it fails along 150 m with a bend of 45 degrees at 30 m. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("strictLimits")
    void eachLimitCanBeTheOneThatFails(LimitKind kind, PullLimits limits, double atFromA, double atFromB) {
        var strict = new PullAssessor(with(limits), kind == LimitKind.VAULT_EXIT_RADIUS ? OUTSIDE : PullSites.ALIKE);

        PullAssessment assessment = strict.assess(ONE, ONE_BEND);

        assertThat(assessment.outcome()).isInstanceOf(PullOutcome.FromNeither.class);
        assertThat(assessment.outcome().isPossible()).isFalse();
        LimitUse failing = assessment.outcome().findFailing().orElseThrow();
        assertThat(failing.kind()).isEqualTo(kind);
        // The bend is near A: when A is the anchor it is cheap for the innerduct, and dear for the cable, whose
        // tension grows
        // towards the anchor.
        boolean isCableTension = kind == LimitKind.CABLE_HOLD || kind == LimitKind.CABLE_SIDEWALL;
        SpanEnd better = isCableTension ? SpanEnd.A : SpanEnd.B;
        assertThat(assessment.outcome().findBetterEnd()).contains(better);
        assertThat(failing).isEqualTo(assessment.pulls().get(0).from(better).tightest());
        assertThat(failing.utilizationPercent()).isGreaterThan(100);
        assertThat(assessment.failingLimits()).containsExactly(kind);
        InnerductPull pull = assessment.pulls().get(0);
        assertThat(pull.fromA().tightest().kind()).isEqualTo(kind);
        assertThat(pull.fromA().tightest().atM()).isCloseTo(atFromA, within(0.01));
        assertThat(pull.fromB().tightest().kind()).isEqualTo(kind);
        assertThat(pull.fromB().tightest().atM()).isCloseTo(atFromB, within(0.01));
    }

    static Stream<Arguments> strictLimits() {
        double anywhere = 150;
        return Stream.of(
                Arguments.of(LimitKind.MACHINE_PULL, limits(1, 10), 0, anywhere),
                Arguments.of(LimitKind.CABLE_HOLD, limits(2, 10), anywhere, 0),
                Arguments.of(LimitKind.INNERDUCT_SIDEWALL, limits(4, 10), 30, 30),
                Arguments.of(LimitKind.CABLE_SIDEWALL, limits(5, 0.1), 30, 30),
                Arguments.of(LimitKind.CABLE_BEND_RADIUS, limits(6, 200), 30, 30),
                Arguments.of(LimitKind.INNERDUCT_BEND_RADIUS, limits(7, 5), 30, 30),
                Arguments.of(LimitKind.VAULT_EXIT_RADIUS, limits(8, 0.3), 0, anywhere),
                Arguments.of(LimitKind.TOTAL_BENDS, limits(10, 20), 30, 30),
                Arguments.of(LimitKind.SECTION_LENGTH, limits(12, 50), 100, 50));
    }

    @Test
    void strengthFailsWhereTheTensionFirstPassesIt() {
        // A wall stress so low that the innerduct bears 100 N.
        double strengthN = 100;
        double stress =
                strengthN / PullCase.exampleInnerduct("x").wallMm() / Math.PI / (1.660 - 0.123) / PullCase.IN_MM;
        Span straight = PullCase.span(PullCase.ductWith(PullCase.exampleInnerduct("i1")), 100);
        var weak = new PullAssessor(withoutWander(limits(0, stress)));

        EndPull fromB = weak.assess(straight, Bends.NONE).pulls().get(0).fromB();

        // On a level straight the tension rises evenly from the anchor, so it passes 100 N after its share of the
        // length.
        assertThat(fromB.tightest().kind()).isEqualTo(LimitKind.INNERDUCT_STRENGTH);
        assertThat(fromB.tightest().atM())
                .isCloseTo(100 * strengthN / (1.3 * fromB.dry().pullN()), within(1e-6));
    }

    /** A strength half way between the tensions at both ends of the last straight: it is passed in the middle of that straight. */
    @ParameterizedTest(name = "from {0}")
    @CsvSource({"B, 90.18", "A, 14.82"})
    void strengthMayFailBehindABend(SpanEnd end, double middleM) {
        PullTrace trace = new PullAssessor(
                        withoutWander(ShippedConfig.get().pull().limits()))
                .trace(ONE, ONE_BEND, 1, Friction.DRY);
        PullTrace.Way way = end == SpanEnd.B ? trace.fromB() : trace.fromA();
        PullTrace.Section last = way.sections().get(2);
        double strengthN = 1.3 * (last.near().innerductN() + last.far().innerductN()) / 2;
        double stress =
                strengthN / PullCase.exampleInnerduct("x").wallMm() / Math.PI / (1.660 - 0.123) / PullCase.IN_MM;

        InnerductPull pull = new PullAssessor(withoutWander(limits(0, stress)))
                .assess(ONE, ONE_BEND)
                .pulls()
                .get(0);

        assertThat(pull.from(end).tightest().kind()).isEqualTo(LimitKind.INNERDUCT_STRENGTH);
        assertThat(pull.from(end).tightest().atM()).isCloseTo(middleM, within(0.005));
    }

    /** The bend is near A or near B, and the machine is too weak to pull through it last. */
    @ParameterizedTest(name = "bends at {0} and {1} m")
    @CsvSource({"10, 20, B", "140, 130, A"})
    void spanMayBePossibleFromOneEndOnly(double nearM, double fartherM, SpanEnd easier) {
        Span span = PullCase.span(PullCase.ductWith(PullCase.exampleInnerduct("i1")), 150);
        Bends nearOne = PullCase.bends(Math.min(nearM, fartherM), 90, 0.9144, Math.max(nearM, fartherM), 90, 0.9144);
        PullAssessment open = assessor.assess(span, nearOne);
        double hardN = open.largestPullN(easier.opposite(), Friction.DRY);
        double easyN = open.largestPullN(easier, Friction.DRY);
        assertThat(hardN).isGreaterThan(1.05 * easyN);

        PullAssessment assessment = new PullAssessor(with(limits(1, 1.3 * (hardN + easyN) / 2))).assess(span, nearOne);

        assertThat(assessment.outcome()).isInstanceOf(PullOutcome.FromOne.class);
        assertThat(assessment.outcome().key()).isEqualTo(easier.key());
        assertThat(assessment.outcome().findBetterEnd()).contains(easier);
        assertThat(assessment.outcome().findFailing().orElseThrow().kind()).isEqualTo(LimitKind.MACHINE_PULL);
        assertThat(assessment.outcome().findTightest().orElseThrow().fails()).isFalse();
    }

    @Test
    void mirroredSpanHasItsEndsExchanged() {
        double[] heights = {0, 4, 3, 5, 1};
        double[] mirrored = {1, 5, 3, 4, 0};
        Bends bends = PullCase.bends(20, 60, 2, 100, 30, 7);
        Bends back = PullCase.bends(50, 30, 7, 130, 60, 2);

        PullAssessment there = assessor.assess(PullCase.span(ONE.duct(), 150, heights), bends);
        PullAssessment here = assessor.assess(PullCase.span(ONE.duct(), 150, mirrored), back);

        for (Friction friction : Friction.values()) {
            for (SpanEnd end : SpanEnd.values()) {
                assertThat(here.largestPullN(end.opposite(), friction))
                        .isCloseTo(there.largestPullN(end, friction), within(1e-6));
                assertThat(here.largestHoldN(end.opposite(), friction))
                        .isCloseTo(there.largestHoldN(end, friction), within(1e-6));
            }
        }
        assertThat(there.largestPullN(SpanEnd.A, Friction.DRY))
                .isNotCloseTo(there.largestPullN(SpanEnd.B, Friction.DRY), within(1.0));
    }

    @Test
    void emptyInnerductsComeFirstThenTheLightestLoaded() {
        Innerduct heavy = PullCase.innerduct("heavy", 1.660, 0.123, PullCase.cable("c1", 0.9, 0.3));
        Innerduct light = PullCase.exampleInnerduct("light");
        // Heavier than the light one with its cable: it comes first for being empty.
        Innerduct empty = PullCase.innerduct("empty", 1.900, 0.190);

        PullAssessment assessment =
                assessor.assess(PullCase.span(PullCase.ductWith(heavy, light, empty), 100), Bends.NONE);
        List<InnerductPull> pulls = assessment.pulls();

        assertThat(pulls).extracting(pull -> pull.innerduct().id()).containsExactly("empty", "light", "heavy");
        assertThat(pulls)
                .extracting(InnerductPull::reason)
                .containsExactly(PullReason.EMPTY, PullReason.LIGHTEST, PullReason.LAST);
        assertThat(pulls).extracting(InnerductPull::turn).containsExactly(1, 2, 3);
        assertThat(pulls.get(0).fromA().dry().holdN()).isZero();
        assertThat(pulls.get(0).fromA().dry().pullN()).isPositive();
        SpanEnd better = assessment.outcome().findBetterEnd().orElseThrow();
        assertThat(assessment.outcome().findTightest().orElseThrow().utilizationPercent())
                .isEqualTo(worst(assessment, better));
    }

    @Test
    void neighborsGetFewerButTheirCablesStay() {
        Innerduct a = PullCase.exampleInnerduct("a");
        Innerduct b = PullCase.exampleInnerduct("b");
        Innerduct c = PullCase.exampleInnerduct("c");
        Cable loose = PullCase.cable("loose", 0.6, 0.1);
        Span span = PullCase.span(PullCase.duct(new Contents(List.of(a, b, c), List.of(loose), true)), 100);
        double innerduct = Weights.GRAVITY_M_PER_S2 * a.massKgPerM(955);
        double cable = Weights.GRAVITY_M_PER_S2 * a.cables().get(0).massKgPerM();
        double first = Weights.GRAVITY_M_PER_S2 * loose.massKgPerM();

        List<InnerductPull> pulls = assessor.assess(span, Bends.NONE).pulls();

        assertThat(pulls.get(0).neighborNPerM()).isCloseTo(0.25 * (first + 2 * (innerduct + cable)), within(1e-9));
        assertThat(pulls.get(1).neighborNPerM()).isCloseTo(0.25 * (first + cable + innerduct + cable), within(1e-9));
        assertThat(pulls.get(2).neighborNPerM()).isCloseTo(0.25 * (first + 2 * cable), within(1e-9));
        // Wedged only while two others are in: 1.660 in in 4.026 in, factor 1.40.
        assertThat(pulls.get(0).wedgeRatio()).isCloseTo(1.40, within(0.005));
        assertThat(pulls.get(1).wedgeRatio()).isEqualTo(1);
        assertThat(pulls)
                .extracting(pull -> pull.fromB().dry().pullN())
                .isSortedAccordingTo((x, y) -> Double.compare(y, x));
    }

    @ParameterizedTest(name = "{0} innerducts of {1} in")
    @CsvSource({
        "3, 1.660, 1.40",
        "3, 2.100, 1.667",
        "4, 1.660, 1.40",
        "2, 1.660, 1",
        "3, 1.315, 1.144",
        "4, 1.315, 1.40"
    })
    void wedgeDependsOnHowManyLieBeside(int count, double outsideIn, double expected) {
        Innerduct[] innerducts = Stream.iterate(0, i -> i + 1)
                .limit(count)
                .map(i -> PullCase.innerduct("i" + i, outsideIn, 0.123))
                .toArray(Innerduct[]::new);

        List<InnerductPull> pulls = assessor.assess(PullCase.span(PullCase.ductWith(innerducts), 100), Bends.NONE)
                .pulls();

        assertThat(pulls.get(0).wedgeRatio()).isCloseTo(expected, within(0.005));
    }

    /** The empty one comes out; the other stays beside it with its cable, as it would if it were only pulled later. */
    @Test
    void anInnerductThatStaysLiesBesideThosePulled() {
        Innerduct full = PullCase.innerduct("full", 1.660, 0.123, PullCase.exampleCable("c"));
        Innerduct empty = PullCase.innerduct("empty", 1.660, 0.123);
        Span span = PullCase.span(PullCase.ductWith(full, empty), 150);

        List<InnerductPull> one = assessor.assess(span, ONE_BEND, 1).pulls();
        List<InnerductPull> both = assessor.assess(span, ONE_BEND).pulls();

        assertThat(one).hasSize(1);
        assertThat(one.get(0).innerduct()).isEqualTo(empty);
        assertThat(one.get(0).neighborNPerM())
                .isPositive()
                .isCloseTo(both.get(0).neighborNPerM(), within(1e-12));
        assertThat(one.get(0).fromB().dry().pullN())
                .isCloseTo(both.get(0).fromB().dry().pullN(), within(1e-9));
        assertThatThrownBy(() -> assessor.assess(span, ONE_BEND, 3)).hasMessageContaining("out must be from 1 to 2");
        assertThatThrownBy(() -> assessor.trace(span, ONE_BEND, 3, 1, Friction.DRY))
                .hasMessageContaining("out must be from 1 to 2");
    }

    @Test
    void innerductsThatStayWedgeThoseThatComeOutAndNoneOfTheseIsTheLast() {
        Span span = PullCase.span(
                PullCase.ductWith(
                        PullCase.exampleInnerduct("a"), PullCase.exampleInnerduct("b"), PullCase.exampleInnerduct("c")),
                100);

        List<InnerductPull> one = assessor.assess(span, Bends.NONE, 1).pulls();
        List<InnerductPull> two = assessor.assess(span, Bends.NONE, 2).pulls();

        // 1.660 in in 4.026 in, two others beside it: factor 1.40.
        assertThat(one.get(0).wedgeRatio()).isCloseTo(1.40, within(0.005));
        assertThat(two).extracting(InnerductPull::reason).containsExactly(PullReason.LIGHTEST, PullReason.LIGHTEST);
    }

    @Test
    void cablesOfOneInnerductShareTheHoldByTheirWeight() {
        Cable heavy = PullCase.cable("heavy", 0.6, 0.12);
        Cable light = PullCase.cable("light", 0.4, 0.04);
        Span both = PullCase.span(PullCase.ductWith(PullCase.innerduct("i", 1.9, 0.141, heavy, light)), 150);
        Span alone = PullCase.span(PullCase.ductWith(PullCase.innerduct("i", 1.9, 0.141, heavy)), 150);

        PullTrace together = assessor.trace(both, ONE_BEND, 1, Friction.DRY);
        PullTrace single = assessor.trace(alone, ONE_BEND, 1, Friction.DRY);

        // Three quarters of the weight is the heavy one's, and what it feels is what it would feel alone.
        assertThat(together.pull().fromB().dry().holdN())
                .isCloseTo(single.pull().fromB().dry().holdN() * 4 / 3, within(1e-9));
        assertThat(use(together.fromB(), LimitKind.CABLE_HOLD).foundSi())
                .isCloseTo(use(single.fromB(), LimitKind.CABLE_HOLD).foundSi(), within(1e-9));
        assertThat(use(together.fromB(), LimitKind.CABLE_SIDEWALL).foundSi())
                .isCloseTo(use(single.fromB(), LimitKind.CABLE_SIDEWALL).foundSi(), within(1e-9));
        // So too where the cable, rated for 10 N of which 30 % may hold, decides which end is better.
        EndPull weakCable = new PullAssessor(with(limits(2, 10)))
                .assess(both, ONE_BEND)
                .pulls()
                .get(0)
                .fromB();
        assertThat(weakCable.forceRatio())
                .isCloseTo(1.3 * 0.75 * weakCable.dry().holdN() / (0.3 * 10), within(1e-9));
    }

    /** Cables of unknown weight: what the slitter drags is all they hold, each a half of it, the same all along. */
    @Test
    void cablesWithoutWeightShareTheSlittersDragEvenly() {
        Cable one = PullCase.cable("one", 0.6, 0);
        Cable other = PullCase.cable("other", 0.4, 0);
        Span span = PullCase.span(PullCase.ductWith(PullCase.innerduct("i", 1.9, 0.141, one, other)), 100);
        PullSettings d = ShippedConfig.get().pull();
        var dragging = new PullAssessor(new PullSettings(
                d.friction(), d.judgedBy(), 0, 1, 50, true, true, 955, 0.15, 7.6, 10, d.neighbors(), d.limits()));

        LimitUse hold = use(dragging.trace(span, Bends.NONE, 1, Friction.DRY).fromB(), LimitKind.CABLE_HOLD);

        assertThat(hold.foundSi()).isCloseTo(25, within(1e-9));
        assertThat(hold.atM()).isZero();
    }

    /** A radius of less than half the bore is treated as a tenth of it on the inside. */
    @Test
    void bendTighterThanTheBoreStillPressesByAFiniteForce() {
        PullTrace.Way way = assessor.trace(ONE, PullCase.bends(30, 45, 0.05), 1, Friction.DRY)
                .fromB();

        assertThat(use(way, LimitKind.INNERDUCT_SIDEWALL).foundSi())
                .isCloseTo(1.3 * way.sections().get(1).far().bodyN() / 0.005, within(1e-6));
    }

    @Test
    void deadCableHasNoLimitAndOneOfUnknownServiceCountsAsLive() {
        Cable dead = new Cable("dead", 12.7, 0.12, Service.DEAD);
        Cable unknown = new Cable("unknown", 12.7, 0.12, Service.UNKNOWN);
        Span withDead = PullCase.span(PullCase.ductWith(PullCase.innerduct("i", 1.66, 0.123, dead)), 150);
        Span withUnknown = PullCase.span(PullCase.ductWith(PullCase.innerduct("i", 1.66, 0.123, unknown)), 150);

        assertThat(assessor.trace(withDead, ONE_BEND, 1, Friction.DRY).fromB().limits())
                .extracting(LimitUse::kind)
                .doesNotContain(LimitKind.CABLE_HOLD, LimitKind.CABLE_SIDEWALL, LimitKind.CABLE_BEND_RADIUS);
        assertThat(assessor.trace(withUnknown, ONE_BEND, 1, Friction.DRY)
                        .fromB()
                        .limits())
                .extracting(LimitUse::kind)
                .contains(LimitKind.CABLE_HOLD, LimitKind.CABLE_SIDEWALL, LimitKind.CABLE_BEND_RADIUS);
        assertThat(assessor.assess(withUnknown, ONE_BEND).assumptions()).contains(PullAssumption.CABLE_LIVE);
    }

    @Test
    void spansWithNothingToPullSayWhy() {
        var none =
                PullCase.span(PullCase.duct(new Contents(List.of(), List.of(PullCase.exampleCable("c")), true)), 100);
        var unknown = PullCase.span(PullCase.duct(Contents.UNKNOWN), 100);

        assertThat(assessor.assess(none, Bends.NONE).outcome())
                .isEqualTo(new PullOutcome.NothingToPull(Unrecoverable.NO_INNERDUCT));
        assertThat(assessor.assess(unknown, Bends.NONE).outcome())
                .isEqualTo(new PullOutcome.NothingToPull(Unrecoverable.CONTENTS_UNKNOWN));
        assertThat(assessor.assess(none, Bends.NONE).pulls()).isEmpty();
        assertThat(assessor.assess(none, Bends.NONE).utilizationPercent()).isZero();
        assertThatThrownBy(() -> assessor.trace(none, Bends.NONE, 1, Friction.DRY))
                .hasMessageContaining("turn must be from 1 to 0");
    }

    @Test
    void assumptionsAreListedInOneOrder() {
        Bends assumed = new Bends(List.of(new Bend(Angle.ofDeg(90), Bend.Turn.LEFT, 40, 1.4, 0.9144, true)));
        var contents =
                new Contents(List.of(PullCase.exampleInnerduct("a"), PullCase.exampleInnerduct("b")), List.of(), true);
        var duct = PullCase.duct(contents, true, Term.INNERDUCT_SDR, Term.CABLE_MASS, Term.SURFACE);

        assertThat(assessor.assess(PullCase.span(duct, 100), assumed).assumptions())
                .containsExactly(
                        PullAssumption.FRICTION,
                        PullAssumption.BREAKAWAY,
                        PullAssumption.INNERDUCT_STRESS,
                        PullAssumption.MACHINE_AND_VAULT,
                        PullAssumption.WANDER,
                        PullAssumption.NEIGHBOR_SHARE,
                        PullAssumption.BEND_RADIUS,
                        PullAssumption.LEVEL,
                        PullAssumption.FLOODED_SEALED,
                        PullAssumption.INNERDUCT_SIZE,
                        PullAssumption.CABLE_MASS);
        assertThat(assessor.assess(ONE, ONE_BEND).assumptions()).doesNotContain(PullAssumption.NEIGHBOR_SHARE);
        var withLoose =
                new Contents(List.of(PullCase.exampleInnerduct("a")), List.of(PullCase.exampleCable("loose")), true);
        assertThat(assessor.assess(PullCase.span(PullCase.duct(withLoose), 100), Bends.NONE)
                        .assumptions())
                .contains(PullAssumption.NEIGHBOR_SHARE);
        assertThat(new PullAssessor(withoutWander(ShippedConfig.get().pull().limits()))
                        .assess(ONE, ONE_BEND)
                        .assumptions())
                .doesNotContain(PullAssumption.WANDER);
    }

    @Test
    void warningsComeBeforeRefusals() {
        Span longer = PullCase.span(ONE.duct(), 200);
        Bends many = PullCase.bends(20, 90, 1, 60, 90, 1, 100, 10, 1);

        assertThat(assessor.assess(longer, many).warnings())
                .containsExactly(LimitKind.TOTAL_BENDS, LimitKind.SECTION_LENGTH);
        assertThat(assessor.assess(ONE, ONE_BEND).warnings()).isEmpty();
        // Up to the limit itself nothing is warned of: 180 degrees, and the length that the settings name.
        Span justSoLong =
                PullCase.span(ONE.duct(), ShippedConfig.get().pull().limits().warnLengthM());
        assertThat(assessor.assess(justSoLong, PullCase.bends(20, 90, 1, 60, 90, 1))
                        .warnings())
                .isEmpty();
    }

    @Test
    void slitterDragReachesTheAnchorThroughTheBends() {
        PullSettings d = withoutWander(ShippedConfig.get().pull().limits());
        var dragging = new PullAssessor(new PullSettings(
                d.friction(), d.judgedBy(), 0, 1, 50, true, true, 955, 0.15, 7.6, 10, d.neighbors(), d.limits()));
        var free = new PullAssessor(new PullSettings(
                d.friction(), d.judgedBy(), 0, 1, 0, true, true, 955, 0.15, 7.6, 10, d.neighbors(), d.limits()));

        double with = dragging.assess(ONE, ONE_BEND).largestHoldN(SpanEnd.B, Friction.DRY);
        double without = free.assess(ONE, ONE_BEND).largestHoldN(SpanEnd.B, Friction.DRY);

        assertThat(with - without).isCloseTo(50 * Math.exp(0.30 * Math.PI / 4), within(1e-9));
    }

    @Test
    void totalOfBendsFailsAtTheBendThatPassesIt() {
        Bends three = PullCase.bends(20, 15, 1, 60, 15, 1, 120, 15, 1);

        InnerductPull pull = new PullAssessor(with(limits(10, 20)))
                .assess(ONE, three)
                .pulls()
                .get(0);

        assertThat(pull.fromB().tightest().kind()).isEqualTo(LimitKind.TOTAL_BENDS);
        assertThat(pull.fromB().tightest().atM()).isCloseTo(60, within(0.01));
        assertThat(pull.fromA().tightest().foundSi()).isCloseTo(Math.toRadians(45), within(1e-12));
        assertThat(pull.fromB().tightest().summary())
                .isEqualTo("total bends 45 degrees > limit 20 degrees (225 %) at 60.0 m");
    }

    @Test
    void absurdLinesGiveLargeNumbersAndNoFailure() {
        Span endless = PullCase.span(ONE.duct(), 1e7);
        Bends coil = PullCase.bends(500, 1e6, 0.01, 5e6, 1e6, 0.0001);

        PullAssessment assessment = assessor.assess(endless, coil);

        assertThat(assessment.outcome()).isInstanceOf(PullOutcome.FromNeither.class);
        assertThat(assessment.utilizationPercent()).isFinite();
    }

    /** Straight up from the anchor the cable hangs from the top: its tension is largest there, not at the anchor. */
    @Test
    void cableHangsFromTheTopOfASteepRise() {
        Span steep = PullCase.span(ONE.duct(), 100, 0, 25, 25.5);

        LimitUse hold = use(assessor.trace(steep, Bends.NONE, 1, Friction.DRY).fromB(), LimitKind.CABLE_HOLD);

        assertThat(hold.atM()).isBetween(45.0, 55.0);
        assertThat(hold.foundSi())
                .isGreaterThan(1.3 * assessor.assess(steep, Bends.NONE).largestHoldN(SpanEnd.B, Friction.DRY));
    }

    /** Pulling uphill takes the weight too; without wander and bends the difference of both ways is twice weight times rise. */
    @Test
    void uphillTakesTheWeightAndDownhillGivesItBack() {
        Span hill = PullCase.span(PullCase.ductWith(PullCase.innerduct("empty", 1.660, 0.123)), 100, 0, 10);
        double weightNPerM =
                Weights.GRAVITY_M_PER_S2 * PullCase.exampleInnerduct("x").massKgPerM(955);

        InnerductPull pull = new PullAssessor(
                        withoutWander(ShippedConfig.get().pull().limits()))
                .assess(hill, Bends.NONE)
                .pulls()
                .get(0);

        assertThat(pull.fromB().dry().pullN() - pull.fromA().dry().pullN())
                .isCloseTo(2 * weightNPerM * 10, within(1e-9));
    }

    private static LimitUse use(PullTrace.Way way, LimitKind kind) {
        return way.limits().stream()
                .filter(found -> found.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    /** The shipped limits with one changed, by its place among the numbers of the record. */
    private static PullLimits limits(int place, double value) {
        PullLimits d = ShippedConfig.get().pull().limits();
        double[] v = {
            d.innerductStressMpa(), d.machinePullN(), d.cableRatingN(), d.holdShareRatio(), d.innerductSidewallNPerM(),
            d.cableSidewallNPerM(), d.cableRadiusRatio(), 1, d.vaultExitRadiusM(), d.warnTotalDeg(),
            d.refuseTotalDeg(), d.warnLengthM(), d.refuseLengthM()
        };
        v[place] = value;
        double radiusFactor = v[7];
        var radii = d.innerductRadii().stream()
                .map(row -> new PullLimits.SizeRadius(row.outsideDiameterMm(), radiusFactor * row.radiusM()))
                .toList();
        // A strict unsupported radius should fail in the bend first, so the way out of the vault is made wide.
        double exitM = radiusFactor == 1 ? v[8] : 100;
        return new PullLimits(
                v[0], v[1], v[2], v[3], v[4], v[5], v[6], radii, exitM, v[9], v[10], v[11], v[12], List.of(), 3);
    }

    private static PullSettings with(PullLimits limits) {
        PullSettings d = ShippedConfig.get().pull();
        return new PullSettings(
                d.friction(),
                d.judgedBy(),
                d.wanderRadPerM(),
                d.breakawayRatio(),
                d.slitterDragN(),
                d.simpleCapstan(),
                d.sealedWhenFlooded(),
                d.innerductDensityKgPerM3(),
                d.gradeToleranceM(),
                d.gradeRadiusM(),
                d.endPreferencePoints(),
                ShippedConfig.get().pull().neighbors(),
                limits);
    }

    private static PullSettings withoutWander(PullLimits limits) {
        PullSettings d = ShippedConfig.get().pull();
        return new PullSettings(
                d.friction(), d.judgedBy(), 0, 1.3, 0, false, true, 955, 0.15, 7.6, 10, d.neighbors(), limits);
    }
}
