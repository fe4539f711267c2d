package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
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
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.model.rank.Verdict;
import org.spanroom.testing.Changed;
import org.spanroom.testing.Rooms;

class GatesTest {
    private static final ScoringSettings SHIPPED = ShippedConfig.get().scoring();

    private static final RoomSettings ENOUGH_FROM_SIX =
            Changed.of(ShippedConfig.get().room(), "enoughPositions", 6);

    static Stream<Arguments> cases() {
        return Stream.of(
                with(Gate.WORK_DONE, one -> one.reported(WorkStatus.DONE)),
                with(Gate.IN_WORK, one -> one.reported(WorkStatus.IN_WORK)),
                with(Gate.CONTENTS_UNKNOWN, one -> one.contents = Contents.UNKNOWN),
                with(Gate.NO_INNERDUCT, HandMade::empty),
                with(Gate.NO_OUTER_DUCT, one -> one.directBuried = true),
                with(Gate.LOOP, one -> one.to = one.from),
                with(Gate.DUCT_COLLAPSED, one -> one.condition = Condition.COLLAPSED),
                with(Gate.DUCT_BLOCKED, one -> one.condition = Condition.BLOCKED),
                with(Gate.INNERDUCT_FIXED, one -> one.fixed = Answer.YES),
                with(Gate.SPLICE_INSIDE, one -> one.splice = Answer.YES),
                with(Gate.NO_CABLE_HOLD, one -> {
                    one.fromSite = HandMade.hold(Answer.NO);
                    one.toSite = HandMade.hold(Answer.NO);
                }),
                with(Gate.SERVICE_UNKNOWN, one -> one.contents = HandMade.holding(Service.UNKNOWN)),
                with(Gate.ALL_CABLES_DEAD, one -> one.contents = HandMade.holding(Service.DEAD)),
                with(Gate.OWNER_CONSENT_MISSING, one -> one.consent = Answer.NO),
                with(Gate.LOOSE_CABLE_FORBIDDEN, one -> one.looseCable = Answer.NO),
                with(Gate.EMBARGO, one -> one.embargo = Optional.of(LocalDate.of(2027, 3, 31))),
                with(Gate.EMPTY_DUCT_IN_BANK, one -> one.in("B", "V1", "V2")),
                with(Gate.ROOM_WITHOUT_RECOVERY, one -> one.positionsNow = 6),
                with(Gate.PULL_FAILS, one -> {
                    one.percentAtA = 230;
                    one.percentAtB = 210;
                }),
                with(Gate.NO_ROOM_GAINED, one -> one.newCables = 0));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void aShutGateExcludesForItsReasonAlone(Gate gate, HandMade one) {
        RankedSpan row = ranked(one, SHIPPED.withGates(Map.of(gate.key(), true)));

        assertThat(row.rank()).isEmpty();
        assertThat(row.verdict().exclusions()).containsExactly(gate.exclusion());
        assertThat(row.verdict().findFirst()).contains(gate.exclusion());
        assertThat(row.verdict().waived()).isEmpty();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void anOpenGateRanksTheSpanAndTellsTheReasonAsACaution(Gate gate, HandMade one) {
        RankedSpan row = ranked(one, SHIPPED.withGates(Map.of(gate.key(), false)));

        assertThat(row.rank()).isPresent();
        assertThat(row.verdict().exclusions()).isEmpty();
        assertThat(row.verdict().waived()).containsExactly(gate.exclusion());
        assertThat(row.verdict().cautionKeys()).startsWith(gate.key());
    }

    @ParameterizedTest
    @EnumSource
    void everyGateHasItsCase(Gate gate) {
        assertThat(cases().map(arguments -> arguments.get()[0])).contains(gate);
    }

    @Test
    void theShippedScoringSwitchesEveryGateAndNoOther() throws IOException {
        List<String> switches = Files.readAllLines(Path.of("config", "scoring.yaml")).stream()
                .dropWhile(line -> !line.equals("gates:"))
                .skip(1)
                .takeWhile(line -> line.startsWith("  "))
                .map(line -> line.substring(0, line.indexOf(':')).strip())
                .toList();

        assertThat(switches).isEqualTo(Ranking.gateKeys());
        assertThat(SHIPPED.gates()).containsOnlyKeys(Ranking.gateKeys());
    }

    @Test
    void aSwitchOfNoGateIsRefusedByName() {
        var settings = SHIPPED.withGates(Map.of("no_rome_gained", true));

        assertThatThrownBy(() -> new Ranking(settings, ShippedConfig.get().room()))
                .hasMessageContaining("no_rome_gained")
                .hasMessageContaining("no_room_gained");
    }

    @ParameterizedTest
    @EnumSource(names = {"PLANNED", "PERMITTED", "STOPPED"})
    void workThatIsNotBegunOrWasStoppedKeepsASpanACandidate(WorkStatus status) {
        assertThat(ranked(HandMade.sound().reported(status), SHIPPED).rank()).hasValue(1);
    }

    /** Nothing that is left out of a duct hides that this was the work. */
    @Test
    void doneIsTheFirstReasonOfAnEmptiedDuct() {
        RankedSpan row = ranked(HandMade.sound().empty().reported(WorkStatus.DONE), SHIPPED);

        assertThat(row.verdict().findFirst()).contains(Gate.WORK_DONE.exclusion());
        assertThat(row.verdict().exclusions()).contains(Gate.NO_INNERDUCT.exclusion());
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
                .extracting(Exclusion::key)
                .containsExactly("duct_collapsed", "splice_inside", "service_unknown", "owner_consent_missing");
    }

    @Test
    void whereNothingCanLeaveADuctNothingThatFollowsIsToldBesides() {
        var one = HandMade.sound().empty();
        one.contents = new Contents(List.of(), List.of(new Cable("c", 12, 0.2, Service.DEAD)), true);
        one.splice = Answer.YES;
        one.looseCable = Answer.NO;

        assertThat(ranked(one, SHIPPED).verdict().exclusions()).containsExactly(Gate.NO_INNERDUCT.exclusion());
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

        assertThat(ranked(one, settings).verdict().exclusions().contains(Gate.OWNER_CONSENT_MISSING.exclusion()))
                .isEqualTo(excluded);
    }

    /** Up to and on its last day; without a day of the run no embargo is treated as past. */
    @ParameterizedTest(name = "on {0}, gate shut {1}: excluded {2}, caution {3}")
    @CsvSource({
        "2027-03-30, true, true, false",
        "2027-03-31, true, true, false",
        "2027-04-01, true, false, false",
        ", true, true, false",
        "2027-03-30, false, false, true",
        "2027-03-31, false, false, true",
        "2027-04-01, false, false, false",
        ", false, false, true"
    })
    void anEmbargoExcludesUpToItsLastDay(LocalDate onDate, boolean shut, boolean excluded, boolean caution) {
        var one = HandMade.sound();
        one.embargo = Optional.of(LocalDate.of(2027, 3, 31));
        ScoringSettings settings = SHIPPED.withGates(Map.of("embargo", shut));
        RoomSettings room = ShippedConfig.get().room();
        var ranking = onDate == null ? new Ranking(settings, room) : new Ranking(settings, room, onDate);

        RankedSpan row = ranking.rank(List.of(one.assessed())).get(0);

        assertThat(row.verdict().exclusions()).isEqualTo(excluded ? List.of(Gate.EMBARGO.exclusion()) : List.of());
        assertThat(row.verdict().cautionKeys()).isEqualTo(caution ? List.of("embargo") : List.of());
        assertThat(row.rank().isPresent()).isNotEqualTo(excluded);
    }

    @Test
    void theEvidenceOfAnEmbargoNamesItsDay() {
        var one = HandMade.sound();
        one.embargo = Optional.of(LocalDate.of(2027, 3, 31));
        RoomSettings room = ShippedConfig.get().room();
        Assessment assessed = one.assessed();
        SpanList spans = SpanList.of(List.of(assessed.span()));

        assertThat(new Ranking(SHIPPED, room, LocalDate.of(2027, 3, 31))
                        .among(spans)
                        .gates(assessed))
                .extracting(GateAnswer::evidence)
                .contains("embargo until 2027-03-31");
        assertThat(new Ranking(SHIPPED, room, LocalDate.of(2027, 4, 1))
                        .among(spans)
                        .gates(assessed))
                .extracting(GateAnswer::evidence)
                .contains("embargo until 2027-03-31, expired");
    }

    @Test
    void theRuleAgainstLooseCablesIsMetWhereTheOldCablesGetCells() {
        var one = HandMade.sound();
        one.looseCable = Answer.NO;
        RoomSettings cells = Changed.of(ShippedConfig.get().room(), "oldCablesNeedCells", true);

        assertThat(new Ranking(SHIPPED, cells)
                        .rank(List.of(one.assessed()))
                        .get(0)
                        .rank())
                .isPresent();
        assertThat(ranked(one, SHIPPED).rank()).isEmpty();
    }

    /**
     * Pulled out at B the cable is held at A, and the other way round. At 110 % an end fails on paper: what fails there cannot
     * replace the end that does not.
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

        assertThat(verdict.exclusions().contains(Gate.NO_CABLE_HOLD.exclusion()))
                .isEqualTo(expected.equals("missing"));
        assertThat(verdict.cautions().contains(CautionKind.PULL_FROM_OTHER_END.caution()))
                .isEqualTo(expected.equals("other"));
        assertThat(WorkingEnd.utilizationPercent(one.assessed()))
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

    static Stream<Arguments> neighbors() {
        return Stream.of(
                neighbor("drawn the same way", true, one -> {}),
                neighbor("drawn the other way", true, one -> one.in("B", "V2", "V1")),
                neighbor("in another bank", false, one -> one.in("C", "V1", "V2")),
                neighbor("in no bank", false, one -> one.in("", "V1", "V2")),
                neighbor("to another vault", false, one -> one.in("B", "V1", "V3")),
                neighbor("of the same owner", true, one -> one.owner = " CITY"),
                neighbor("of another owner", false, one -> one.owner = "harbor"),
                neighbor("blocked", false, one -> one.condition = Condition.BLOCKED),
                neighbor("oval", false, one -> one.condition = Condition.OVAL),
                neighbor("of unknown condition", false, one -> one.condition = Condition.UNKNOWN),
                neighbor("of unknown contents", false, one -> one.contents = Contents.UNKNOWN),
                neighbor("refused by its owner", false, one -> one.consent = Answer.NO),
                neighbor(
                        "with a loose cable",
                        false,
                        one -> one.contents =
                                new Contents(List.of(), List.of(new Cable("c", 12, 0.2, Service.LIVE)), true)));
    }

    @ParameterizedTest(name = "{0}: {1}")
    @MethodSource("neighbors")
    void anEmptyDuctBesideIsUsedFirst(String what, boolean excludes, HandMade neighbor) {
        var one = HandMade.named("one").in("B", "V1", "V2");
        one.owner = "City";

        var verdict = verdictOf("one", one.assessed(), neighbor.assessed());

        assertThat(verdict.exclusions().contains(Gate.EMPTY_DUCT_IN_BANK.exclusion()))
                .isEqualTo(excludes);
        assertThat(verdict.cautions().contains(CautionKind.EMPTY_DUCT_UNPROVED.caution()))
                .isEqualTo(List.of("oval", "of unknown condition").contains(what));
    }

    @Test
    void theEmptyDuctItselfIsNoReasonBesides() {
        var empty = HandMade.named("empty").empty().in("B", "V1", "V2");

        assertThat(verdictOf("empty", empty.assessed()).exclusions()).containsExactly(Gate.NO_INNERDUCT.exclusion());
    }

    @Test
    void anAnswerOfEveryGateCarriesItsEvidence() {
        var one = HandMade.named("one").in("B", "V1", "V2");
        one.consent = Answer.NO;
        var empty = HandMade.named("empty").empty().in("B", "V2", "V1");
        empty.ductId = "D-9";
        var ranking = new Ranking(SHIPPED, ShippedConfig.get().room());
        Assessment assessed = one.assessed();

        List<GateAnswer> answers = ranking.among(
                        SpanList.of(List.of(assessed.span(), empty.assessed().span())))
                .gates(assessed);

        assertThat(answers).extracting(answer -> answer.gate().key()).isEqualTo(Ranking.gateKeys());
        assertThat(answers).allSatisfy(answer -> assertThat(answer.evidence()).isNotBlank());
        assertThat(answers)
                .filteredOn(GateAnswer::holds)
                .extracting(GateAnswer::word, GateAnswer::evidence)
                .containsExactly(tuple("excluded", "consent: no"), tuple("excluded", "duct D-9 is empty and sound"));
    }

    private static Arguments with(Gate gate, Consumer<HandMade> change) {
        var one = HandMade.named("one");
        change.accept(one);
        return arguments(gate, one);
    }

    private static Arguments neighbor(String what, boolean excludes, Consumer<HandMade> change) {
        var one = HandMade.named("neighbor").empty().in("B", "V1", "V2");
        change.accept(one);
        return arguments(what, excludes, one);
    }

    /** Ranks the case beside an empty duct of bank B between V1 and V2, which concerns it only if it is there too. */
    private static RankedSpan ranked(HandMade one, ScoringSettings settings) {
        var empty = HandMade.named("empty").empty().in("B", "V2", "V1");
        return find(one.id, new Ranking(settings, ENOUGH_FROM_SIX).rank(List.of(one.assessed(), empty.assessed())));
    }

    /** As many positions as are enough shut the gate; one fewer, or the shipped 0, leaves a caution where some are beside. */
    @ParameterizedTest(name = "{0} beside today, enough from {1}: excluded {2}, caution {3}")
    @CsvSource({
        "6, 6, true, false",
        "3, 6, false, true",
        "0, 6, false, false",
        "6, 0, false, true",
        "0, 0, false, false"
    })
    void roomThatNeedsNoRecoveryExcludesOrIsACaution(int besideNow, int enough, boolean excluded, boolean caution) {
        Assessment sound = HandMade.sound().assessed();
        var one =
                new Assessment(sound.span(), sound.bends(), Rooms.beside(besideNow, 9), sound.pull(), sound.permits());
        RoomSettings rules = Changed.of(ShippedConfig.get().room(), "enoughPositions", enough);

        Verdict verdict = new Ranking(SHIPPED, rules).rank(List.of(one)).get(0).verdict();

        assertThat(verdict.exclusions().contains(Gate.ROOM_WITHOUT_RECOVERY.exclusion()))
                .isEqualTo(excluded);
        assertThat(verdict.cautionKeys().contains(CautionKind.POSITIONS_BESIDE_NOW.key()))
                .isEqualTo(caution);
        if (caution) {
            assertThat(verdict.cautions().get(0).explanation()).endsWith(": " + besideNow);
        }
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
        var open = new TreeMap<String, Boolean>();
        Ranking.gateKeys().forEach(gate -> open.put(gate, false));

        assertThat(cases().map(arguments -> ranked((HandMade) arguments.get()[1], SHIPPED.withGates(open))
                        .rank()))
                .allSatisfy(rank -> assertThat(rank).isPresent());
    }

    /** What was recorded and could not be used is never said not to be recorded. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "CONTENTS_UNKNOWN, innerduct_count",
        "CONTENTS_UNKNOWN, cable_count",
        "CONTENTS_UNKNOWN, cable_mass",
        "CONTENTS_UNKNOWN, contents_row",
        "DUCT_COLLAPSED, condition",
        "INNERDUCT_FIXED, innerduct_fixed",
        "SPLICE_INSIDE, splice_inside",
        "OWNER_CONSENT_MISSING, owner_consent",
        "LOOSE_CABLE_FORBIDDEN, loose_cable_allowed"
    })
    void theEvidenceSaysThatAValueWasRejected(Gate gate, String name) {
        var one = HandMade.sound();
        one.condition = Condition.UNKNOWN;
        one.consent = Answer.UNKNOWN;
        one.looseCable = Answer.UNKNOWN;
        if (gate == Gate.CONTENTS_UNKNOWN) {
            one.contents = Contents.UNKNOWN;
        }
        Assessment plain = one.assessed();
        var rejected = List.of(new RejectedValue(name, "odd", "no word of any list"));
        Span span = Changed.of(plain.span(), "duct", Changed.of(plain.span().duct(), "rejected", rejected));

        assertThat(evidence(gate, plain)).doesNotContain("odd").contains("not recorded");
        assertThat(evidence(gate, Changed.of(plain, "span", span)))
                .contains("recorded as 'odd' but rejected: no word of any list")
                .doesNotContain("not recorded");
    }

    private static String evidence(Gate gate, Assessment one) {
        SpanList spans = SpanList.of(List.of(one.span()));
        return new Ranking(SHIPPED, ShippedConfig.get().room())
                .among(spans).gates(one).stream()
                        .filter(answer -> answer.gate().equals(gate.exclusion()))
                        .findFirst()
                        .orElseThrow()
                        .evidence();
    }
}
