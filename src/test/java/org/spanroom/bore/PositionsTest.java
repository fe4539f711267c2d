package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.bore.RoomAssessorTest.cable;
import static org.spanroom.bore.RoomAssessorTest.duct;
import static org.spanroom.bore.RoomAssessorTest.holding;
import static org.spanroom.bore.RoomAssessorTest.round;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.Positions;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.bore.RoomSettings.BesideRule;
import org.spanroom.model.bore.RoomSettings.SleeveCount;
import org.spanroom.model.bore.RoomSettings.SleevesBeside;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Circumstances;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;
import org.spanroom.testing.Changed;

/** What a duct can take today, what it can take after recovery, and which rule says so. */
class PositionsTest {
    private static final double IN = 25.4;
    private static final RoomSettings SHIPPED = ShippedConfig.get().room();

    private final RoomAssessor assessor = new RoomAssessor(SHIPPED);

    /** A 1-in innerduct (1.315 in) takes 10.8 % of a 4-in Schedule 40 bore, so that sleeves go in beside it today. */
    @Test
    void leavingEverythingInIsAChoiceWithItsEvidence() {
        Room room = assessor.assess(oneInchDuct());

        PullChoice now = room.choices().get(0);
        assertThat(now.words()).isEqualTo("0 of 1 out");
        assertThat(now.isRecovery()).isFalse();
        assertThat(now.positions().beside()).isEqualTo(9);
        assertThat(now.bindingRule()).isEqualTo(Room.SLEEVES_PER_DUCT);
        Arrangement asItWouldLie = now.after().arrangement().orElseThrow();
        assertThat(asItWouldLie.overlapMm()).isLessThanOrEqualTo(1e-6);
        assertThat(asItWouldLie.circles())
                .filteredOn(c -> c.kind() == Kind.NEW_CABLE)
                .hasSize(9);
        assertThat(asItWouldLie.circles())
                .filteredOn(c -> c.kind() == Kind.INNERDUCT)
                .hasSize(1);
    }

    @Test
    void recoveryIsCreditedOnlyWithWhatItAdds() {
        Room room = assessor.assess(oneInchDuct()).propose(choice -> 5 + choice.innerductsOut());

        assertThat(room.positionsNow()).hasValue(9);
        assertThat(room.positionsAfter()).hasValue(9);
        assertThat(room.positionsGained()).hasValue(0);
        assertThat(room.gains()).isFalse();
        assertThat(room.proposal().orElseThrow().isRecovery()).isTrue();
    }

    /** Gained = after - now for every choice of every cross-section, whatever is there, is reserved or is forbidden. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainedIsAfterLessNow(long seed) {
        var random = new SplittableRandom(seed);
        Duct duct = withCircumstances(
                round(2 + 4 * random.nextDouble(), anyContents(random)),
                random.nextInt(3) == 0 ? Answer.NO : Answer.UNKNOWN,
                random.nextInt(4));

        Room room = assessor.assess(duct).propose(choice -> 5 + choice.innerductsOut());

        int now = room.positionsNow().orElseThrow();
        assertThat(room.choices().get(0).positionsAfter()).isEqualTo(now);
        assertThat(room.choices())
                .allSatisfy(choice -> assertThat(choice.positionsGained()).isEqualTo(choice.positionsAfter() - now))
                .allSatisfy(choice -> assertThat(choice.positionsAfter()).isNotNegative())
                .allSatisfy(choice -> assertThat(choice.fillWithNewRatio()).isGreaterThanOrEqualTo(choice.fillRatio()));
        assertThat(room.positionsGained()).hasValue(room.positionsAfter().orElseThrow() - now);
        room.proposal().ifPresent(choice -> assertThat(choice.isRecovery()).isTrue());
    }

    /** An empty duct takes what the rules allow: 3, 6 and 9 cables by common practice, no source. */
    @ParameterizedTest(name = "{0} in: {1}")
    @CsvSource({"2.047, 3", "3.042, 6", "3.998, 9"})
    void anEmptyDuctTakesWhatTheRulesAllow(double insideIn, int positions) {
        Room room = assessor.assess(round(insideIn, new Contents(List.of(), List.of(), true)));

        assertThat(room.positionsNow()).hasValue(positions);
        assertThat(room.positionsAfter()).hasValue(positions);
        assertThat(room.positionsGained()).hasValue(0);
        assertThat(room.proposal()).isEmpty();
        assertThat(room.newCables()).isZero();
    }

    @Test
    void ofUnknownContentsNothingIsKnown() {
        Room room = assessor.assess(round(4, Contents.UNKNOWN));

        assertThat(room.fillNowRatio()).isEmpty();
        assertThat(room.fillAfterRemovalRatio()).isEmpty();
        assertThat(room.fillWithNewRatio()).isEmpty();
        assertThat(room.positionsNow()).isEmpty();
        assertThat(room.positionsAfter()).isEmpty();
        assertThat(room.positionsGained()).isEmpty();
        assertThat(room.choices()).isEmpty();
        assertThat(room.boreAreaMm2()).isPositive();
    }

    @Test
    void besideNothingLiesWhereNoDuctSurroundsTheInnerduct() {
        Room room = assessor.assess(duct(3.998, holding(List.of(0.5), 1), true, Condition.SOUND));

        assertThat(room.now().orElseThrow().positions()).isEqualTo(new Positions(1, 0, 0, 0));
        assertThat(room.choices()).hasSize(1);
        assertThat(room.bindingRule()).isEqualTo(Room.NO_OUTER_DUCT);
    }

    /** Into a closed bore nothing goes today; a rigid innerduct through it may still take a cable. */
    @ParameterizedTest
    @EnumSource(
            value = Condition.class,
            names = {"COLLAPSED", "BLOCKED"})
    void intoAClosedBoreNothingGoesToday(Condition condition) {
        Contents contents =
                new Contents(List.of(inch("a", List.of())), List.of(new Sleeve("s", 3, 0, List.of())), List.of(), true);

        Room room = assessor.assess(duct(3.998, contents, false, condition));

        assertThat(room.now().orElseThrow().positions()).isEqualTo(new Positions(1, 0, 0, 0));
        assertThat(room.now().orElseThrow().bindingRule()).isEqualTo(Room.BORE_CLOSED);
        assertThat(room.positionsGained()).hasValue(room.positionsAfter().orElseThrow() - 1);
    }

    // One rule after another is the one that binds.

    /** 3 sleeves in an emptied 4-in duct: common practice, no source. */
    @Test
    void sleevesPerDuctBind() {
        assertThat(assessor.assess(round(3.998, holding(List.of(0.5), 0))).bindingRule())
                .isEqualTo(Room.SLEEVES_PER_DUCT);
    }

    /** Two of 1.66 in leave sqrt(3.998^2 - 2 x 1.66^2) = 3.236 in of a 3.998-in bore: the table gives 2 sleeves, not 3. */
    @Test
    void theFreeBoreBindsWhereInnerductsStayIn() {
        RoomSettings generous = withFill(0.9);
        Duct duct = round(3.998, holding(List.of(0.5, 0.5), 0));

        PullChoice byBore = new RoomAssessor(generous).assess(duct).choices().get(0);
        PullChoice byTable = new RoomAssessor(Changed.of(generous, "sleevesBeside", SleevesBeside.TABLE))
                .assess(duct)
                .choices()
                .get(0);

        assertThat(Math.sqrt(3.998 * 3.998 - 2 * 1.66 * 1.66)).isCloseTo(3.2362, within(0.0001));
        assertThat(SHIPPED.sleevesFor(3.2362 * IN)).isEqualTo(2);
        assertThat(byBore.sleeves()).isEqualTo(2);
        assertThat(byBore.bindingRule()).isEqualTo(Room.FREE_BORE);
        assertThat(byTable.bindingRule()).isNotEqualTo(Room.FREE_BORE);
        assertThat(byTable.sleeves()).isGreaterThanOrEqualTo(byBore.sleeves());
    }

    /** A square bore of side a leaves sqrt(a^2 - pi/4 d^2). */
    @Test
    void theFreeBoreOfASquareDuctGoesByItsArea() {
        Duct round = round(3.5, holding(List.of(0.5, 0.5, 0.5), 0));
        Duct square = Changed.of(round, "boreShape", org.spanroom.model.network.BoreShape.SQUARE);
        RoomSettings table = Changed.of(
                withFill(0.99),
                "sleevesByDuct",
                List.of(new SleeveCount(10, 1), new SleeveCount(2.415 * IN, 2), new SleeveCount(80, 3)));

        // 3.5^2 - 3 pi/4 1.66^2 = 5.757 in2: side 2.399 in, below 2.415; round: 3.5^2 - 3 x 1.66^2 = 3.983 in2: 1.996
        // in
        assertThat(new RoomAssessor(table).assess(square).choices().get(0).sleeves())
                .isEqualTo(1);
        RoomSettings lower =
                Changed.of(table, "sleevesByDuct", List.of(new SleeveCount(10, 1), new SleeveCount(2.38 * IN, 2)));
        assertThat(new RoomAssessor(lower).assess(square).choices().get(0).bindingRule())
                .isNotEqualTo(Room.FREE_BORE);
    }

    /** 40 % of a 3.998-in bore: three of 1.66 in close off 51.7 % by themselves. */
    @Test
    void boreFillBinds() {
        PullChoice now = assessor.assess(round(3.998, holding(List.of(0.5, 0.5, 0.5), 0)))
                .choices()
                .get(0);

        assertThat(now.fillRatio()).isCloseTo(3 * 1.66 * 1.66 / (3.998 * 3.998), within(1e-9));
        assertThat(now.bindingRule()).isEqualTo(Room.BORE_FILL);
        assertThat(now.newCables()).isZero();
    }

    /** Two of 1.66 in and fifteen cells of 13.7 mm are 84 % of a bore of 3.42 in by area, and yet no arrangement of them is known. */
    @Test
    void geometryBinds() {
        RoomSettings all = Changed.of(
                Changed.of(withFill(0.99), "sleevesBeside", SleevesBeside.TABLE),
                "sleevesByDuct",
                List.of(new SleeveCount(10, 5)));

        PullChoice now = new RoomAssessor(all)
                .assess(round(3.42, holding(List.of(0.5, 0.5), 0)))
                .choices()
                .get(0);

        assertThat(now.bindingRule()).isEqualTo(Room.PACKING);
        assertThat(now.nextSleeve()).isPresent();
        assertThat(now.sleeves()).isBetween(1, 4);
    }

    @ParameterizedTest(name = "config {0}, recorded {1}: {2} beside")
    @CsvSource({
        "ALLOWED, UNKNOWN, 9",
        "ALLOWED, YES, 9",
        "ALLOWED, NO, 0",
        "FORBIDDEN, UNKNOWN, 0",
        "FORBIDDEN, YES, 0",
        "FORBIDDEN, NO, 0"
    })
    void theOwnersRuleBindsForAllDuctsOrForOne(BesideRule rule, Answer recorded, int beside) {
        RoomSettings settings = Changed.of(SHIPPED, "besideInnerducts", rule);

        Room room = new RoomAssessor(settings).assess(withCircumstances(oneInchDuct(), recorded, 0));

        PullChoice now = room.choices().get(0);
        assertThat(now.positions().beside()).isEqualTo(beside);
        assertThat(now.bindingRule()).isEqualTo(beside == 0 ? Room.BESIDE_FORBIDDEN : Room.SLEEVES_PER_DUCT);
        assertThat(room.positionsAfter()).as("once no innerduct is left").hasValue(9);
        assertThat(room.positionsGained()).hasValue(9 - beside);
    }

    @Test
    void theOwnersRuleOnInnerductsSaysNothingOfADuctWithoutAny() {
        RoomSettings settings = Changed.of(SHIPPED, "besideInnerducts", BesideRule.FORBIDDEN);
        var loose = new Contents(List.of(), List.of(cable(0.5, Service.LIVE)), true);

        assertThat(new RoomAssessor(settings).assess(round(3.998, loose)).positionsNow())
                .hasValue(9);
    }

    @Test
    void freeCellsOfSleevesAlreadyInArePositionsNowAndAfter() {
        var sleeve = new Sleeve("s", 3, 1, List.of(cable(0.5, Service.LIVE)));
        var contents =
                new Contents(List.of(inch("a", List.of(cable(0.5, Service.LIVE)))), List.of(sleeve), List.of(), true);

        Room room = assessor.assess(round(3.998, contents));

        assertThat(sleeve.freeCells()).isEqualTo(1);
        assertThat(sleeve.promisedCells()).isEqualTo(1);
        assertThat(room.choices())
                .extracting(choice -> choice.positions().inSleeves())
                .containsOnly(1);
        // A sleeve already in is one of the three that the table gives to a 4-in duct.
        assertThat(room.choices()).extracting(PullChoice::sleeves).containsOnly(2);
        assertThat(room.positionsNow()).hasValue(7);
        Arrangement now = room.choices().get(0).after().arrangement().orElseThrow();
        assertThat(now.circles()).filteredOn(c -> c.kind() == Kind.RESERVED).hasSize(1);
        assertThat(now.circles()).filteredOn(c -> c.kind() == Kind.NEW_CABLE).hasSize(7);
        assertThat(now.overlapMm()).isLessThanOrEqualTo(1e-6);
    }

    /** Fill now: the innerduct and the cable in the sleeve; empty cells lie flat. */
    @Test
    void cablesInSleevesFillTheBoreAndLieInItsDrawing() {
        var contents = new Contents(
                List.of(inch("a", List.of())),
                List.of(new Sleeve("s", 3, 0, List.of(cable(0.5, Service.LIVE)))),
                List.of(),
                true);

        Room room = assessor.assess(round(3.998, contents));

        assertThat(room.fillNowRatio().orElseThrow()).isCloseTo((1.315 * 1.315 + 0.25) / (3.998 * 3.998), within(1e-9));
        Arrangement before =
                room.crossSection().orElseThrow().before().arrangement().orElseThrow();
        assertThat(before.circles())
                .filteredOn(c -> c.kind() == Kind.CABLE)
                .singleElement()
                .satisfies(c -> {
                    assertThat(c.outsideDiameterMm()).isCloseTo(0.5 * IN + 1, within(1e-9));
                    assertThat(c.insideDiameterMm()).isCloseTo(0.5 * IN, within(1e-9));
                });
    }

    @Test
    void aSleeveWithMoreCablesThanCellsHasNoFreeCell() {
        var crowded = new Sleeve("s", 2, 1, Collections.nCopies(3, cable(0.3, Service.LIVE)));

        assertThat(crowded.freeCells()).isZero();
        assertThat(crowded.promisedCells()).isZero();
    }

    /** Of a bore of 1.5 in each cable of 0.5 in fills 11.1 %: with one in, 40 % lets two more into six cells. */
    @Test
    void cellsCountOnlyWhereTheirCablesGoIn() {
        var contents = new Contents(
                List.of(), List.of(new Sleeve("s", 6, 0, List.of())), List.of(cable(0.5, Service.LIVE)), true);

        Room room = assessor.assess(round(1.5, contents));

        assertThat(room.now().orElseThrow().positions().inSleeves()).isEqualTo(2);
        assertThat(room.now().orElseThrow().after().outcome()).isEqualTo(PackingOutcome.FITS);
    }

    @ParameterizedTest(name = "{0} reserved: {1} now, {2} after")
    @CsvSource({"0, 1, 9", "1, 0, 8", "3, 0, 6", "12, 0, 0"})
    void reservedPositionsAreLeftOutOfEveryCount(int reserved, int now, int after) {
        Duct duct = round(3.998, holding(List.of(0.5, 0.5), 1));

        Room room = assessor.assess(withCircumstances(duct, Answer.UNKNOWN, reserved));

        assertThat(room.positionsNow()).hasValue(now);
        assertThat(room.positionsAfter()).hasValue(after);
        assertThat(room.positionsGained()).hasValue(after - now);
        assertThat(room.now().orElseThrow().positions().reserved()).isEqualTo(reserved);
    }

    /** Of a bore of 3.998 in: three of 1.66 in; then three cables of 0.5 in; then nine of 0.5 in more. */
    @Test
    void fillIsGivenNowAfterRemovalAndWithTheNewCables() {
        Room room = assessor.assess(round(3.998, holding(List.of(0.5, 0.5, 0.5), 0)));

        double square = 3.998 * 3.998;
        assertThat(room.fillNowRatio().orElseThrow()).isCloseTo(3 * 1.66 * 1.66 / square, within(1e-9));
        assertThat(room.fillAfterRemovalRatio().orElseThrow()).isCloseTo(3 * 0.25 / square, within(1e-9));
        assertThat(room.fillWithNewRatio().orElseThrow()).isCloseTo(12 * 0.25 / square, within(1e-9));
    }

    @Test
    void aProposalThatLeavesInnerductsInSaysWhyThatIsBetter() {
        Room room = assessor.assess(round(4.05, holding(List.of(0.5, 0.5, 0.5), 0)));

        Room cheapFirst = room.propose(choice -> 4 * choice.innerductsOut());
        Room setUpCounts = room.propose(choice -> 100 + choice.innerductsOut());

        assertThat(cheapFirst.proposal().orElseThrow().innerductsLeft()).isPositive();
        assertThat(cheapFirst.proposalReason())
                .isEqualTo("2 of 3 out: 9 gained in 8.0 h (1.13 per hour); "
                        + "3 of 3 out: 9 gained in 12.0 h (0.75 per hour)");
        assertThat(setUpCounts.proposal().orElseThrow().innerductsLeft()).isPositive();
        Room needed = new RoomAssessor(Changed.of(SHIPPED, "besideInnerducts", BesideRule.FORBIDDEN))
                .assess(round(4.05, holding(List.of(0.5, 0.5, 0.5), 0)))
                .propose(choice -> choice.innerductsOut());
        assertThat(needed.proposal().orElseThrow().innerductsLeft()).isZero();
        assertThat(needed.proposalReason()).isEmpty();
    }

    /** Three of 1.315 in in 3.998 in have a ratio of 3.19, whichever of them the proposal pulls. */
    @Test
    void innerductsInTheDuctMayJamWhateverTheProposal() {
        Duct duct = round(
                3.998,
                new Contents(
                        List.of(
                                inch("a", List.of()),
                                inch("b", List.of(cable(0.5, Service.LIVE))),
                                inch("c", List.of(cable(0.5, Service.LIVE)))),
                        List.of(),
                        true));

        Room room = assessor.assess(duct).propose(choice -> Math.pow(10, choice.innerductsOut()));

        assertThat(room.proposal().orElseThrow().innerductsOut()).isLessThan(3);
        assertThat(room.crossSection().orElseThrow().mayJam()).isTrue();
    }

    @Test
    void newCablesWeighByTheirWidth() {
        assertThat(SHIPPED.newCablesMassKgPerM(3)).isCloseTo(3 * 0.14, within(1e-9));
        RoomSettings mix = SHIPPED.withDesignCables(
                List.of(new RoomSettings.DesignCable(12.7, 1), new RoomSettings.DesignCable(25.4, 1)));
        assertThat(mix.newCablesMassKgPerM(3)).isCloseTo(0.14 + 4 * 0.14 + 0.14, within(1e-9));
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    private static Contents anyContents(SplittableRandom random) {
        var pipes = new ArrayList<Innerduct>();
        for (int i = random.nextInt(4); i > 0; i--) {
            pipes.add(inch("i" + i, random.nextBoolean() ? List.of() : List.of(cable(0.5, Service.LIVE))));
        }
        var sleeves = new ArrayList<Sleeve>();
        for (int i = random.nextInt(3); i > 0; i--) {
            List<Cable> cables = Collections.nCopies(random.nextInt(3), cable(0.4, Service.LIVE));
            sleeves.add(new Sleeve("s" + i, 1 + random.nextInt(3), random.nextInt(3), cables));
        }
        List<Cable> loose = Collections.nCopies(random.nextInt(2), cable(0.5, Service.DEAD));
        return new Contents(pipes, sleeves, loose, true);
    }

    private static Duct oneInchDuct() {
        return round(3.998, new Contents(List.of(inch("a", List.of(cable(0.5, Service.LIVE)))), List.of(), true));
    }

    /** 1 in by ASTM D3035, SDR 11. */
    private static Innerduct inch(String id, List<Cable> cables) {
        return new Innerduct(id, 1.315 * IN, 0.120 * IN, cables);
    }

    private static Duct withCircumstances(Duct duct, Answer besideAllowed, int reserved) {
        Circumstances recorded = Changed.of(Circumstances.UNKNOWN, "besideAllowed", besideAllowed);
        return Changed.of(duct, "circumstances", Changed.of(recorded, "positionsReserved", reserved));
    }

    private static RoomSettings withFill(double ratio) {
        RoomSettings one = Changed.of(SHIPPED, "fillLimitOneRatio", ratio);
        return Changed.of(Changed.of(one, "fillLimitTwoRatio", ratio), "fillLimitMoreRatio", ratio);
    }
}
