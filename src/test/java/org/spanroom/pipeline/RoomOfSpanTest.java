package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.SpanList;
import org.spanroom.model.network.Vault;
import org.spanroom.model.pull.Beside;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.permit.PermitAssessor;
import org.spanroom.testing.Changed;
import org.spanroom.testing.Ducts;

/** What the room of a duct means for the rest of a span's assessment. */
class RoomOfSpanTest {
    private static final RunConfig CONFIG = ShippedConfig.get();
    private static final double IN = 25.4;
    private static final Cable CABLE = new Cable("c", 0.5 * IN, 0.14, Service.LIVE);

    /** 1 in by ASTM D3035, SDR 11: nine cables fit beside one of them in a 4-in duct. */
    private static final Innerduct INCH = new Innerduct("i", 1.315 * IN, 0.120 * IN, List.of(CABLE));

    private final SpanAssessor assessor =
            new SpanAssessor(CONFIG, new PermitAssessor(List.of(), CONFIG.permit(), ConfiguredParts.access(CONFIG)), 1);

    @Test
    void usingTodaysRoomFirstMakesALaterPullHeavier() {
        Span span = span(new Contents(List.of(INCH), List.of(), true), List.of());

        Assessment assessed = assessor.assess(0, span);

        PullAssessment later = assessed.laterPull().orElseThrow();
        assertThat(assessed.room().now().orElseThrow().newCables()).isEqualTo(9);
        for (SpanEnd end : SpanEnd.values()) {
            assertThat(later.largestPullN(end, Friction.DRY))
                    .isGreaterThan(1.2 * assessed.pull().largestPullN(end, Friction.DRY));
        }
        PullAssessment byHand = SpanAssessor.pulls(CONFIG).assess(span, Bends.NONE, 1, new Beside(3, 9 * 0.14));
        assertThat(later.utilizationPercent()).isCloseTo(byHand.utilizationPercent(), within(1e-9));
    }

    @Test
    void whereNothingLiesBesideNothingChangesLater() {
        var wide = new Innerduct("i", 1.66 * IN, 0.151 * IN, List.of(CABLE));
        var full = new Contents(List.of(wide, wide, wide), List.of(), true);

        assertThat(assessor.assess(0, span(full, List.of())).laterPull()).isEmpty();
    }

    /** Score, fill and positions of unknown contents are empty; every other figure is kept. */
    @Test
    void unknownContentsHaveNoScore() {
        Assessment assessed = assessor.assess(0, span(Contents.UNKNOWN, List.of()));

        RankedSpan row = ConfiguredParts.ranking(CONFIG, LearnedChances.NONE)
                .rank(List.of(assessed))
                .get(0);

        assertThat(row.score().totalPoints()).isNaN();
        assertThat(row.rank()).isEmpty();
        assertThat(row.score().parts())
                .filteredOn(part ->
                        Set.of("room_gained", "shortage", "ease_pull", "saving").contains(part.criterion()))
                .hasSize(4)
                .allSatisfy(part -> assertThat(part.points()).isNaN());
        assertThat(row.score().parts())
                .filteredOn(part -> part.criterion().equals("ease_bends"))
                .allSatisfy(part -> assertThat(part.points()).isNotNaN());
    }

    @Test
    void withItsGateOpenASpanOfUnknownContentsComesLast() {
        var config =
                Changed.of(CONFIG, "scoring", CONFIG.scoring().withGates(java.util.Map.of("contents_unknown", false)));
        Assessment unknown = assessor.assess(0, span(Contents.UNKNOWN, List.of()));

        RankedSpan row = ConfiguredParts.ranking(config, LearnedChances.NONE)
                .rank(List.of(unknown))
                .get(0);

        assertThat(row.rank()).hasValue(1);
        assertThat(row.score().totalPoints()).isNaN();
    }

    /** One innerduct and 400 cells: the room is unknown, though the contents are not, and every place that says so says why. */
    @Test
    void moreThanACrossSectionIsCalculatedForIsCalledSo() {
        List<Sleeve> sleeves = Collections.nCopies(4, new Sleeve("s", 100, 0, List.of()));
        Assessment assessed =
                assessor.assess(0, span(new Contents(List.of(INCH), sleeves, List.of(), true), List.of()));
        var findings = new FindingLog();

        new DataDoubts(findings).report(assessed);

        assertThat(assessed.room().now()).isEmpty();
        assertThat(findings.all()).singleElement().satisfies(found -> {
            assertThat(found.code()).isEqualTo(FindingCode.CONTENTS_TOO_MANY);
            assertThat(found.detail()).startsWith("1 innerduct, 1 cable and 400 cells of sleeves: ");
        });
        assertThat(ConfiguredParts.ranking(CONFIG, LearnedChances.NONE)
                        .among(SpanList.of(List.of(assessed.span())))
                        .gates(assessed))
                .filteredOn(answer -> answer.gate().key().equals("no_room_gained"))
                .extracting(GateAnswer::evidence)
                .containsExactly("unknown because the duct holds more than a cross-section is calculated for");
    }

    @Test
    void aFurtherCableOfUnknownContentsLeavesThemUnknown() {
        var variants = new DuctVariants(0.06, CONFIG.assumed());

        assertThat(variants.withOneCableMore(span(Contents.UNKNOWN, List.of()).duct())
                        .contents()
                        .known())
                .isFalse();
    }

    @Test
    void aFurtherCableTakesAFreeCellBeforeItLiesLoose() {
        var variants = new DuctVariants(0.06, CONFIG.assumed());
        var contents = new Contents(List.of(INCH), List.of(new Sleeve("s", 2, 1, List.of())), List.of(), true);

        Contents one =
                variants.withOneCableMore(span(contents, List.of()).duct()).contents();
        Contents two = variants.withOneCableMore(span(one, List.of()).duct()).contents();

        assertThat(one.sleeves().get(0).cables()).hasSize(1);
        assertThat(one.looseCables()).isEmpty();
        assertThat(two.sleeves()).isEqualTo(one.sleeves());
        assertThat(two.looseCables()).hasSize(1);
        assertThat(one.innerducts()).isEqualTo(contents.innerducts());
    }

    @Test
    void assumedWidthsOfCablesInSleevesVaryToo() {
        var contents = new Contents(List.of(INCH), List.of(new Sleeve("s", 2, 0, List.of(CABLE))), List.of(), true);
        Duct duct = Changed.of(span(contents, List.of()).duct(), "assumed", Set.of(Term.CABLE_OUTSIDE_DIAMETER));

        Contents wider = new DuctVariants(0.06, CONFIG.assumed()).tighter(duct).contents();

        assertThat(wider.sleeves().get(0).cables().get(0).outsideDiameterMm())
                .isCloseTo(1.06 * CABLE.outsideDiameterMm(), within(1e-9));
        assertThat(wider.sleeves().get(0).cells()).isEqualTo(2);
    }

    private static Span span(Contents contents, List<RejectedValue> rejected) {
        Line line = Line.ofXy(0, 0, 100, 0);
        return new Span(
                "s", duct(contents, rejected), List.of("r"), vault("A"), vault("B"), line, line, 100, 100, 0, 0, "");
    }

    private static Duct duct(Contents contents, List<RejectedValue> rejected) {
        Duct plain = Ducts.sound(BoreShape.ROUND, 3.998 * IN, contents);
        return Changed.of(plain, "rejected", rejected);
    }

    private static Vault vault(String id) {
        return new Vault(0, id, 0, 0, List.of(), OptionalDouble.empty(), "");
    }
}
