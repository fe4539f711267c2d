package org.spanroom.effort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.effort.BuildItem;
import org.spanroom.model.effort.BuildMethod;
import org.spanroom.model.effort.CostItem;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.EffortLine;
import org.spanroom.model.effort.EffortPart;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Unrecoverable;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.RuledPart;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneTouch;
import org.spanroom.model.pull.PullAssessment;

class MoneyTest {
    private static final double LB_PER_1000_FT = 0.45359237 / 304.8;

    /** Published weights of SDR 13.5 innerduct in lb per 1000 ft: 110, 168, 264, 343, 531. */
    @ParameterizedTest(name = "{0} in: {2} lb per 1000 ft")
    @CsvSource({"1.050, 0.078, 110", "1.315, 0.097, 168", "1.660, 0.123, 264", "1.900, 0.141, 343", "2.375, 0.176, 531"
    })
    void innerductMassIsThePublishedOne(double outsideIn, double wallIn, double poundsPer1000Ft) {
        var innerduct = new Innerduct("i", outsideIn * 25.4, wallIn * 25.4, List.of());

        assertThat(innerduct.massKgPerM(955) / LB_PER_1000_FT).isCloseTo(poundsPer1000Ft, within(1.1));
    }

    /** 264 lb per 1000 ft (published), three of 600 ft: 475.2 lb = 215.5 kg; in bags of 20 kg and loads of 1000 kg. */
    @Test
    void whatComesOutIsWeighedBaggedAndCarried() {
        Effort effort = EffortCase.span().effort();

        assertThat(effort.material().innerductKg()).isCloseTo(215.5, within(0.5));
        assertThat(effort.material().bags()).isEqualTo(11);
        assertThat(effort.material().loads()).isEqualTo(1);
        assertThat(effort.material().recycledKg())
                .isCloseTo(0.8 * effort.material().innerductKg(), within(1e-9));
        assertThat(effort.material().sleeveM()).isCloseTo(3 * (182.88 + 4), within(1e-9));
        assertThat(effort.material().lubricantLiters()).isCloseTo(3 * 182.88 * 0.02, within(1e-9));
    }

    /** By hand from the shipped rates: 5 persons at 95, 120 for traffic control, 160 for machines, 15 % overhead; 15 % more for labor by night. */
    @Test
    void anHourOnSiteCostsTheCrewAndWhatStandsThere() {
        assertThat(EffortCase.span().effort().siteHourMoney()).isCloseTo((5 * 95 + 120 + 160) * 1.15, within(1e-9));
        assertThat(EffortCase.span()
                        .permits(new Permits(
                                List.of(),
                                List.of(),
                                List.of(),
                                Map.of(ZoneRule.NIGHT_ONLY, new RuledPart(0, Optional.empty()))))
                        .effort()
                        .siteHourMoney())
                .isCloseTo((5 * 95 * 1.15 + 120 + 160) * 1.15, within(1e-9));
    }

    /** EPA WARM v16, exhibit 5-11: 0.76 t per short ton; a short ton is 907.18474 kg. */
    @Test
    void recyclingAvoidsWhatWarmSays() {
        Effort effort = EffortCase.span().effort();

        assertThat(effort.material().co2eWarmKg() / effort.material().recycledKg())
                .isCloseTo(760 / 907.18474, within(0.0005));
    }

    /**
     * By hand for one meter of roadway, 0.6 m wide, one duct: PVC 1.79 x 3.23, asphalt 0.10 m x 2300 x 0.071 x 0.6 m = 9.8, base
     * 0.15 m x 2000 x 0.005 x 0.6 = 0.9, concrete 0.09 m2 x 2400 x 0.148 = 32.0 (factors: ICE v2.0).
     */
    @Test
    void materialsOfATrenchEmitWhatIceSays() {
        Effort effort = EffortCase.span()
                .rate(RateKey.SLEEVE_KG_PER_M, 0)
                .rate(RateKey.BORING_ROADWAY_MONEY_PER_M, 5000)
                .effort();

        assertThat(effort.newBuild().method()).isEqualTo(BuildMethod.OPEN_TRENCH);
        assertThat(effort.newBuild().co2eIceKg() / 182.88).isCloseTo(1.79 * 3.23 + 9.798 + 0.9 + 31.968, within(1e-6));
        assertThat(effort.newBuild().co2eDigKg() / 182.88).isCloseTo(9.798 + 0.9 + 31.968, within(1e-6));
    }

    /** By hand with the shipped rates. */
    @Test
    void costIsMadeOfItsItems() {
        Effort effort = EffortCase.span().effort();
        double siteHours = effort.time().siteHours();

        assertThat(effort.time().laborHours()).isCloseTo(5 * (siteHours + 1), within(1e-9));
        assertThat(effort.costMoney().of(CostItem.LABOR)).isCloseTo(5 * (siteHours + 1) * 95, within(1e-6));
        assertThat(effort.costMoney().of(CostItem.PERMITS)).isCloseTo(150 + 2 * 85, within(1e-6));
        assertThat(effort.costMoney().of(CostItem.SEALS)).isCloseTo(120, within(1e-6));
        double beforeOverhead = effort.recoveryMoney()
                - effort.costMoney().of(CostItem.OVERHEAD)
                - effort.costMoney().of(CostItem.RECYCLING);
        assertThat(effort.costMoney().of(CostItem.OVERHEAD)).isCloseTo(0.15 * beforeOverhead, within(1e-6));
        assertThat(effort.costMoney().of(CostItem.RECYCLING)).isNegative();
    }

    /** By hand: boring at 240 a meter and two pits beats a trench at 250, restoring 0.6 x 120 and the fee of 0.6 x 23.92. */
    @Test
    void theCheapestAllowedMethodIsTaken() {
        Effort road = EffortCase.span().effort();
        Effort verge = EffortCase.span().surface("grass verge").lengthM(60).effort();

        assertThat(road.newBuild().method()).isEqualTo(BuildMethod.BORING);
        assertThat(road.newBuild().costMoney().of(BuildItem.PLACING)).isCloseTo(240 * 182.88 + 3600, within(1e-6));
        assertThat(road.newBuild().trenchM()).isZero();
        assertThat(verge.newBuild().method()).isEqualTo(BuildMethod.OPEN_TRENCH);
        assertThat(verge.newBuild().costMoney().of(BuildItem.PLACING)).isCloseTo(87 * 60, within(1e-6));
        assertThat(verge.newBuild().costMoney().of(BuildItem.CUT_FEES)).isZero();
    }

    @Test
    void noTrenchIsCutUnderABan() {
        Effort part = EffortCase.span()
                .rate(RateKey.BORING_ROADWAY_MONEY_PER_M, 900)
                .permits(cutBannedOn(40))
                .effort();
        Effort all = EffortCase.span()
                .rate(RateKey.BORING_ROADWAY_MONEY_PER_M, 900)
                .permits(cutBannedOn(500))
                .effort();

        assertThat(part.newBuild().method()).isEqualTo(BuildMethod.TRENCH_AND_BORING);
        assertThat(part.newBuild().boreM()).isCloseTo(40, within(1e-9));
        assertThat(part.newBuild().trenchM()).isCloseTo(142.88, within(1e-9));
        assertThat(all.newBuild().method()).isEqualTo(BuildMethod.BORING);
        assertThat(all.newBuildMoney()).isGreaterThan(part.newBuildMoney());
    }

    /** Nine cables are gained in three sleeves of three cells: one duct; ten would need two. */
    @Test
    void newBuildIsOfLikeCapacity() {
        EffortCase gained = EffortCase.span();
        gained.positionsNow = 2;
        EffortCase more = EffortCase.span().sleeves(4);

        assertThat(gained.effort().newBuild().ducts()).isEqualTo(1);
        assertThat(more.effort().newBuild().ducts()).isEqualTo(2);
        // Seven places need three sleeves of three cells, in the new duct as well.
        assertThat(gained.quantities().buildSleeves()).isEqualTo(3);
        double perCableM = gained.effort().recoveryMoney() / (7 * 182.88);
        assertThat(gained.effort().recoveryMoneyPerCableM().orElseThrow()).isCloseTo(perCableM, within(1e-9));
    }

    /**
     * Of nine positions gained, this many are needed: new build lays ducts and sleeves of three cells for these only, by hand, and its
     * cost is divided by them.
     */
    @ParameterizedTest(name = "demand {0}: {1} needed, {2} sleeves in {3} ducts")
    @CsvSource({"0, 9, 3, 3", "1, 1, 1, 1", "3, 3, 1, 1", "4, 4, 2, 2", "9, 9, 3, 3", "20, 9, 3, 3"})
    void newBuildIsPricedForThePositionsThatAreNeeded(int demand, int needed, int sleeves, int ducts) {
        EffortCase span = EffortCase.span().rate(RateKey.NEW_DUCT_CABLES, 3).demand(demand);
        Effort effort = span.effort();

        assertThat(effort.quantities().positionsNeeded()).isEqualTo(needed);
        assertThat(effort.newBuild().ducts()).isEqualTo(ducts);
        assertThat(effort.newBuild().costMoney().of(BuildItem.SLEEVES))
                .isCloseTo(sleeves * (182.88 + 4) * 6.5, within(1e-6));
        assertThat(effort.newBuildMoneyPerCable().orElseThrow())
                .isCloseTo(effort.newBuildMoney() / needed, within(1e-9));
        assertThat(effort.newBuildMoneyPerCableM().orElseThrow())
                .isCloseTo(effort.newBuildMoney() / (needed * 182.88), within(1e-9));
        // Recovery lays all of its sleeves whatever is needed: its cost is divided by what it gains.
        assertThat(effort.recoveryMoney()).isEqualTo(EffortCase.span().effort().recoveryMoney());
        assertThat(effort.recoveryMoneyPerCable().orElseThrow()).isCloseTo(effort.recoveryMoney() / 9, within(1e-9));
        assertThat(effort.savingMoney()).isCloseTo(effort.newBuildMoney() - effort.recoveryMoney(), within(1e-9));
    }

    /** One permit at least, by the shipped rate; of more that are known, all count. */
    @ParameterizedTest(name = "{0} known, at least {1}: {2}")
    @CsvSource({"0, 1, 1", "0, 0, 0", "2, 1, 2", "2, 3, 3"})
    void permitsAreAtLeastAsManyAsTheRateSays(int known, double least, double expected) {
        var permits = new Permits(List.of(), List.of("lane", "entry").subList(0, known), List.of(), Map.of(), 5, 60);
        Effort effort = EffortCase.span()
                .permits(permits)
                .rate(RateKey.LEAST_PERMITS, least)
                .effort();

        assertThat(effort.costMoney().of(CostItem.PERMITS)).isCloseTo(expected * (150 + 2 * 85), within(1e-6));
        assertThat(effort.newBuild().costMoney().of(BuildItem.PERMITS))
                .isCloseTo(expected * (600 + 8 * 85), within(1e-6));
    }

    @Test
    void whereNothingIsGainedNothingWouldBeBuilt() {
        EffortCase none = EffortCase.span().sleeves(0);

        assertThat(none.effort().newBuildMoney()).isZero();
        assertThat(none.effort().newBuild().method()).isEqualTo(BuildMethod.NONE);
        assertThat(none.effort().recoveryMoneyPerCableM()).isEmpty();
        assertThat(none.effort().recoveryMoneyPerCable()).isEmpty();
        assertThat(none.effort().newBuildMoneyPerCable()).isEmpty();
        assertThat(none.effort().savingMoney()).isNegative();
    }

    @Test
    void whereNothingComesOutThereIsNoEffort() {
        EffortCase none = EffortCase.span().out(0);

        assertThat(none.assessor()
                        .assess(
                                none.record(),
                                none.room(),
                                PullAssessment.nothing(Unrecoverable.NO_INNERDUCT),
                                Permits.NONE))
                .isEqualTo(Optional.empty());
    }

    @Test
    void aKindOfVaultHasRatesOfItsOwn() {
        double large = EffortCase.span().vaultKind("Vault").siteHours();
        double others = EffortCase.span().vaultKind("maintenance hole").siteHours();

        // Seven changes of 20 m3 take less than ten minutes, so that the volume does not show; without a least time it
        // does.
        assertThat(large).isEqualTo(others);
        double changesOnly = EffortCase.span()
                        .vaultKind("Vault")
                        .rate(RateKey.PURGE_LEAST_HOURS, 0)
                        .siteHours()
                - EffortCase.span().rate(RateKey.PURGE_LEAST_HOURS, 0).siteHours();
        assertThat(changesOnly).isCloseTo(0.75 * 2 * 7 * (20 - 13.6) / 1087, within(1e-9));
    }

    @Test
    void aKindOfZoneHasRatesOfItsOwnAndTheCostlierHolds() {
        Effort rail = EffortCase.span().permits(in("rail")).effort();
        Effort both = EffortCase.span().permits(in("environmental", "rail")).effort();

        assertThat(rail.costMoney().of(CostItem.PERMITS)).isCloseTo(2500 + 2 * 85, within(1e-6));
        assertThat(both.costMoney().of(CostItem.PERMITS))
                .isEqualTo(rail.costMoney().of(CostItem.PERMITS));
    }

    @Test
    void permitsThatAreAvoidedCostOnlyNewBuild() {
        var permits = new Permits(List.of(), List.of("lane"), List.of("cut", "review"), Map.of(), 5, 60);
        Effort more = EffortCase.span().permits(permits).effort();
        Effort one = EffortCase.span().effort();

        assertThat(more.recoveryMoney()).isEqualTo(one.recoveryMoney());
        assertThat(more.quantities().leadDaysAvoided()).isEqualTo(55);
        assertThat(more.newBuildMoney() - one.newBuildMoney()).isCloseTo(2 * (600 + 8 * 85), within(1e-6));
    }

    static LongStream seeds() {
        return LongStream.range(0, 40);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aLongerSpanIsNeverCheaperToRecoverOrToBuild(long seed) {
        var random = new Random(seed);
        String surface = List.of("asphalt", "footway", "grass").get(random.nextInt(3));
        var rules = new EnumMap<ZoneRule, RuledPart>(ZoneRule.class);
        rules.put(ZoneRule.CUT_BAN, new RuledPart(150 * random.nextDouble(), Optional.empty()));
        if (random.nextBoolean()) {
            rules.put(ZoneRule.NIGHT_ONLY, new RuledPart(0, Optional.empty()));
        }
        var banned = new Permits(List.of(), List.of(), List.of(), rules);
        double lengthM = 5 + 500 * random.nextDouble();
        Effort shorter = EffortCase.span()
                .surface(surface)
                .permits(banned)
                .lengthM(lengthM)
                .effort();
        Effort longer = EffortCase.span()
                .surface(surface)
                .permits(banned)
                .lengthM(lengthM * (1 + 0.5 * random.nextDouble()))
                .effort();

        assertThat(longer.recoveryMoney()).isGreaterThanOrEqualTo(shorter.recoveryMoney());
        assertThat(longer.newBuildMoney()).isGreaterThanOrEqualTo(shorter.newBuildMoney());
    }

    /** Twice the price of an hour makes twice the labor, and nothing else but overhead moves. */
    @Test
    void costIsLinearInARateOfMoney() {
        Effort once = EffortCase.span().effort();
        Effort twice = EffortCase.span().rate(RateKey.LABOR_MONEY_PER_HOUR, 190).effort();

        double more = once.costMoney().of(CostItem.LABOR);
        assertThat(twice.costMoney().of(CostItem.LABOR)).isCloseTo(2 * more, within(1e-6));
        assertThat(twice.recoveryMoney() - once.recoveryMoney()).isCloseTo(1.15 * more, within(1e-6));
        assertThat(twice.time()).isEqualTo(once.time());
    }

    /** The account that is shown adds up to what was calculated, part by part. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theLinesAddUpToTheEffort(long seed) {
        var random = new Random(seed);
        EffortCase span = EffortCase.span()
                .lengthM(10 + 900 * random.nextDouble())
                .surface(List.of("asphalt", "footway", "grass").get(random.nextInt(3)))
                .out(1 + random.nextInt(3));
        if (random.nextBoolean()) {
            span.flooded().wetVault(10);
        }
        Effort effort = span.effort();
        Map<EffortPart.Kind, Double> sums = new EnumMap<>(EffortPart.Kind.class);
        for (EffortLine line : span.assessor().lines(span.quantities())) {
            double product = line.rate().divides()
                    ? line.quantityInUnit() / line.rateInUnit()
                    : line.quantityInUnit() * line.rateInUnit();
            assertThat(line.amountInUnit()).isCloseTo(product * line.factorRatio(), within(1e-9));
            sums.merge(line.part().kind(), line.amountInUnit(), Double::sum);
        }

        assertThat(sums.get(EffortPart.Kind.HOURS)).isCloseTo(effort.time().siteHours(), within(1e-6));
        assertThat(sums.get(EffortPart.Kind.COST)).isCloseTo(effort.recoveryMoney(), within(1e-6));
        assertThat(sums.get(EffortPart.Kind.NEW_BUILD)).isCloseTo(effort.newBuildMoney(), within(1e-6));
        assertThat(sums.get(EffortPart.Kind.CARBON))
                .isCloseTo(effort.newBuild().co2eIceKg() + effort.material().co2eWarmKg(), within(1e-6));
    }

    @Test
    void theQuickWayGivesTheSame() {
        EffortCase span = EffortCase.span().flooded();
        Rates rates = span.assessor().rates();
        Effort effort = span.effort();

        assertThat(EffortAssessor.siteHours(span.quantities(), rates))
                .isEqualTo(effort.time().siteHours());
        assertThat(EffortAssessor.costMoney(span.quantities(), rates)).isCloseTo(effort.recoveryMoney(), within(1e-9));
        assertThat(EffortAssessor.newBuildMoney(span.quantities(), rates))
                .isCloseTo(effort.newBuildMoney(), within(1e-9));
    }

    /** Generous on purpose: a microsecond is what it takes on an idle machine, several times over. */
    @Test
    void drawnRatesAreCalculatedQuickly() {
        EffortCase span = EffortCase.span().flooded();
        Rates[] drawn = new Rates[64];
        for (int i = 0; i < drawn.length; i++) {
            drawn[i] = span.assessor().rates().sampled(7, i);
        }
        var quantities = span.quantities();
        double sum = 0;
        double bestNanos = Double.POSITIVE_INFINITY;
        for (int round = 0; round < 300; round++) {
            long start = System.nanoTime();
            for (Rates rates : drawn) {
                sum += EffortAssessor.costMoney(quantities, rates) + EffortAssessor.newBuildMoney(quantities, rates);
            }
            bestNanos = Math.min(bestNanos, (System.nanoTime() - start) / 64.0);
        }

        assertThat(sum).isPositive();
        assertThat(bestNanos).isLessThan(10_000);
    }

    private static Permits in(String... kinds) {
        List<ZoneTouch> touches = java.util.Arrays.stream(kinds)
                .map(kind -> new Zone(0, kind, kind, "", Optional.<LocalDate>empty(), List.of()))
                .map(zone -> new ZoneTouch(zone, 10, true, false))
                .toList();
        return new Permits(touches, List.of(), List.of(), Map.of());
    }

    private static Permits cutBannedOn(double lengthM) {
        var part = new RuledPart(lengthM, Optional.empty());
        return new Permits(List.of(), List.of(), List.of(), Map.of(ZoneRule.CUT_BAN, part));
    }
}
