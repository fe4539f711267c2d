package org.spanroom.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.effort.EffortStep;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.learn.RateChange;

/** Rates that follow reported production: crews of known speed, reports as planned, errors of writing, and learning again. */
class LearnedRatesTest {
    private static final RateSettings SHIPPED = ShippedConfig.get().rates();
    private static final Set<RateKey> NEVER = Set.of(
            RateKey.PURGE_LEAST_HOURS,
            RateKey.PURGE_AIR_CHANGES,
            RateKey.AIR_RETEST_HOURS,
            RateKey.CHIPPING_ALONGSIDE_RATIO,
            RateKey.VAULT_ELAPSED_RATIO);

    private static LearnedRates.Proposal learn(FieldBook book, RateSettings rates) {
        return LearnedRates.of(book, ReportedWork.RUN, PlannedFigures.NONE, rates, SHIPPED, LearnSettings.STANDARD);
    }

    private static Rate rate(RateSettings rates, RateKey key) {
        return Objects.requireNonNull(rates.standard().get(key));
    }

    private static FieldBook everyStep(int spans, double ratio) {
        var work = new ReportedWork();
        for (int span = 1; span <= spans; span++) {
            double planned = 0.1 * span;
            for (EffortStep step : EffortStep.values()) {
                planned += 0.07;
                work.hours("S" + span, step.key(), planned, ratio * planned);
            }
        }
        return work.book();
    }

    @Test
    void reportsAsPlannedKeepEveryValueAndNarrowEveryRange() {
        RateSettings after = learn(everyStep(14, 1), SHIPPED).after();

        int narrower = 0;
        for (RateKey key : RateKey.values()) {
            Rate was = rate(SHIPPED, key);
            Rate now = rate(after, key);
            assertEquals(Double.doubleToLongBits(was.value()), Double.doubleToLongBits(now.value()), key.key());
            assertTrue(now.low() >= was.low() && now.high() <= was.high(), key.key());
            narrower += now.low() > was.low() ? 1 : 0;
        }
        assertEquals(22, narrower);
        assertEquals(
                "learned from 14 spans to 2027-03-31; shipped 0.28, illustrative",
                rate(after, RateKey.PULL_PREPARING_HOURS).source());
        assertEquals("2027-03-31", rate(after, RateKey.PULL_PREPARING_HOURS).date());
    }

    /** 15 spans against 5 that the shipped value counts as: three quarters of the way, in logarithms. */
    @ParameterizedTest
    @EnumSource(EffortStep.class)
    void aSlowerCrewMakesHoursLongerAndSpeedsLower(EffortStep step) {
        LearnedRates.Proposal proposal = learn(everyStep(15, 1.6), SHIPPED);

        double followed = Math.pow(1.6, 0.75);
        for (RateKey key : Learnable.of(step).rates()) {
            double expected = rate(SHIPPED, key).value() * (key.divides() ? 1 / followed : followed);
            assertEquals(expected, rate(proposal.after(), key).value(), 1e-5 * expected, key.key());
        }
    }

    @Test
    void minimumsOfSourcesAndSharesOfTimeStay() {
        RateSettings after = learn(everyStep(40, 3), SHIPPED).after();

        NEVER.forEach(key -> assertEquals(rate(SHIPPED, key), rate(after, key)));
        Set<RateKey> changed = Set.of(RateKey.values()).stream()
                .filter(key -> !rate(SHIPPED, key).equals(rate(after, key)))
                .collect(Collectors.toSet());
        assertEquals(22, changed.size());
    }

    /** A crew that stays at the blower for less time may have cut the purge short: reports never shorten it. */
    @Test
    void ventilationIsNotShortenedByReports() {
        RateSettings faster = learn(everyStep(40, 0.5), SHIPPED).after();
        RateSettings slower = learn(everyStep(40, 2), SHIPPED).after();

        assertEquals(rate(SHIPPED, RateKey.BLOWER_M3_PER_HOUR), rate(faster, RateKey.BLOWER_M3_PER_HOUR));
        assertTrue(rate(slower, RateKey.BLOWER_M3_PER_HOUR).value()
                < rate(SHIPPED, RateKey.BLOWER_M3_PER_HOUR).value());
    }

    /** Each span's speed scatters about the crew's; the learned value is nearer to the crew's than the shipped one. */
    @Test
    void theRateOfASimulatedCrewIsFound() {
        var random = new SplittableRandom(1);
        var work = new ReportedWork();
        for (int span = 0; span < 60; span++) {
            double planned = 0.5 + random.nextDouble();
            work.hours("S" + span, "pulling", planned, planned * 1.45 * Math.exp(0.25 * random.nextGaussian()));
        }
        Rate learned = rate(learn(work.book(), SHIPPED).after(), RateKey.PULL_FEED_M_PER_HOUR);

        assertEquals(330 / 1.45, learned.value(), 0.08 * 330 / 1.45);
        assertTrue(learned.low() < learned.value() && learned.value() < learned.high());
    }

    @Test
    void errorsOfWritingAreLeftOutAndListed() {
        var work = new ReportedWork();
        for (int span = 1; span <= 5; span++) {
            work.hours("S" + span, "sealing", 0.2, 0.2);
        }
        work.hours("S6", "sealing", 0.2, 4.2)
                .hours("S7", "sealing", 0.2, 0.009)
                .hours("S8", "sealing", 0.2, 0)
                .hours("S9", "sealing", 0.2, -1)
                .hours("S10", "seeling", 0.2, 0.2)
                .number("S11", FieldFact.STEP_HOURS, "sealing", FactUnit.H, 0.2);
        LearnedRates.Proposal proposal = learn(work.book(), SHIPPED);

        assertEquals(
                List.of(6, 7, 8, 9, 10, 11),
                proposal.leftOut().stream().map(left -> left.entry()).toList());
        assertEquals(
                rate(SHIPPED, RateKey.SEALING_HOURS).value(),
                rate(proposal.after(), RateKey.SEALING_HOURS).value(),
                0);
    }

    @Test
    void workThatIsNotDoneSaysNothingOfHours() {
        var work = new ReportedWork();
        for (int span = 1; span <= 4; span++) {
            work.hours("S" + span, "sealing", 0.2, 0.1).word("S" + span, FieldFact.STATUS, "", "stopped");
        }
        LearnedRates.Proposal proposal = learn(work.book(), SHIPPED);

        assertEquals(SHIPPED, proposal.after());
        assertEquals(4, proposal.leftOut().size());
    }

    @Test
    void ofTwoSpansNothingIsProposed() {
        var work = new ReportedWork().hours("S1", "sealing", 0.2, 0.3).hours("S2", "sealing", 0.2, 0.3);
        LearnedRates.Proposal proposal = learn(work.book(), SHIPPED);

        assertEquals(SHIPPED, proposal.after());
        assertEquals(
                "2 spans reported, fewer than 3",
                change(proposal, RateKey.SEALING_HOURS).why());
    }

    /** A span that reports a step twice counts once, with what was said last. */
    @Test
    void eachSpanCountsOnce() {
        var work = new ReportedWork();
        for (int span = 1; span <= 3; span++) {
            work.hours("S" + span, "sealing", 0.2, 0.9);
        }
        work.on(LocalDate.of(2027, 4, 2));
        for (int span = 1; span <= 3; span++) {
            work.hours("S" + span, "sealing", 0.2, 0.2);
        }
        RateChange change = change(learn(work.book(), SHIPPED), RateKey.SEALING_HOURS);

        assertEquals(3, change.reported());
        assertEquals(1, change.estimate().orElseThrow().medianRatio(), 0);
    }

    /** Proposals that are accepted are not learned a second time; later spans count beside those before. */
    @Test
    void learningAgainTakesLaterReportsOnly() {
        RateSettings once = learn(everyStep(10, 1.5), SHIPPED).after();
        RateSettings twice = learn(everyStep(10, 1.5), once).after();
        assertEquals(once, twice);

        var work = new ReportedWork().on(LocalDate.of(2028, 3, 31));
        for (int span = 1; span <= 5; span++) {
            work.hours("T" + span, "sealing", 0.2, 0.4);
        }
        RateChange change = change(learn(work.book(), once), RateKey.SEALING_HOURS);

        assertEquals(5.0 / 20, change.estimate().orElseThrow().weightRatio(), 0);
        assertEquals(
                "learned from 15 spans to 2028-03-31; shipped 0.12, illustrative",
                change.after().orElseThrow().source());
    }

    /** What another run's sheet planned may rest on other rates: the run's own figure is compared. */
    @Test
    void aPlanOfAnotherRunIsReplacedByTheRunsOwnFigure() {
        var work = new ReportedWork().ofRun("ffffffff");
        for (int span = 1; span <= 5; span++) {
            work.hours("S" + span, "sealing", 0.1, 0.3);
        }
        PlannedFigures figures = new PlannedFigures() {
            @Override
            public OptionalDouble find(String spanId, FieldFact fact, String item) {
                return OptionalDouble.of(0.2);
            }

            @Override
            public Optional<PlannedWork> work(String spanId) {
                return Optional.empty();
            }
        };
        LearnedRates.Proposal proposal =
                LearnedRates.of(work.book(), ReportedWork.RUN, figures, SHIPPED, SHIPPED, LearnSettings.STANDARD);

        assertEquals(
                1.5,
                change(proposal, RateKey.SEALING_HOURS).estimate().orElseThrow().medianRatio(),
                1e-12);
    }

    @Test
    void quantitiesFollowTheSameRule() {
        var work = new ReportedWork();
        for (int span = 1; span <= 5; span++) {
            String id = "S" + span;
            work.number(id, FieldFact.LUBRICANT_USED, "", FactUnit.L, 4, 8)
                    .number(id, FieldFact.INNERDUCT_MASS, "", FactUnit.KG, 400, 440)
                    .number(id, FieldFact.RECYCLED_MASS, "", FactUnit.KG, 320, 220)
                    .number(id, FieldFact.BAGS, "", FactUnit.NONE, 20, 11)
                    .number(id, FieldFact.LOADS, "", FactUnit.NONE, 1, 1)
                    .number(id, FieldFact.CREW_PERSONS, "", FactUnit.NONE, 5, 6)
                    .number(id, FieldFact.COST, "", FactUnit.MONEY, 9000, 12_000);
        }
        LearnedRates.Proposal proposal = learn(work.book(), SHIPPED);
        RateSettings after = proposal.after();

        assertEquals(
                0.02 * Math.sqrt(2), rate(after, RateKey.LUBRICANT_LITERS_PER_M).value(), 1e-6);
        assertEquals(0, rate(after, RateKey.LUBRICANT_LITERS_PER_M).low(), 0);
        assertEquals(20 * Math.sqrt(1.1 * 20 / 11), rate(after, RateKey.BAG_KG).value(), 1e-3);
        assertEquals(
                0.8 * Math.sqrt(220.0 / 320 / 1.1),
                rate(after, RateKey.RECYCLED_RATIO).value(),
                1e-5);
        assertEquals(5 * Math.sqrt(1.2), rate(after, RateKey.CREW_PERSONS).value(), 1e-4);
        assertEquals(rate(SHIPPED, RateKey.HDPE_KG_PER_M3), rate(after, RateKey.HDPE_KG_PER_M3));
        Map<String, Double> shown = proposal.changes().stream()
                .filter(change -> change.rate().isEmpty())
                .collect(Collectors.toMap(
                        RateChange::learned,
                        change -> change.estimate().orElseThrow().medianRatio()));
        assertEquals(1.1, shown.get("innerduct_mass"), 1e-12);
        assertEquals(12.0 / 9, shown.get("cost"), 1e-12);
    }

    /** Of 100 m and two tails of 2 m each, a tenth more than planned is 10.4 m more, 5.2 m for each tail. */
    @Test
    void sleeveUsedMovesTheTails() {
        var work = new ReportedWork();
        for (int span = 1; span <= 5; span++) {
            work.number("S" + span, FieldFact.SLEEVE_USED, "", FactUnit.M, 312, 1.1 * 312);
        }
        PlannedFigures figures = new PlannedFigures() {
            @Override
            public OptionalDouble find(String spanId, FieldFact fact, String item) {
                return item.equals(TAIL) ? OptionalDouble.of(2) : OptionalDouble.empty();
            }

            @Override
            public Optional<PlannedWork> work(String spanId) {
                return Optional.of(new PlannedWork("B:V1:V2", 100, 3, 6, 9000, 90, 10, 400, 250, 0.838));
            }
        };
        LearnedRates.Proposal proposal =
                LearnedRates.of(work.book(), ReportedWork.RUN, figures, SHIPPED, SHIPPED, LearnSettings.STANDARD);

        assertEquals(
                7.2 / 2,
                change(proposal, RateKey.SLEEVE_TAIL_M).estimate().orElseThrow().medianRatio(),
                1e-9);
        assertEquals(
                2 * Math.sqrt(3.6),
                rate(proposal.after(), RateKey.SLEEVE_TAIL_M).value(),
                1e-4);
    }

    /** Shares stay shares, however much a recycler takes. */
    @Test
    void aShareIsNeverAboveOne() {
        var work = new ReportedWork();
        for (int span = 1; span <= 40; span++) {
            work.number("S" + span, FieldFact.RECYCLED_MASS, "", FactUnit.KG, 100, 180);
        }
        Rate recycled = rate(learn(work.book(), SHIPPED).after(), RateKey.RECYCLED_RATIO);

        assertEquals(1, recycled.value(), 0);
        assertEquals(1, recycled.high(), 0);
    }

    /** Crews that report in pounds and gallons teach the same. */
    @Test
    void unitsOfReportsDoNotMatter() {
        var metric = new ReportedWork();
        var us = new ReportedWork();
        for (int span = 1; span <= 5; span++) {
            metric.number("S" + span, FieldFact.LUBRICANT_USED, "", FactUnit.L, 4, 8);
            us.number("S" + span, FieldFact.LUBRICANT_USED, "", FactUnit.GAL, FactUnit.GAL.of(4), FactUnit.GAL.of(8));
        }
        RateKey key = RateKey.LUBRICANT_LITERS_PER_M;

        assertEquals(
                rate(learn(metric.book(), SHIPPED).after(), key).value(),
                rate(learn(us.book(), SHIPPED).after(), key).value(),
                1e-12);
    }

    @Test
    void everyStepTeachesARateThatItsHoursAreMadeOf() {
        for (EffortStep step : EffortStep.values()) {
            assertNotEquals(List.of(), Learnable.of(step).rates(), step.key());
            Learnable.of(step).rates().forEach(key -> assertTrue(!NEVER.contains(key), key.key()));
        }
    }

    private static RateChange change(LearnedRates.Proposal proposal, RateKey key) {
        return proposal.changes().stream()
                .filter(change -> change.rate().equals(Optional.of(key)))
                .findFirst()
                .orElseThrow();
    }
}
