package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.bore.RoomAssessorTest.cable;
import static org.spanroom.bore.RoomAssessorTest.duct;
import static org.spanroom.bore.RoomAssessorTest.holding;
import static org.spanroom.bore.RoomAssessorTest.innerduct;
import static org.spanroom.bore.RoomAssessorTest.round;
import static org.spanroom.bore.RoomAssessorTest.settings;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.CrossSection;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.bore.RoomSettings.DesignCable;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.testing.Changed;

class PullChoiceTest {
    private static final double IN = 25.4;

    private final RoomAssessor assessor = new RoomAssessor(ShippedConfig.get().room());

    @Test
    void theProposalGainsMostCablesAnHour() {
        Room room = assessor.assess(round(4.05, holding(List.of(0.5, 0.5), 2)));

        Room cheap = room.propose(PullChoiceTest::byPulls);
        Room full = room.propose(PullChoiceTest::byCables);

        double rate = (double) cheap.positionsGained().orElseThrow() / cheap.innerductsOut();
        assertThat(choices(room).stream().filter(PullChoice::isRecovery))
                .allSatisfy(choice -> assertThat((double) choice.positionsGained() / choice.innerductsOut())
                        .isLessThanOrEqualTo(rate));
        assertThat(full.positionsGained().orElseThrow())
                .isEqualTo(choices(room).stream()
                        .mapToInt(PullChoice::positionsGained)
                        .max()
                        .orElseThrow());
    }

    @Test
    void theRoomShowsTheFiguresOfTheProposal() {
        Room room = assessor.assess(round(4.05, holding(List.of(0.5, 0.5), 1))).propose(PullChoiceTest::byPulls);

        PullChoice proposal = room.proposal().orElseThrow();
        assertThat(proposal.innerductsOut()).isLessThan(3);
        assertThat(room.innerductsOut()).isEqualTo(proposal.innerductsOut());
        assertThat(room.newCables()).isEqualTo(proposal.newCables());
        assertThat(room.sleeves()).isEqualTo(proposal.sleeves());
        assertThat(room.positionsGained()).hasValue(proposal.positionsGained());
        assertThat(room.bindingRule()).isEqualTo(proposal.bindingRule());
        assertThat(room.proposal().orElseThrow().after()).isEqualTo(proposal.after());
        assertThat(choices(room)).hasSize(4);
    }

    /** One innerduct of two stays: pi/4 (1.660^2 + 0.5^2) over pi/4 4.05^2. */
    @Test
    void whatStaysFillsTheBoreStill() {
        PullChoice one = choices(assessor.assess(round(4.05, holding(List.of(0.5, 0.5), 0))))
                .get(1);

        assertThat(one.fillRatio()).isCloseTo((1.660 * 1.660 + 0.25) / (4.05 * 4.05), within(1e-9));
        assertThat(one.recoverableMm2() / (IN * IN)).isCloseTo(Math.PI / 4 * (1.660 * 1.660 - 0.25), within(1e-9));
    }

    @Test
    void everyChoiceHasTheArrangementThatProvesIt() {
        Room room = assessor.assess(round(4.05, holding(List.of(0.5, 0.6, 0.7), 1)));

        assertThat(choices(room)).hasSize(5).allSatisfy(choice -> {
            assertThat(choice.after().outcome()).isEqualTo(PackingOutcome.FITS);
            Arrangement after = choice.after().arrangement().orElseThrow();
            assertThat(after.overlapMm()).isLessThanOrEqualTo(1e-6);
            assertThat(count(after, Kind.INNERDUCT)).isEqualTo(choice.innerductsLeft());
            assertThat(count(after, Kind.NEW_CABLE)).isEqualTo(choice.newCables());
            assertThat(count(after, Kind.CABLE)).isEqualTo(3);
        });
    }

    /** Of a 4.05-in bore three of 1.660 in close off 50.4 %, two 33.6 %, one 16.8 %; each cable of 0.5 in takes 1.5 %. */
    @Test
    void innerductsLeftCountAsSolidInBoreFill() {
        List<PullChoice> choices = choices(assessor.assess(round(4.05, holding(List.of(0.5, 0.5, 0.5, 0.5), 0))));

        assertThat(choices).extracting(PullChoice::newCables).containsExactly(0, 0, 0, 9, 9);
        assertThat(choices.subList(0, 3)).extracting(PullChoice::bindingRule).containsOnly(Room.BORE_FILL);
    }

    @Test
    void aPlaceThatIsPulledOutIsNoGain() {
        Room room = assessor.assess(round(4.05, holding(List.of(0.5), 2)));

        assertThat(choices(room))
                .allSatisfy(choice -> assertThat(choice.positionsGained())
                        .isEqualTo(choice.newCables() + choice.positions().inInnerducts() - choice.positionsNow()));
    }

    @Test
    void deadCablesAreShownComingOutButProposedOnlyWhereTheRulesSaySo() {
        Duct duct = round(
                2.047,
                new Contents(
                        List.of(innerduct(List.of(cable(0.5, Service.LIVE)))),
                        List.of(cable(0.7, Service.DEAD)),
                        true));
        Room kept = assessor.assess(duct).propose(PullChoiceTest::byCables);
        Room cleared = new RoomAssessor(withDeadOut()).assess(duct).propose(PullChoiceTest::byCables);

        assertThat(choices(kept)).extracting(PullChoice::deadCablesOut).containsExactly(0, 0, 1);
        assertThat(choices(kept)).extracting(PullChoice::allowed).containsExactly(true, true, false);
        assertThat(choices(kept))
                .extracting(PullChoice::words)
                .containsExactly("0 of 1 out", "1 of 1 out", "1 of 1 and 1 dead cable out");
        assertThat(kept.proposal().orElseThrow().deadCablesOut()).isZero();
        assertThat(choices(cleared)).allMatch(PullChoice::allowed);
        assertThat(cleared.newCables()).isGreaterThanOrEqualTo(kept.newCables());
        assertThat(count(choices(kept).get(2).after().arrangement().orElseThrow(), Kind.DEAD_CABLE))
                .isZero();
    }

    @Test
    void aDuctMayGainByNoChoice() {
        Room room = assessor.assess(round(1.5, holding(List.of(), 1))).propose(PullChoiceTest::byPulls);

        assertThat(room.gains()).isFalse();
    }

    @Test
    void whereNothingCanComeOutNothingIsProposed() {
        Room buried = assessor.assess(duct(4.05, holding(List.of(0.5, 0.5), 0), true, Condition.SOUND));

        assertThat(buried.proposal()).isEmpty();
        assertThat(buried.propose(PullChoiceTest::byPulls)).isEqualTo(buried);
    }

    @Test
    void aChoiceThatTakesNoTimeIsAMistake() {
        Room room = assessor.assess(round(4.05, holding(List.of(0.5, 0.5), 0)));

        assertThatThrownBy(() -> room.propose(choice -> 0)).hasMessageContaining("hours must be > 0");
    }

    /** The section's choice and the duct's innerducts are based on one order, so that what is counted is what is pulled. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theFirstInnerductsByOrderOutAreThoseThatTheChoiceCounts(long seed) {
        var random = new SplittableRandom(seed);
        List<Innerduct> innerducts = new ArrayList<>();
        for (int i = 0; i < 2 + random.nextInt(3); i++) {
            double outsideIn = random.nextBoolean() ? 1.315 : 1.660;
            List<Cable> cables = random.nextInt(3) == 0 ? List.of() : List.of(cable(0.4, Service.LIVE));
            innerducts.add(new Innerduct("i" + i, outsideIn * IN, 0.1 * outsideIn * IN, cables));
        }
        var contents = new Contents(innerducts, List.of(), true);
        var shuffled = new ArrayList<>(innerducts);
        Collections.rotate(shuffled, 1);

        assertThat(choices(assessor.assess(round(6, contents)))).allSatisfy(choice -> {
            List<Innerduct> out = contents.innerductsByOrderOut().subList(0, choice.innerductsOut());
            assertThat(out).filteredOn(Innerduct::isEmpty).hasSize(choice.emptyOut());
            double areaMm2 = out.stream()
                    .mapToDouble(pipe -> pipe.areaMm2()
                            - pipe.cables().stream().mapToDouble(Cable::areaMm2).sum())
                    .sum();
            assertThat(choice.recoverableMm2()).isCloseTo(areaMm2, within(1e-6));
        });
        assertThat(assessor.assess(round(6, new Contents(shuffled, List.of(), true))))
                .isEqualTo(assessor.assess(round(6, contents)));
    }

    @Test
    void oneCableThatMayNotMoveBindsUnderTheOwnersRuleWhereItComesToLieLoose() {
        var fixed = new Cable("c", 0.5 * IN, 0.15, Service.LIVE, false);
        Duct duct =
                round(4.05, new Contents(List.of(innerduct(List.of(fixed)), innerduct(List.of())), List.of(), true));

        List<PullChoice> ruled = choices(new RoomAssessor(settings(true, true)).assess(duct));
        List<PullChoice> free = choices(assessor.assess(duct));

        assertThat(ruled.get(1).newCables()).isPositive();
        assertThat(ruled.get(2).newCables()).isZero();
        assertThat(ruled.get(2).bindingRule()).isEqualTo(Room.OLD_CABLES_MAY_NOT_MOVE);
        assertThat(free.get(2).newCables()).isEqualTo(9);
    }

    @Test
    void aMixOfDesignCablesIsRepeatedOverTheCells() {
        var mix = ShippedConfig.get().room().withDesignCables(List.of(new DesignCable(10, 2), new DesignCable(15, 1)));

        Room room = new RoomAssessor(mix).assess(round(3.998, holding(List.of(0.5), 0)));

        Arrangement after = room.proposal().orElseThrow().after().arrangement().orElseThrow();
        assertThat(room.newCables()).isEqualTo(9);
        assertThat(after.circles().stream()
                        .filter(circle -> circle.kind() == Kind.NEW_CABLE)
                        .map(circle -> circle.outsideDiameterMm()))
                .containsExactlyInAnyOrder(11.0, 11.0, 11.0, 11.0, 11.0, 11.0, 16.0, 16.0, 16.0);
    }

    @Test
    void aMixOfOneIsTheSimpleCase() {
        var mix = ShippedConfig.get().room().withDesignCables(List.of(new DesignCable(12.7, 4)));
        Duct duct = round(3.042, holding(List.of(0.5, 0.6), 1));

        assertThat(new RoomAssessor(mix).assess(duct)).isEqualTo(assessor.assess(duct));
    }

    /** A wide cable is a position's measure, and fills more of the bore: 40 % of a 2-in bore is 1.32 in2. */
    @Test
    void theWidestOfAMixNeedsAPositionAndFillCountsEachByItsSize() {
        var mix = ShippedConfig.get().room().withDesignCables(List.of(new DesignCable(6, 1), new DesignCable(25, 1)));

        Room room = new RoomAssessor(mix).assess(round(2.047, holding(List.of(0.5), 1)));

        assertThat(room.now().orElseThrow().positions().inInnerducts()).isZero();
        // 3 cells: 6, 25 and 6 mm are 0.85 in2 and the old cable 0.20: within the limit
        assertThat(room.newCables()).isEqualTo(3);
        var wider = ShippedConfig.get().room().withDesignCables(List.of(new DesignCable(25, 1)));
        // three of 25 mm are 2.28 in2
        assertThat(new RoomAssessor(wider)
                        .assess(round(2.047, holding(List.of(0.5), 1)))
                        .bindingRule())
                .isEqualTo(Room.BORE_FILL);
    }

    /** Hours where setting up counts for nothing, so that the first pulls decide. */
    private static double byPulls(PullChoice choice) {
        return choice.innerductsOut();
    }

    /** Hours where setting up counts for nearly everything, so that the cables decide. */
    private static double byCables(PullChoice choice) {
        return 1000.0 + choice.innerductsOut();
    }

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    private static List<PullChoice> choices(Room room) {
        return room.crossSection().map(CrossSection::choices).orElseThrow();
    }

    private static long count(Arrangement arrangement, Kind kind) {
        return arrangement.circles().stream()
                .filter(circle -> circle.kind() == kind)
                .count();
    }

    private static RoomSettings withDeadOut() {
        return Changed.of(ShippedConfig.get().room(), "deadCablesComeOut", true);
    }
}
