package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.bore.RoomAssessorTest.cable;
import static org.spanroom.bore.RoomAssessorTest.duct;
import static org.spanroom.bore.RoomAssessorTest.holding;
import static org.spanroom.bore.RoomAssessorTest.round;
import static org.spanroom.bore.RoomAssessorTest.settings;

import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.testing.Changed;

class CrossSectionTest {
    private static final double IN = 25.4;

    private final RoomAssessor assessor = new RoomAssessor(ShippedConfig.get().room());

    @Test
    void theArrangementsBeforeAndAfterHoldEverythingWithoutOverlap() {
        CrossSection section = section(round(3.998, holding(List.of(0.5, 0.5, 0.75), 0)));

        Arrangement before = section.before().arrangement().orElseThrow();
        Arrangement after = last(section).after().arrangement().orElseThrow();
        assertThat(kinds(before, Kind.INNERDUCT)).hasSize(3);
        assertThat(kinds(before, Kind.CABLE))
                .hasSize(3)
                .allSatisfy(cable -> assertThat(cable.within()).isNotNegative());
        assertThat(kinds(after, Kind.INNERDUCT)).isEmpty();
        assertThat(kinds(after, Kind.CABLE)).hasSize(3);
        assertThat(kinds(after, Kind.NEW_CABLE)).hasSize(9);
        assertThat(before.overlapMm()).isLessThanOrEqualTo(1e-6);
        assertThat(after.overlapMm()).isLessThanOrEqualTo(1e-6);
    }

    /** Three circles of 1.660 in need 3.5768 in (ratio 1 + 2 / sqrt(3)): 0.421 in to spare in 3.998 in. */
    @Test
    void theMarginIsWhatTheBoreCouldBeNarrower() {
        CrossSection section = section(round(3.998, holding(List.of(0.5, 0.5, 0.75), 0)));

        assertThat(section.before().outcome()).isEqualTo(PackingOutcome.FITS);
        assertThat(section.before().marginMm() / IN).isCloseTo(0.4212, within(0.0001));
    }

    /** Four circles of 1.660 in need 4.0076 in: 0.0096 in more than 4-in Schedule 40 has, 0.042 in less than type C. */
    @Test
    void recordsThatCannotBeTrueAreNamedWithTheirProof() {
        Room impossible = assessor.assess(round(3.998, holding(List.of(0.5, 0.5, 0.5, 0.5), 0)));

        assertThat(impossible.findContradiction())
                .hasValueSatisfying(text -> assertThat(text)
                        .contains("4 innerducts")
                        .contains("0.24 mm too small")
                        .contains("proven minimum bore for equal circles"));
        CrossSection section = impossible.crossSection().orElseThrow();
        assertThat(section.before().outcome()).isEqualTo(PackingOutcome.DOES_NOT_FIT);
        assertThat(section.before().marginMm() / IN).isCloseTo(-0.0096, within(0.00005));
        assertThat(assessor.assess(round(4.050, holding(List.of(0.5, 0.5, 0.5, 0.5), 0)))
                        .findContradiction())
                .isEmpty();
    }

    @Test
    void aCableWiderThanItsInnerductIsAContradictionToo() {
        Room room = assessor.assess(round(3.998, holding(List.of(1.5), 0)));

        assertThat(room.findContradiction())
                .hasValueSatisfying(text -> assertThat(text).contains("cables within an innerduct"));
    }

    @Test
    void packingBindsWhereFillWouldAllowMore() {
        // a 1-in cable and five of 0.25 in in a 2-in bore leave no place for three of 13.7 mm, though fill is below 40
        // %
        var innerduct = new Innerduct("i", 1.315 * IN, 0.1 * IN, List.of(cable(1.0, Service.LIVE)));
        Duct narrow = round(1.92, new Contents(List.of(innerduct), List.of(cable(0.9, Service.LIVE)), true));
        var wideLimits = withFill(0.9);

        Room room = new RoomAssessor(wideLimits).assess(narrow);

        assertThat(room.bindingRule()).isEqualTo(Room.PACKING);
        assertThat(room.newCables()).isZero();
        assertThat(room.proposal().orElseThrow().nextSleeve()).isPresent();
    }

    @Test
    void anOvalDuctTakesLess() {
        Duct sound = duct(2.047, holding(List.of(0.5), 0), false, Condition.SOUND);
        Duct oval = duct(2.047, holding(List.of(0.5), 0), false, Condition.OVAL);

        assertThat(after(oval).marginMm()).isCloseTo(after(sound).marginMm() - 0.05 * 2.047 * IN, within(1e-6));
    }

    /** 1.05 x 3.998 / 1.315 = 3.192: published worked value for three 1-in innerducts in a 4-in Schedule 40 duct. */
    @Test
    void threeEqualInnerductsMayJam() {
        var inch = new Innerduct("i", 1.315 * IN, 0.120 * IN, List.of());
        CrossSection section = section(round(3.998, new Contents(List.of(inch, inch, inch), List.of(), true)));

        assertThat(section.jamRatio().orElseThrow()).isCloseTo(3.192, within(0.0005));
        assertThat(section.mayJam()).isTrue();
        assertThat(section(round(3.998, holding(List.of(0.5, 0.5, 0.5), 0))).mayJam())
                .isFalse();
        assertThat(section(round(3.998, holding(List.of(0.5, 0.5), 0))).jamRatio())
                .isEmpty();
    }

    @Test
    void everyNumberOfPullsIsAChoiceEmptyOnesFirst() {
        Room room = assessor.assess(round(4.05, holding(List.of(0.5, 0.5), 2)));

        List<PullChoice> choices = room.crossSection().orElseThrow().choices();

        assertThat(choices).extracting(PullChoice::innerductsOut).containsExactly(0, 1, 2, 3, 4);
        assertThat(choices).extracting(PullChoice::emptyOut).containsExactly(0, 1, 2, 2, 2);
        assertThat(choices)
                .extracting(choice -> choice.positions().inInnerducts())
                .containsExactly(2, 1, 0, 0, 0);
        assertThat(choices).extracting(PullChoice::innerductsLeft).containsExactly(4, 3, 2, 1, 0);
        assertThat(choices).extracting(PullChoice::newCables).isSorted();
        assertThat(choices.get(4).newCables()).isEqualTo(room.newCables());
    }

    @Test
    void cablesRestAtTheBottom() {
        CrossSection section = section(round(3.998, holding(List.of(0.5), 0)));

        PlacedCircle innerduct = kinds(section.before().arrangement().orElseThrow(), Kind.INNERDUCT)
                .get(0);
        PlacedCircle cable =
                kinds(section.before().arrangement().orElseThrow(), Kind.CABLE).get(0);
        assertThat(innerduct.yMm()).isCloseTo(-(3.998 - 1.660) / 2 * IN, within(0.02));
        assertThat(cable.yMm() - innerduct.yMm()).isCloseTo(-(1.660 - 0.302 - 0.5) / 2 * IN, within(0.02));
        assertThat(last(section).after().arrangement().orElseThrow().circles())
                .allSatisfy(circle -> assertThat(circle.yMm()).isLessThan(10));
    }

    @Test
    void aSquareBoreHasItsOwnArrangement() {
        Duct clay = new Duct(
                "d",
                "",
                BoreShape.SQUARE,
                3.5 * IN,
                "",
                "clay",
                false,
                holding(List.of(0.5, 0.5, 0.5, 0.5), 0),
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                Set.of());

        CrossSection section = section(clay);

        assertThat(section.before().outcome()).isEqualTo(PackingOutcome.FITS);
        assertThat(section.before().marginMm() / IN).isCloseTo(0.18, within(1e-4));
        assertThat(section.before().arrangement().orElseThrow().overlapMm()).isLessThanOrEqualTo(1e-6);
    }

    @Test
    void unknownContentsHaveNoCrossSection() {
        assertThat(assessor.assess(round(4, Contents.UNKNOWN)).crossSection()).isEmpty();
    }

    @Test
    void cablesThatMayNotMoveLeaveNoRoomUnderTheOwnersRule() {
        Room room = new RoomAssessor(settings(true, false)).assess(round(3.998, holding(List.of(0.5), 0)));

        assertThat(room.newCables()).isZero();
        assertThat(room.bindingRule()).isEqualTo(Room.OLD_CABLES_MAY_NOT_MOVE);
    }

    @Test
    void cellsOfOneSleeveAreAsManyAsItHas() {
        Arrangement after =
                after(round(3.998, holding(List.of(0.5, 0.5), 0))).arrangement().orElseThrow();

        assertThat(kinds(after, Kind.NEW_CABLE))
                .extracting(PlacedCircle::sleeve)
                .containsExactlyInAnyOrder(1, 1, 1, 2, 2, 2, 3, 3, 3);
    }

    /** Common practice, no source: 3, 6, 9 new cables in 2-, 3-, 4-in ducts; here with proof that they go in. */
    @ParameterizedTest(name = "{0} in with {1} cables: {2} new")
    @CsvSource({"2.047, 1, 3", "2.083, 1, 3", "3.042, 2, 6", "3.090, 3, 6", "3.998, 3, 9", "4.289, 4, 9"})
    void usualContentsGiveThreeSixNineByPacking(double insideIn, int cables, int newCables) {
        Room room = assessor.assess(round(insideIn, holding(Collections.nCopies(cables, 0.5), 0)));

        assertThat(room.newCables()).isEqualTo(newCables);
        assertThat(room.proposal().orElseThrow().after().outcome()).isEqualTo(PackingOutcome.FITS);
    }

    private Packing after(Duct duct) {
        return last(section(duct)).after();
    }

    private static PullChoice last(CrossSection section) {
        return section.choices().get(section.choices().size() - 1);
    }

    private CrossSection section(Duct duct) {
        return assessor.assess(duct).crossSection().orElseThrow();
    }

    private static List<PlacedCircle> kinds(Arrangement arrangement, Kind kind) {
        return arrangement.circles().stream()
                .filter(circle -> circle.kind() == kind)
                .toList();
    }

    private static RoomSettings withFill(double ratio) {
        RoomSettings shipped = ShippedConfig.get().room();
        RoomSettings one = Changed.of(shipped, "fillLimitOneRatio", ratio);
        return Changed.of(Changed.of(one, "fillLimitTwoRatio", ratio), "fillLimitMoreRatio", ratio);
    }
}
