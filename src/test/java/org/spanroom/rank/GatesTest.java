package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.Assessment;
import org.spanroom.model.Cable;
import org.spanroom.model.Caution;
import org.spanroom.model.Condition;
import org.spanroom.model.Contents;
import org.spanroom.model.Exclusion;
import org.spanroom.model.GateAnswer;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.RoomSettings;
import org.spanroom.model.ScoringSettings;
import org.spanroom.model.Service;
import org.spanroom.model.SpanList;
import org.spanroom.model.Verdict;

class GatesTest {
    private static final ScoringSettings SHIPPED = ShippedConfig.get().scoring();

    static Stream<Arguments> cases() {
        return Stream.of(
                with(Exclusion.CONTENTS_UNKNOWN, one -> one.contents = Contents.UNKNOWN),
                with(Exclusion.NO_INNERDUCT, HandMade::empty),
                with(Exclusion.NO_OUTER_DUCT, one -> one.directBuried = true),
                with(Exclusion.DUCT_COLLAPSED, one -> one.condition = Condition.COLLAPSED),
                with(Exclusion.DUCT_BLOCKED, one -> one.condition = Condition.BLOCKED),
                with(Exclusion.INNERDUCT_FIXED, one -> one.fixed = Answer.YES),
                with(Exclusion.SPLICE_INSIDE, one -> one.splice = Answer.YES),
                with(Exclusion.NO_CABLE_HOLD, one -> {
                    one.fromSite = HandMade.hold(Answer.NO);
                    one.toSite = HandMade.hold(Answer.NO);
                }),
                with(Exclusion.SERVICE_UNKNOWN, one -> one.contents = HandMade.holding(Service.UNKNOWN)),
                with(Exclusion.ALL_CABLES_DEAD, one -> one.contents = HandMade.holding(Service.DEAD)),
                with(Exclusion.OWNER_CONSENT_MISSING, one -> one.consent = Answer.NO),
                with(Exclusion.LOOSE_CABLE_FORBIDDEN, one -> one.looseCable = Answer.NO),
                with(Exclusion.EMPTY_DUCT_IN_BANK, one -> one.in("B", "V1", "V2")),
                with(Exclusion.PULL_FAILS, one -> {
                    one.percentAtA = 130;
                    one.percentAtB = 110;
                }),
                with(Exclusion.NO_ROOM_GAINED, one -> one.newCables = 0));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void aShutGateExcludesForItsReasonAlone(Exclusion reason, HandMade one) {
        RankedSpan row = ranked(one, SHIPPED.withGates(Map.of(reason, true)));

        assertThat(row.rank()).isEmpty();
        assertThat(row.verdict().exclusions()).containsExactly(reason);
        assertThat(row.verdict().findFirst()).contains(reason);
        assertThat(row.verdict().waived()).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void anOpenGateRanksTheSpanAndTellsTheReasonAsACaution(Exclusion reason, HandMade one) {
        RankedSpan row = ranked(one, SHIPPED.withGates(Map.of(reason, false)));

        assertThat(row.rank()).isPresent();
        assertThat(row.verdict().exclusions()).isEmpty();
        assertThat(row.verdict().waived()).containsExactly(reason);
        assertThat(row.verdict().cautionKeys()).startsWith(reason.key());
    }

    @ParameterizedTest
    @EnumSource
    void everyReasonHasItsCaseAndItsGate(Exclusion reason) {
        assertThat(cases().map(arguments -> arguments.get()[0])).contains(reason);
        assertThat(SHIPPED.gates()).containsKey(reason);
    }

    @Test
    void aSoundSpanPassesEveryGate() {
        RankedSpan row = ranked(HandMade.sound(), SHIPPED);

        assertThat(row.rank()).hasValue(1);
        assertThat(row.verdict().exclusions()).isEmpty();
        assertThat(row.verdict().cautionKeys()).isEmpty();
    }

    @Test
    void allReasonsAreListedTheMostBasicFirst() {
        var one = HandMade.sound();
        one.consent = Answer.NO;
        one.splice = Answer.YES;
        one.condition = Condition.COLLAPSED;
        one.contents = HandMade.holding(Service.UNKNOWN);

        RankedSpan row = ranked(one, SHIPPED);

        assertThat(row.verdict().exclusions())
                .containsExactly(
                        Exclusion.DUCT_COLLAPSED,
                        Exclusion.SPLICE_INSIDE,
                        Exclusion.SERVICE_UNKNOWN,
                        Exclusion.OWNER_CONSENT_MISSING);
    }

    @Test
    void whereNothingCanLeaveADuctNothingThatFollowsIsToldBesides() {
        var one = HandMade.sound().empty();
        one.contents = new Contents(List.of(), List.of(new Cable("c", 12, 0.2, Service.DEAD)), true);
        one.splice = Answer.YES;
        one.looseCable = Answer.NO;

        assertThat(ranked(one, SHIPPED).verdict().exclusions()).containsExactly(Exclusion.NO_INNERDUCT);
    }

    @ParameterizedTest(name = "consent {0}, unknown excludes {1}: excluded {2}")
    @CsvSource({
        "YES, false, false",
        "YES, true, false",
        "UNKNOWN, false, false",
        "UNKNOWN, true, true",
        "NO, false, true",
        "NO, true, true"
    })
    void aSettingSaysWhetherUnknownConsentExcludes(Answer consent, boolean unknownExcludes, boolean excluded) {
        var settings = new ScoringSettings(
                SHIPPED.criteria(), SHIPPED.gates(), unknownExcludes, List.of(), List.of(), SHIPPED.knowledge());
        var one = HandMade.sound();
        one.consent = consent;

        assertThat(ranked(one, settings).verdict().exclusions().contains(Exclusion.OWNER_CONSENT_MISSING))
                .isEqualTo(excluded);
    }

    @Test
    void theRuleAgainstLooseCablesIsMetWhereTheOldCablesGetCells() {
        var one = HandMade.sound();
        one.looseCable = Answer.NO;
        var d = ShippedConfig.get().room();
        var cells = new RoomSettings(
                d.designCableOutsideDiameterMm(),
                d.innerductToCableRatio(),
                d.cellsPerSleeve(),
                d.sleeveFabricMm(),
                d.sleevesByDuct(),
                d.fillLimitOneRatio(),
                d.fillLimitTwoRatio(),
                d.fillLimitMoreRatio(),
                d.boreAllowanceMm(),
                d.ovalAllowanceRatio(),
                true,
                d.oldCablesMayMove(),
                d.deadCablesComeOut());

        assertThat(new Ranking(SHIPPED, cells)
                        .rank(List.of(one.assessed()))
                        .get(0)
                        .rank())
                .isPresent();
        assertThat(ranked(one, SHIPPED).rank()).isEmpty();
    }

    /**
     * Pulled out at B the cable is held at A, and the other way round. At 110 % an end fails on paper: what fails there cannot
     * stand in for the end that does not.
     */
    @ParameterizedTest(name = "A {0} %, B {1} %, hold at A {2}, at B {3}: {4}")
    @CsvSource({
        "80, 50, UNKNOWN, UNKNOWN, better",
        "80, 50, YES, NO, better",
        "80, 50, NO, YES, other",
        "80, 50, NO, UNKNOWN, other",
        "80, 50, NO, NO, missing",
        "110, 50, YES, NO, better",
        "110, 50, NO, YES, missing",
        "130, 110, NO, YES, other",
        "130, 110, NO, NO, missing"
    })
    void whereTheBetterEndsAnchorHoldsNoCableTheOtherEndMayServe(
            double percentAtA, double percentAtB, Answer atA, Answer atB, String expected) {
        var one = HandMade.sound();
        one.percentAtA = percentAtA;
        one.percentAtB = percentAtB;
        one.fromSite = HandMade.hold(atA);
        one.toSite = HandMade.hold(atB);

        var verdict = ranked(one, SHIPPED).verdict();

        assertThat(verdict.exclusions().contains(Exclusion.NO_CABLE_HOLD)).isEqualTo(expected.equals("missing"));
        assertThat(verdict.cautions().contains(Caution.PULL_FROM_OTHER_END)).isEqualTo(expected.equals("other"));
        assertThat(WorkingEnd.utilisationPercent(one.assessed()))
                .isCloseTo(expected.equals("other") ? percentAtA : percentAtB, within(1e-9));
    }

    @Test
    void whereNoInnerductHoldsACableNothingNeedsHolding() {
        var one = HandMade.sound();
        one.contents = new Contents(List.of(HandMade.innerduct(List.of())), List.of(), true);
        one.fromSite = HandMade.hold(Answer.NO);
        one.toSite = HandMade.hold(Answer.NO);

        assertThat(ranked(one, SHIPPED).rank()).isPresent();
    }

    static Stream<Arguments> neighbours() {
        return Stream.of(
                neighbour("drawn the same way", true, one -> {}),
                neighbour("drawn the other way", true, one -> one.in("B", "V2", "V1")),
                neighbour("in another bank", false, one -> one.in("C", "V1", "V2")),
                neighbour("in no bank", false, one -> one.in("", "V1", "V2")),
                neighbour("to another vault", false, one -> one.in("B", "V1", "V3")),
                neighbour("of the same owner", true, one -> one.owner = " CITY"),
                neighbour("of another owner", false, one -> one.owner = "harbour"),
                neighbour("blocked", false, one -> one.condition = Condition.BLOCKED),
                neighbour("oval", false, one -> one.condition = Condition.OVAL),
                neighbour("of unknown condition", false, one -> one.condition = Condition.UNKNOWN),
                neighbour("of unknown contents", false, one -> one.contents = Contents.UNKNOWN),
                neighbour("refused by its owner", false, one -> one.consent = Answer.NO),
                neighbour(
                        "with a loose cable",
                        false,
                        one -> one.contents =
                                new Contents(List.of(), List.of(new Cable("c", 12, 0.2, Service.LIVE)), true)));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("neighbours")
    void anEmptyDuctBesideIsUsedFirst(String what, boolean excludes, HandMade neighbour) {
        var one = HandMade.named("one").in("B", "V1", "V2");
        one.owner = "City";

        var verdict = verdictOf("one", one.assessed(), neighbour.assessed());

        assertThat(verdict.exclusions().contains(Exclusion.EMPTY_DUCT_IN_BANK)).isEqualTo(excludes);
        assertThat(verdict.cautions().contains(Caution.EMPTY_DUCT_UNPROVED))
                .isEqualTo(List.of("oval", "of unknown condition").contains(what));
    }

    @Test
    void theEmptyDuctItselfIsNoReasonBesides() {
        var empty = HandMade.named("empty").empty().in("B", "V1", "V2");

        assertThat(verdictOf("empty", empty.assessed()).exclusions()).containsExactly(Exclusion.NO_INNERDUCT);
    }

    @Test
    void anAnswerOfEveryGateCarriesItsEvidence() {
        var one = HandMade.named("one").in("B", "V1", "V2");
        one.consent = Answer.NO;
        var empty = HandMade.named("empty").empty().in("B", "V2", "V1");
        empty.ductId = "D-9";
        var ranking = new Ranking(SHIPPED, ShippedConfig.get().room());
        Assessment assessed = one.assessed();

        List<GateAnswer> answers = ranking.gates(
                assessed, SpanList.of(List.of(assessed.span(), empty.assessed().span())));

        assertThat(answers).extracting(GateAnswer::gate).containsExactly(Exclusion.values());
        assertThat(answers).allSatisfy(answer -> assertThat(answer.evidence()).isNotBlank());
        assertThat(answers)
                .filteredOn(GateAnswer::holds)
                .extracting(GateAnswer::word, GateAnswer::evidence)
                .containsExactly(tuple("excluded", "consent: no"), tuple("excluded", "duct D-9 is empty and sound"));
    }

    private static Arguments with(Exclusion reason, Consumer<HandMade> change) {
        var one = HandMade.named("one");
        change.accept(one);
        return arguments(reason, one);
    }

    private static Arguments neighbour(String what, boolean excludes, Consumer<HandMade> change) {
        var one = HandMade.named("neighbour").empty().in("B", "V1", "V2");
        change.accept(one);
        return arguments(what, excludes, one);
    }

    /** Ranks the case beside an empty duct of bank B between V1 and V2, which concerns it only if it lies there too. */
    private static RankedSpan ranked(HandMade one, ScoringSettings settings) {
        var empty = HandMade.named("empty").empty().in("B", "V2", "V1");
        return find(
                one.id,
                new Ranking(settings, ShippedConfig.get().room()).rank(List.of(one.assessed(), empty.assessed())));
    }

    private static Verdict verdictOf(String id, Assessment... all) {
        return find(id, new Ranking(SHIPPED, ShippedConfig.get().room()).rank(Arrays.asList(all)))
                .verdict();
    }

    private static RankedSpan find(String id, List<RankedSpan> all) {
        return all.stream()
                .filter(row -> row.span().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void everyGateMayBeOpened() {
        var open = new EnumMap<Exclusion, Boolean>(Exclusion.class);
        EnumSet.allOf(Exclusion.class).forEach(reason -> open.put(reason, false));

        assertThat(cases().map(arguments -> ranked((HandMade) arguments.get()[1], SHIPPED.withGates(open))
                        .rank()))
                .allSatisfy(rank -> assertThat(rank).isPresent());
    }
}
