package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.effort.EffortAssessor;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.bore.Room;
import org.spanroom.model.fieldwork.WorkStatus;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.RuledPart;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.testing.Rooms;

class CautionsTest {
    static Stream<Arguments> cases() {
        return Stream.of(
                with(CautionKind.WORK_STOPPED, one -> one.reported(WorkStatus.STOPPED)),
                with(CautionKind.CONSENT_UNRECORDED, one -> one.consent = Answer.UNKNOWN),
                with(CautionKind.LOOSE_CABLE_UNRECORDED, one -> one.looseCable = Answer.UNKNOWN),
                with(CautionKind.CIRCUITS_AT_RISK, one -> one.circuits = OptionalInt.of(12)),
                with(CautionKind.JOINT_OWNERS, one -> one.jointOwners = "harbor"),
                with(CautionKind.WATER, one -> one.flooded = true),
                with(
                        CautionKind.WATER,
                        one -> one.toSite =
                                new VaultSite(OptionalDouble.empty(), Answer.YES, "roadway", Answer.UNKNOWN)),
                with(CautionKind.BAD_FRICTION, one -> one.badFrictionRatio = 2.1),
                with(
                        CautionKind.NIGHT_ONLY,
                        one -> one.permits = new Permits(
                                List.of(),
                                List.of(),
                                List.of(),
                                Map.of(ZoneRule.NIGHT_ONLY, new RuledPart(0, Optional.empty())))),
                with(CautionKind.CONTENTS_ASSUMED, one -> one.assumed = EnumSet.of(Term.CABLE_COUNT)),
                with(CautionKind.SIZES_ASSUMED, one -> one.assumed = EnumSet.of(Term.INSIDE_DIAMETER)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("cases")
    void aCautionIsToldAndExcludesNothing(CautionKind caution, HandMade one) {
        var row = ranking().rank(List.of(one.assessed())).get(0);

        assertThat(row.verdict().cautions()).extracting(Caution::key).containsExactly(caution.key());
        assertThat(row.rank()).isPresent();
    }

    /** Only a record of yes, and only of an innerduct that comes out. */
    @ParameterizedTest(name = "uncut at A {0}, at B {1}: {2}")
    @CsvSource({"YES, UNKNOWN, 1 at V1", "NO, YES, 1 at V2", "YES, YES, '1 at V1, 1 at V2'", "NO, NO, ", "UNKNOWN, NO, "
    })
    void anInnerductThatRunsUncutThroughAVaultIsACaution(Answer atA, Answer atB, String told) {
        var one = HandMade.sound();
        Innerduct innerduct = one.contents.innerducts().get(0).withUncut(atA, atB);
        one.contents = one.contents.withInnerducts(List.of(innerduct));
        Assessment plain = one.assessed();
        var assessor = new EffortAssessor(
                ShippedConfig.get().rates(), ShippedConfig.get().vaultKinds(), 0);
        var assessed = new Assessment(
                plain.span(),
                plain.bends(),
                plain.room(),
                plain.pull(),
                plain.permits(),
                assessor.assess(plain.span(), plain.room(), plain.pull(), plain.permits()));

        List<String> cautions = ranking().rank(List.of(assessed)).get(0).verdict().cautions().stream()
                .map(Caution::explanation)
                .toList();

        assertThat(cautions)
                .isEqualTo(
                        told == null
                                ? List.of()
                                : List.of(
                                        "innerduct runs uncut through a vault; cut it there first, around live cables: "
                                                + told));
    }

    @Test
    void noCircuitsAreNoRisk() {
        var one = HandMade.sound();
        one.circuits = OptionalInt.of(0);

        assertThat(cautions(one)).isEmpty();
    }

    /** 50 % used: friction that doubles the forces just stays within the limit, a little more does not. */
    @ParameterizedTest(name = "bad friction {0} times: {1}")
    @CsvSource({"1.99, false", "2, false", "2.01, true"})
    void badFrictionIsToldWhereItWouldPassALimit(double ratio, boolean told) {
        var one = HandMade.sound();
        one.badFrictionRatio = ratio;

        assertThat(cautions(one).contains(CautionKind.BAD_FRICTION.caution())).isEqualTo(told);
    }

    /** No record is no consent: it is requested, unless the gate already keeps the span out for it. */
    @ParameterizedTest(name = "consent {0}, unknown excludes {1}: {2}")
    @CsvSource({
        "YES, false, false",
        "YES, true, false",
        "UNKNOWN, false, true",
        "UNKNOWN, true, false",
        "NO, false, false",
        "NO, true, false"
    })
    void aConsentThatIsNotRecordedIsACaution(Answer consent, boolean unknownExcludes, boolean told) {
        ScoringSettings shipped = ShippedConfig.get().scoring();
        var settings = new ScoringSettings(
                shipped.criteria(),
                shipped.gates(),
                unknownExcludes,
                shipped.hardVaultKinds(),
                shipped.hardVaultSurfaces(),
                shipped.knowledge());
        var one = HandMade.sound();
        one.consent = consent;
        var ranking = new Ranking(settings, ShippedConfig.get().room());

        assertThat(ranking.rank(List.of(one.assessed())).get(0).verdict().cautions())
                .isEqualTo(told ? List.of(CautionKind.CONSENT_UNRECORDED.caution()) : List.of());
    }

    /** The rule on loose cables must be known wherever an innerduct may come out and leave a cable loose. */
    @ParameterizedTest(name = "loose cable allowed {0}, innerduct {1}: {2}")
    @CsvSource({
        "YES, true, false",
        "UNKNOWN, true, true",
        "NO, true, false",
        "YES, false, false",
        "UNKNOWN, false, false",
        "NO, false, false"
    })
    void aRuleOnLooseCablesThatIsNotRecordedIsACaution(Answer allowed, boolean holdsInnerduct, boolean told) {
        var one = holdsInnerduct ? HandMade.sound() : HandMade.sound().empty();
        one.looseCable = allowed;

        assertThat(cautions(one).contains(CautionKind.LOOSE_CABLE_UNRECORDED.caution()))
                .isEqualTo(told);
    }

    @Test
    void cautionsOfMissingRecordsSayWhatToGet() {
        assertThat(CautionKind.CONSENT_UNRECORDED.caution().explanation()).contains("get it in writing");
        assertThat(CautionKind.LOOSE_CABLE_UNRECORDED.caution().explanation()).contains("ask the owner");
    }

    @Test
    void aCautionNamesWhatIsRecorded() {
        var one = HandMade.sound();
        one.circuits = OptionalInt.of(12);
        one.jointOwners = "harbor";

        assertThat(cautions(one))
                .extracting(Caution::explanation)
                .containsExactly("live circuits at risk: 12", "joint owners must consent: harbor");
    }

    @Test
    void aWarningOfThePullIsReported() {
        assertThat(cautions(withWarnings(LimitKind.TOTAL_BENDS))).containsExactly(CautionKind.MANY_BENDS.caution());
        assertThat(cautions(withWarnings(LimitKind.SECTION_LENGTH)))
                .containsExactly(CautionKind.LONG_SECTION.caution());
    }

    /** Three equal items may lock between ratios of 2.8 and 3.2 (common practice, no source, as in the choice itself). */
    @ParameterizedTest(name = "jam ratio {0}: {1}")
    @CsvSource({"2.7, false", "3, true", "3.3, false"})
    void equalInnerductsThatMayJamAreReported(double jamRatio, boolean reported) {
        Room room = Rooms.of(Optional.empty(), OptionalDouble.of(jamRatio), 3, 0, 3, 9, "", Rooms.PACKED);

        assertThat(cautions(in(room))).isEqualTo(reported ? List.of(CautionKind.MAY_JAM.caution()) : List.of());
    }

    @Test
    void recordsThatContradictThemselvesAreReported() {
        Room room = Rooms.of(Optional.of("wider than its duct"), OptionalDouble.empty(), 3, 0, 3, 9, "", Rooms.PACKED);

        assertThat(cautions(in(room))).containsExactly(CautionKind.CONTENTS_CANNOT_FIT.caution());
    }

    private static Assessment withWarnings(LimitKind warning) {
        Assessment sound = HandMade.sound().assessed();
        PullAssessment pull = sound.pull();
        var warned =
                new PullAssessment(pull.outcome(), pull.judgedBy(), pull.pulls(), Set.of(warning), pull.assumptions());
        return new Assessment(sound.span(), sound.bends(), sound.room(), warned, sound.permits());
    }

    private static Assessment in(Room room) {
        Assessment sound = HandMade.sound().assessed();
        return new Assessment(sound.span(), sound.bends(), room, sound.pull(), sound.permits());
    }

    private static List<Caution> cautions(Assessment one) {
        return ranking().rank(List.of(one)).get(0).verdict().cautions();
    }

    private static Arguments with(CautionKind caution, Consumer<HandMade> change) {
        var one = HandMade.sound();
        change.accept(one);
        return arguments(caution, one);
    }

    private static List<Caution> cautions(HandMade one) {
        return cautions(one.assessed());
    }

    private static Ranking ranking() {
        return new Ranking(ShippedConfig.get().scoring(), ShippedConfig.get().room());
    }
}
