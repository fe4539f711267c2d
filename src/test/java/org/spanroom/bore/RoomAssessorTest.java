package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.testing.Changed;

class RoomAssessorTest {
    private static final double IN = 25.4;

    private final RoomAssessor assessor = new RoomAssessor(ShippedConfig.get().room());

    /**
     * NEC Chapter 9 Table 4, area of 100 % in square inches, as reprinted in public. Inside diameters are printed to
     * 0.001 in, which moves an area by up to 0.01 in2 in the largest.
     */
    @ParameterizedTest(name = "{0} in inside: {1} in2")
    @CsvSource({
        "2.047, 3.291",
        "3.042, 7.268",
        "3.521, 9.737",
        "3.998, 12.554",
        "5.016, 19.761",
        "6.031, 28.567",
        "3.786, 11.258",
        "4.289, 14.448",
        "4.050, 12.882",
        "4.180, 13.723"
    })
    void boreAreaIsThatOfTheElectricalCode(double insideIn, double areaIn2) {
        Room room = assessor.assess(round(insideIn, Contents.UNKNOWN));

        assertThat(room.boreAreaMm2() / (IN * IN)).isCloseTo(areaIn2, within(0.0009));
    }

    /** Limits of NEC Chapter 9 Table 1 times the area of a 4-in Schedule 40 bore: 6.654, 3.892 and 5.022 in2 in Table 4. */
    @ParameterizedTest(name = "{0} cables: {1} in2")
    @CsvSource({"1, 6.654", "2, 3.892", "3, 5.022", "9, 5.022"})
    void fillLimitsGiveTheAreasOfTheElectricalCode(int cables, double limitIn2) {
        double boreIn2 = Math.PI / 4 * 3.998 * 3.998;

        assertThat(ShippedConfig.get().room().fillLimitRatio(cables) * boreIn2).isCloseTo(limitIn2, within(0.0006));
    }

    /** Worked here from the published sizes: 4-in Schedule 40, three 1-1/4-in innerducts with cables of 0.5, 0.5, 0.75 in. */
    @Test
    void workedExampleOfThreeInnerductsInFourInch() {
        Room room = assessor.assess(workedExample());

        assertThat(100 * room.fillNowRatio().orElseThrow()).isCloseTo(51.72, within(0.005));
        assertThat(100 * room.fillAfterRemovalRatio().orElseThrow()).isCloseTo(6.65, within(0.005));
        assertThat(room.proposal().orElseThrow().recoverableMm2()).isCloseTo(3650.5, within(0.05));
        assertThat(100 * room.proposal().orElseThrow().recoverableMm2() / room.boreAreaMm2())
                .isCloseTo(45.07, within(0.005));
        assertThat(room.innerductsOut()).isEqualTo(3);
        assertThat(room.positionsNow()).hasValue(0);
        assertThat(room.newCables()).isEqualTo(9);
        assertThat(room.bindingRule()).isEqualTo(Room.SLEEVES_PER_DUCT);
        assertThat(room.positionsGained()).hasValue(9);
    }

    /** Common practice, no source: up to about 90 % of a 4-in duct's space, 90.9 % with three cables of 0.7 in. */
    @Test
    void aboutNineTenthsOfAFourInchDuctComeBack() {
        Room room = assessor.assess(round(3.998, holding(List.of(0.7, 0.7, 0.7), 0)));

        assertThat(100 * (1 - room.fillAfterRemovalRatio().orElseThrow())).isCloseTo(90.9, within(0.15));
    }

    /** Common practice, no source: one, two, three 3-cell sleeves in 2-, 3-, 4-in ducts; sizes of PVC Schedule 40 and HDPE SDR 11. */
    @ParameterizedTest(name = "{0} in inside: {1} sleeves")
    @CsvSource({"2.047, 1", "1.943, 1", "3.042, 2", "2.864, 2", "3.998, 3", "3.682, 3", "4.289, 3", "3.521, 2", "1.2, 0"
    })
    void sleevesGoByDuctSize(double insideIn, int sleeves) {
        assertThat(ShippedConfig.get().room().sleevesFor(insideIn * IN)).isEqualTo(sleeves);
    }

    /** Common practice, no source: 3, 6, 9 new cables in 2-, 3-, 4-in ducts of usual contents. */
    @ParameterizedTest(name = "{0} in, cable of {1} in: {2} new")
    @CsvSource({"2.047, 1, 3", "3.042, 2, 6", "3.998, 3, 9"})
    void usualContentsGiveThreeSixNine(double insideIn, int cables, int newCables) {
        Room room = assessor.assess(round(insideIn, holding(Collections.nCopies(cables, 0.5), 0)));

        assertThat(room.newCables()).isEqualTo(newCables);
    }

    @Test
    void fillBindsWhereOldCablesAreFat() {
        // 40 % of 12.55 in2 is 5.02 in2; two of 1.4 in take 3.08 and nine of 0.5 in 1.77; one of 1.2 in takes 1.13 more
        Room room = assessor.assess(round(3.998, holding(List.of(1.4, 1.4), 0)));

        assertThat(room.newCables()).isEqualTo(9);
        Room fuller = assessor.assess(round(3.998, holding(List.of(1.4, 1.4, 1.2), 0)));
        assertThat(fuller.newCables()).isEqualTo(3);
        assertThat(fuller.bindingRule()).isEqualTo(Room.BORE_FILL);
    }

    @Test
    void emptyInnerductsWideEnoughArePositionsAlready() {
        assertThat(assessor.assess(round(4.05, holding(List.of(0.5, 0.5, 0.5), 1)))
                        .now()
                        .orElseThrow()
                        .positions()
                        .inInnerducts())
                .isEqualTo(1);
        var narrow = new Innerduct("a", 1.05 * IN, 0.095 * IN, List.of());
        assertThat(assessor.assess(round(4.05, new Contents(List.of(narrow), List.of(), true)))
                        .now()
                        .orElseThrow()
                        .positions()
                        .inInnerducts())
                .isZero();
    }

    @Test
    void nothingIsRecoveredWhereNothingCanComeOut() {
        Contents one = holdingOne(Service.LIVE);
        Contents none = new Contents(List.of(), List.of(cable(0.5, Service.LIVE)), true);
        var ducts = Map.of(
                Unrecoverable.CONTENTS_UNKNOWN, round(4, Contents.UNKNOWN),
                Unrecoverable.NO_INNERDUCT, round(4, none),
                Unrecoverable.NO_OUTER_DUCT, duct(4, one, true, Condition.SOUND));

        assertThat(ducts).allSatisfy((why, duct) -> {
            Room room = assessor.assess(duct);
            assertThat(Unrecoverable.of(duct)).contains(why);
            assertThat(room.innerductsOut()).isZero();
            assertThat(room.newCables()).isZero();
            assertThat(room.proposal()).isEmpty();
        });
        assertThat(Unrecoverable.of(round(4, one))).isEmpty();
    }

    @Test
    void aNarrowDuctGainsNothing() {
        assertThat(assessor.assess(round(1.5, holdingOne(Service.LIVE))).gains())
                .isFalse();
    }

    @Test
    void aBlockedDuctIsCountedForWhoeverClearsIt() {
        Room room = assessor.assess(duct(3.998, workedExample().contents(), false, Condition.BLOCKED));

        assertThat(room.newCables()).isEqualTo(9);
        assertThat(room.innerductsOut()).isEqualTo(3);
    }

    @Test
    void whereNoDuctWouldStayTheAreasAreKeptAndNoCablesGiven() {
        Room room = assessor.assess(duct(3.998, workedExample().contents(), true, Condition.SOUND));

        assertThat(100 * room.fillNowRatio().orElseThrow()).isCloseTo(51.72, within(0.005));
        assertThat(room.newCables()).isZero();
        assertThat(room.sleeves()).isZero();
        assertThat(room.innerductsOut()).isZero();
    }

    @Test
    void aDistinctCrossSectionIsWorkedOutOnceForAllThreads() {
        var ducts = IntStream.range(0, 2_000)
                .mapToObj(i -> round(3.0 + (i % 5) / 10.0, holding(List.of(0.5, 0.6), i % 3)))
                .toList();
        var alone = new RoomAssessor(ShippedConfig.get().room());
        List<Room> inOrder = ducts.stream().map(alone::assess).toList();

        List<Room> together = ducts.parallelStream().map(assessor::assess).toList();

        assertThat(together).isEqualTo(inOrder);
        assertThat(assessor.sectionsWorkedOut()).isEqualTo(15);
    }

    @Test
    void theOrderOfTheContentsDoesNotMatter() {
        var forth = holding(List.of(0.5, 0.75, 0.6), 1);
        var reversed = new ArrayList<>(forth.innerducts());
        Collections.reverse(reversed);
        var back = new Contents(reversed, List.of(), true);

        assertThat(assessor.assess(round(4, back))).isEqualTo(assessor.assess(round(4, forth)));
        assertThat(assessor.sectionsWorkedOut()).isEqualTo(1);
    }

    /** Colors, tags and what runs uncut tell crews which is which; the room and the order out do not depend on them. */
    @Test
    void contentsThatDifferInMarksOnlyShareOneCrossSection() {
        Contents plain = holding(List.of(0.5, 0.75, 0.6), 1);
        for (String mark : List.of("", "red", "blue")) {
            var innerducts = new ArrayList<Innerduct>();
            for (Innerduct each : plain.innerducts()) {
                innerducts.add(new Innerduct(
                        each.id(),
                        each.outsideDiameterMm(),
                        each.wallMm(),
                        each.cables().stream()
                                .map(cable -> new Cable(
                                        cable.id(),
                                        cable.outsideDiameterMm(),
                                        cable.massKgPerM(),
                                        cable.service(),
                                        cable.mayMove(),
                                        mark + innerducts.size()))
                                .toList(),
                        mark + (9 - innerducts.size()),
                        innerducts.size() % 2 == 0 ? Answer.YES : Answer.NO,
                        Answer.UNKNOWN));
            }
            Contents marked = plain.withInnerducts(innerducts);

            assertThat(assessor.assess(round(4, marked))).isEqualTo(assessor.assess(round(4, plain)));
            assertThat(marked.innerductsByOrderOut())
                    .extracting(Innerduct::id)
                    .isEqualTo(plain.innerductsByOrderOut().stream()
                            .map(Innerduct::id)
                            .toList());
        }
        assertThat(assessor.sectionsWorkedOut()).isEqualTo(1);
    }

    @Test
    void withTheOwnersRuleOldCablesTakeCellsToo() {
        var rule = settings(true, true);

        Room room = new RoomAssessor(rule).assess(workedExample());

        assertThat(room.sleeves()).isEqualTo(3);
        assertThat(room.newCables()).isEqualTo(6);
    }

    static RoomSettings settings(boolean oldCablesNeedCells, boolean oldCablesMayMove) {
        RoomSettings needing = Changed.of(ShippedConfig.get().room(), "oldCablesNeedCells", oldCablesNeedCells);
        return Changed.of(needing, "oldCablesMayMove", oldCablesMayMove);
    }

    private static Duct workedExample() {
        return round(3.998, holding(List.of(0.5, 0.5, 0.75), 0));
    }

    /** 1-1/4-in SDR 11 innerducts, one for each cable, and some empty ones. */
    static Contents holding(List<Double> cablesIn, int empty) {
        var full = cablesIn.stream().map(od -> innerduct(List.of(cable(od, Service.LIVE))));
        var free = Stream.generate(() -> innerduct(List.of())).limit(empty);
        return new Contents(Stream.concat(full, free).toList(), List.of(), true);
    }

    private static Contents holdingOne(Service service) {
        return new Contents(List.of(innerduct(List.of(cable(0.5, service)))), List.of(), true);
    }

    static Innerduct innerduct(List<Cable> cables) {
        return new Innerduct("i", 1.660 * IN, 0.151 * IN, cables);
    }

    static Cable cable(double outsideIn, Service service) {
        return new Cable("c", outsideIn * IN, 0.15, service);
    }

    static Duct round(double insideIn, Contents contents) {
        return duct(insideIn, contents, false, Condition.SOUND);
    }

    static Duct duct(double insideIn, Contents contents, boolean directBuried, Condition condition) {
        return new Duct(
                "d",
                "",
                BoreShape.ROUND,
                insideIn * IN,
                "",
                "",
                directBuried,
                contents,
                false,
                condition,
                "",
                "",
                OptionalInt.empty(),
                Set.of());
    }
}
