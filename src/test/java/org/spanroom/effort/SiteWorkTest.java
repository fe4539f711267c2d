package org.spanroom.effort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.bore.RoomAssessor;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.bore.Room;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.effort.Amounts;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.effort.SharedShift;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.RuledPart;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.pull.PullAssessment;
import org.spanroom.testing.Changed;

class SiteWorkTest {
    private static final RoomSettings DEAD_CABLES_COME_OUT =
            Changed.of(ShippedConfig.get().room(), "deadCablesComeOut", true);

    /** Common practice, no source: one 600-ft span, three innerducts out, three 3-cell sleeves in, about six hours on site. */
    @Test
    void sixHundredFeetWithThreeInnerductsTakeAboutSixHours() {
        Effort effort = EffortCase.span().effort();

        assertThat(effort.time().siteHours()).isCloseTo(6, within(0.3));
        assertThat(effort.time().shifts()).isEqualTo(1);
        assertThat(effort.time().nights()).isZero();
        assertThat(effort.time().fitsWindow()).isTrue();
    }

    /**
     * Ventilation guides of the trade: 480 ft3 by 640 cfm, seven changes, 5.25 min. From the formula 7 V/C: 144 ft3 by 500 cfm 2.02
     * min. The floor of 10 min is that of UFC 3-560-01 (2006), para 11-6.3.4.2.
     */
    @ParameterizedTest(name = "{0} ft3 by {1} ft3/min, at least {2} min: {3} min")
    @CsvSource({"480, 640, 0, 5.25", "144, 500, 0, 2.016", "480, 640, 10, 10", "2000, 640, 10, 21.875"})
    void ventilatingTakesSevenChangesAndNoLessThanTheOwnerSays(
            double volumeFt3, double blowerFt3PerMin, double leastMin, double expectedMin) {
        double ft3M3 = Math.pow(EffortCase.FT_M, 3);
        Amounts<EffortStep> hours = EffortCase.span()
                .rate(RateKey.VAULT_VOLUME_M3, volumeFt3 * ft3M3)
                .rate(RateKey.BLOWER_M3_PER_HOUR, blowerFt3PerMin * 60 * ft3M3)
                .rate(RateKey.PURGE_LEAST_HOURS, leastMin / 60)
                .rate(RateKey.VAULT_ELAPSED_RATIO, 0.5)
                .effort()
                .stepHours();

        // Two vaults side by side take the time of one.
        assertThat(60 * hours.of(EffortStep.VENTILATING)).isCloseTo(expectedMin, within(1e-9));
    }

    /**
     * 10 min of blower at least: UFC 3-560-01 (2006), para 11-6.3.4.2. No draw of the rates, no kind and no volume of vault falls below
     * it, and one that crews do not enter takes none, and no test of its air: common practice, no source.
     */
    @ParameterizedTest(name = "kind ''{0}''")
    @CsvSource({"'', true", "maintenance hole, true", "vault, true", "handhole, false", "Pull Box, false"})
    void noDrawPurgesLessThanTheSourcesMinimum(String kind, boolean entered) {
        for (double volumeM3 : new double[] {0.1, 4, 30, 200}) {
            EffortCase span = EffortCase.span().vaultKind(kind).wetVault(volumeM3);
            EffortQuantities quantities = span.quantities();
            for (int sample = 0; sample < 500; sample++) {
                Rates drawn = span.assessor().rates().sampled(1, sample);
                var totals = new Totals();
                var account = new Account(drawn, totals);
                new SiteWork(quantities, account).book(1);
                double elapsedRatio = account.rate(RateKey.VAULT_ELAPSED_RATIO, quantities.rows());
                double bothHours = totals.hours().of(EffortStep.VENTILATING) / elapsedRatio;
                double changesM3 = account.rate(RateKey.PURGE_AIR_CHANGES, quantities.rows()) * volumeM3;
                double changesHours = changesM3 / account.rate(RateKey.BLOWER_M3_PER_HOUR, quantities.rows());

                // The other vault is of the same kind, without a recorded volume.
                double leastHours = entered ? Math.max(10 / 60.0, changesHours) + 10 / 60.0 : 0;
                assertThat(bothHours).isGreaterThanOrEqualTo(leastHours - 1e-9);
                assertThat(bothHours > 0).isEqualTo(entered);
                assertThat(totals.hours().of(EffortStep.AIR_TEST) > 0).isEqualTo(entered);
            }
        }
    }

    /** By hand, with the shipped rates; in the order of the work. */
    @Test
    void thePathIsProvedBeforeItIsFreedAndEachPullIsTestedBeforeItIsMade() {
        EffortCase span = EffortCase.span().out(2);
        Amounts<EffortStep> hours = span.effort().stepHours();

        assertThat(hours.of(EffortStep.PROOF)).isCloseTo(0.1 + 182.88 / 1000, within(1e-9));
        assertThat(hours.of(EffortStep.TEST_PULL)).isCloseTo(2 * 0.05, within(1e-9));
        assertThat(List.of(EffortStep.values()))
                .containsSubsequence(
                        EffortStep.AIR_TEST,
                        EffortStep.PROOF,
                        EffortStep.FREEING,
                        EffortStep.SET_UP,
                        EffortStep.TEST_PULL,
                        EffortStep.PULLING,
                        EffortStep.DEAD_CABLES,
                        EffortStep.SLEEVES);
        List<EffortPart> steps = span.assessor().lines(span.quantities()).stream()
                .map(EffortLine::part)
                .filter(part -> part.kind() == EffortPart.Kind.HOURS)
                .toList();
        assertThat(steps).isSortedAccordingTo(Comparator.comparingInt(EffortPart::ordinal));
        assertThat(steps).contains(EffortStep.PROOF, EffortStep.TEST_PULL);
    }

    /** By hand, with the shipped rates: 0.2 h for each cut, of which 0.75 counts beside the work at the other vault. */
    @ParameterizedTest(name = "{0} out, uncut {1} at A and {2} at B: {3} h")
    @CsvSource({
        "3, 0, 0, 0",
        "3, 1, 0, 0.15",
        "3, 3, 0, 0.45",
        "3, 2, 1, 0.45",
        "2, 3, 3, 0.6",
        "1, 3, 0, 0.15",
        "0, 3, 3, 0"
    })
    void innerductsThatRunUncutAreCutWhereTheyComeOut(int out, int atA, int atB, double expectedHours) {
        Rates rates = EffortCase.span().assessor().rates();
        double plainHours = EffortAssessor.siteHours(EffortCase.span().out(out).quantities(), rates);
        EffortCase span = EffortCase.span().out(out).uncut(atA, atB);

        assertThat(EffortAssessor.siteHours(span.quantities(), rates) - plainHours)
                .isCloseTo(expectedHours, within(1e-9));
        if (out > 0) {
            assertThat(span.effort().stepHours().of(EffortStep.CUTTING)).isCloseTo(expectedHours, within(1e-9));
        }
    }

    /** Each cut is a line of its own vault, after freeing and before the machine is set. */
    @Test
    void cutsAreListedAtTheirVaultBetweenFreeingAndSettingUp() {
        EffortCase span = EffortCase.span().uncut(2, 1);
        List<EffortLine> cuts = span.assessor().lines(span.quantities()).stream()
                .filter(line -> line.part() == EffortStep.CUTTING)
                .toList();

        assertThat(cuts).extracting(EffortLine::place).containsExactly("A", "B");
        assertThat(cuts).extracting(EffortLine::quantityInUnit).containsExactly(2.0, 1.0);
        assertThat(List.of(EffortStep.values()))
                .containsSubsequence(EffortStep.FREEING, EffortStep.CUTTING, EffortStep.SET_UP, EffortStep.PULLING);
        assertThat(EffortCase.span()
                        .uncut(0, 0)
                        .assessor()
                        .lines(EffortCase.span().quantities()))
                .noneMatch(line -> line.part() == EffortStep.CUTTING);
    }

    /** Half an hour for each dead cable by the shipped rate, in the hours of choices and of spans. */
    @Test
    void deadCablesThatComeOutTakeHours() {
        EffortCase span = EffortCase.span().oneDeadCable();
        EffortAssessor assessor = span.assessor();
        Room room = new RoomAssessor(DEAD_CABLES_COME_OUT).assess(span.record().duct());
        List<PullChoice> choices = room.crossSection().orElseThrow().choices();
        var pull = PullAssessment.nothing(Unrecoverable.NO_INNERDUCT);

        assertThat(choices).anyMatch(choice -> choice.deadCablesOut() == 1);
        for (PullChoice choice : choices) {
            Room proposed = room.propose(other -> other.equals(choice) ? 1e-9 : 1e9);
            if (proposed.proposal().filter(choice::equals).isPresent() && choice.innerductsOut() > 0) {
                Effort effort = assessor.assess(span.record(), proposed, pull, Permits.NONE)
                        .orElseThrow();
                assertThat(effort.stepHours().of(EffortStep.DEAD_CABLES))
                        .isCloseTo(0.5 * choice.deadCablesOut(), within(1e-9));
                assertThat(assessor.siteHours(span.record(), choice))
                        .isEqualTo(effort.time().siteHours());
            }
        }
    }

    /** By hand, with the shipped rates: 0.28 h and 182.88 m at 330 m/h, three times. */
    @Test
    void eachPullIsPreparedAndFed() {
        Amounts<EffortStep> hours = EffortCase.span().effort().stepHours();

        assertThat(hours.of(EffortStep.PULLING)).isCloseTo(3 * (0.28 + 182.88 / 330), within(1e-9));
        assertThat(hours.of(EffortStep.FREEING)).isCloseTo(0.75 * 2 * (0.1 + 3 * 0.05), within(1e-9));
        assertThat(hours.of(EffortStep.AIR_TEST)).isCloseTo(0.75 * 4 * 0.05, within(1e-9));
        assertThat(hours.of(EffortStep.PUMPING)).isZero();
    }

    @Test
    void waterIsPumpedOutOfVaultAndDuctAndTheAirTestedAgain() {
        Amounts<EffortStep> dry = EffortCase.span().effort().stepHours();
        Amounts<EffortStep> wet =
                EffortCase.span().wetVault(20).flooded().effort().stepHours();

        double ductM3 = 182.88 * 1e-6 * Math.PI / 4 * (102.26 * 102.26 - 3 * 17.78 * 17.78);
        assertThat(wet.of(EffortStep.PUMPING)).isCloseTo(0.75 * 20 * 0.5 / 40 + ductM3 / 40, within(1e-9));
        // One test more at the wet vault, and one at each mouth once the duct is dry.
        assertThat(wet.of(EffortStep.AIR_TEST) - dry.of(EffortStep.AIR_TEST)).isCloseTo(0.75 * 3 * 0.05, within(1e-9));
    }

    @ParameterizedTest(name = "{0} out, {1} sleeves: {2} h")
    @CsvSource({"1, 1, 0.56576", "1, 0, 0", "2, 3, 0", "3, 3, 0"})
    void sleevesTakeTimeOfTheirOwnOnlyWithFewerThanTwoInnerducts(int out, int sleeves, double expected) {
        Amounts<EffortStep> hours =
                EffortCase.span().out(out).sleeves(sleeves).effort().stepHours();

        assertThat(hours.of(EffortStep.SLEEVES)).isCloseTo(expected, within(1e-9));
    }

    @Test
    void theStepsAddUpToTheHoursOnSite() {
        for (double lengthM : new double[] {20, 182.88, 700, 3000}) {
            Effort effort = EffortCase.span().lengthM(lengthM).effort();

            assertThat(effort.stepHours().total()).isCloseTo(effort.time().siteHours(), within(1e-9));
        }
    }

    /** Setting up and down is done again each day; pulls are not broken off. */
    @Test
    void aShortWindowMakesShiftsThatRepeatDailyWork() {
        Effort one = EffortCase.span().effort();
        Effort more = EffortCase.span().rate(RateKey.DAY_WINDOW_HOURS, 4).effort();

        assertThat(more.time().shifts()).isGreaterThan(1);
        assertThat(more.stepHours().of(EffortStep.SET_UP))
                .isCloseTo(more.time().shifts() * one.stepHours().of(EffortStep.SET_UP), within(1e-9));
        assertThat(more.stepHours().of(EffortStep.PULLING))
                .isEqualTo(one.stepHours().of(EffortStep.PULLING));
    }

    @Test
    void aWindowTooShortForAPullIsSaid() {
        Effort effort = EffortCase.span().lengthM(2000).effort();

        assertThat(effort.time().fitsWindow()).isFalse();
        assertThat(EffortCase.span()
                        .rate(RateKey.DAY_WINDOW_HOURS, 0.5)
                        .effort()
                        .time()
                        .fitsWindow())
                .isFalse();
    }

    @Test
    void nightOnlyWorkCountsNights() {
        Effort night = EffortCase.span()
                .permits(new Permits(
                        List.of(),
                        List.of(),
                        List.of(),
                        Map.of(ZoneRule.NIGHT_ONLY, new RuledPart(0, Optional.empty()))))
                .rate(RateKey.NIGHT_WINDOW_HOURS, 4)
                .effort();

        assertThat(night.time().nights()).isEqualTo(night.time().shifts()).isGreaterThan(1);
        assertThat(night.recoveryMoney())
                .isGreaterThan(EffortCase.span().effort().recoveryMoney());
    }

    /** Works 2 h, 3 h, 3 h, 1 h in shifts of 5 h by hand: 2 + 3 fill the first, 3 + 1 the second. */
    @Test
    void shiftsAreFilledInOrder() {
        var fill = new ShiftFill(5);
        fill.broken(2);
        fill.whole(3);
        assertThat(fill.shifts()).isEqualTo(1);
        fill.whole(3);
        fill.broken(1);
        assertThat(fill.shifts()).isEqualTo(2);
        fill.broken(6);
        assertThat(fill.shifts()).isEqualTo(3);
        fill.whole(12);
        assertThat(fill.shifts()).isEqualTo(6);
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noShiftIsSavedByMoreWork(long seed) {
        var random = new Random(seed);
        double growth = 1 + random.nextDouble();
        var fill = new ShiftFill(5);
        var more = new ShiftFill(5);
        for (int i = 0; i < 8; i++) {
            double hours = 6 * random.nextDouble();
            double moreHours = random.nextBoolean() ? hours : hours * growth;
            if (random.nextBoolean()) {
                fill.broken(hours);
                more.broken(moreHours);
            } else {
                fill.whole(hours);
                more.whole(moreHours);
            }
            assertThat(more.shifts()).isGreaterThanOrEqualTo(fill.shifts());
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void longerSpansAndMoreInnerductsNeverTakeLess(long seed) {
        var random = new Random(seed);
        double lengthM = 10 + 600 * random.nextDouble();
        int out = 1 + random.nextInt(3);
        EffortCase shorter = EffortCase.span().lengthM(lengthM).out(out);
        EffortCase longer =
                EffortCase.span().lengthM(lengthM + 40 * random.nextDouble()).out(out);
        EffortCase more = EffortCase.span().lengthM(lengthM).out(out + 1);
        more.innerducts = 4;
        shorter.innerducts = 4;
        longer.innerducts = 4;

        assertThat(longer.siteHours()).isGreaterThanOrEqualTo(shorter.siteHours());
        assertThat(more.siteHours()).isGreaterThan(shorter.siteHours());
    }

    /** Of two spans at one vault: that vault's daily work and the talk before work count once. */
    @Test
    void neighborsInOneShiftShareAVault() {
        EffortCase first = EffortCase.span().lengthM(60);
        EffortCase second = EffortCase.span().lengthM(80).vaults("V-2", "V-3");
        SharedShift both = first.assessor().inOneShift(List.of(first.quantities(), second.quantities()));

        double expectedSaved = second.effort().time().sharedAtAHours() + 0.25;
        assertThat(both.savedHours()).isCloseTo(expectedSaved, within(1e-9));
        assertThat(both.siteHours()).isCloseTo(first.siteHours() + second.siteHours() - expectedSaved, within(1e-9));
        assertThat(first.effort().time().sharedAtBHours())
                .isEqualTo(second.effort().time().sharedAtAHours());
    }

    @Test
    void spansApartShareTheTalkOnlyAndOneAloneNothing() {
        EffortCase first = EffortCase.span().lengthM(60);
        EffortCase apart = EffortCase.span().lengthM(80).vaults("V-8", "V-9");

        assertThat(first.assessor()
                        .inOneShift(List.of(first.quantities(), apart.quantities()))
                        .savedHours())
                .isCloseTo(0.25, within(1e-9));
        SharedShift alone = first.assessor().inOneShift(List.of(first.quantities()));
        assertThat(alone.siteHours()).isCloseTo(first.siteHours(), within(1e-9));
        assertThat(alone.savedHours()).isZero();
        assertThat(alone.fitsWindow()).isTrue();
    }

    /** Where daily work takes the whole shift, the share that is taken to be left decides how many shifts it takes. */
    @Test
    void theLeastShareOfAShiftIsARate() {
        EffortCase tenth = EffortCase.span().rate(RateKey.DAY_WINDOW_HOURS, 2);
        EffortCase half = EffortCase.span().rate(RateKey.DAY_WINDOW_HOURS, 2).rate(RateKey.LEAST_USABLE_RATIO, 0.5);

        assertThat(tenth.effort().time().shifts())
                .isGreaterThan(half.effort().time().shifts());
    }
}
