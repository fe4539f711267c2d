package org.spanroom.effort;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.effort.EffortQuantities;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateDraws;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateOverride;
import org.spanroom.model.effort.RateRows;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.effort.Surface;
import org.spanroom.model.effort.VaultWork;
import org.spanroom.model.permit.RuledPart;
import org.spanroom.model.permit.ZoneRule;

/** All draws at once against one draw after another: equal to the last bit. */
class DrawnCostsTest {
    private static final int DRAWS = 64;
    private static final int SPANS = 400;

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void everyDrawIsTheOneThatIsCalculatedAlone(long seed) {
        var random = new Random(seed);
        Rates rates = Rates.of(seed == 1 ? ShippedConfig.get().rates() : drawn(random));
        var costs = new DrawnCosts(RateDraws.sampled(rates, seed, DRAWS));
        int shiftsSeen = 0;
        for (int number = 0; number < SPANS; number++) {
            EffortQuantities span = span(random, rates);
            double[] recoveryMoney = new double[DRAWS];
            double[] newBuildMoney = new double[DRAWS];
            costs.recovery(span, recoveryMoney);
            costs.newBuild(span, newBuildMoney);
            for (int draw = 0; draw < DRAWS; draw++) {
                Rates one = rates.sampled(seed, draw);
                assertThat(recoveryMoney[draw])
                        .as("recovery of %s in draw %s", span, draw)
                        .isEqualTo(EffortAssessor.costMoney(span, one));
                assertThat(newBuildMoney[draw])
                        .as("new build of %s in draw %s", span, draw)
                        .isEqualTo(EffortAssessor.newBuildMoney(span, one));
                int shifts = new SiteWork(span, Account.silent(one)).plan().shifts();
                shiftsSeen |= 1 << Math.min(shifts, 5);
            }
        }
        // One shift and several were met, or the way through them was not compared.
        assertThat(shiftsSeen & 0b110).isEqualTo(0b110);
    }

    @Test
    void lastOfFewDrawsIsCalculatedToo() {
        Rates rates = Rates.of(ShippedConfig.get().rates());
        EffortQuantities span = EffortCase.span().quantities();
        for (int count = 1; count <= 20; count++) {
            var costs = new DrawnCosts(RateDraws.sampled(rates, 7, count));
            double[] money = new double[count];
            costs.recovery(span, money);
            assertThat(money[count - 1]).isEqualTo(EffortAssessor.costMoney(span, rates.sampled(7, count - 1)));
        }
    }

    /** The shipped rates with other ranges, and some that differ in zones and at kinds of vaults. */
    private static RateSettings drawn(Random random) {
        RateSettings shipped = ShippedConfig.get().rates();
        var standard = new EnumMap<RateKey, Rate>(RateKey.class);
        var ofVaults = new ArrayList<RateOverride>();
        var ofZones = new ArrayList<RateOverride>();
        for (RateKey key : RateKey.values()) {
            Rate rate = scaled(shipped.standard().get(key), random);
            standard.put(key, rate);
            if (random.nextInt(4) == 0) {
                ofVaults.add(there("large", key, scaled(rate, random)));
            }
            if (random.nextInt(4) == 0) {
                ofZones.add(there("rail", key, scaled(rate, random)));
            }
        }
        return new RateSettings(
                shipped.currency(), shipped.surfaces(), shipped.surfaceWhenUnknown(), standard, ofVaults, ofZones);
    }

    private static RateOverride there(String kind, RateKey key, Rate rate) {
        return new RateOverride(kind, key, rate.value(), rate.low(), rate.high(), rate.source(), rate.date());
    }

    /** Half to double; a ratio stays in its range. */
    private static Rate scaled(Rate rate, Random random) {
        double by = rate.high() <= 1 ? 0.5 + random.nextDouble() / 2 : 0.5 + 1.5 * random.nextDouble();
        return new Rate(by * rate.value(), by * rate.low(), by * rate.high(), "test", "2026");
    }

    private static EffortQuantities span(Random random, Rates rates) {
        Set<String> zones = random.nextInt(3) == 0 ? Set.of("rail") : Set.of();
        int gained = random.nextInt(13);
        int sleeves = random.nextInt(4);
        return new EffortQuantities(
                0.1 + 400 * random.nextDouble(),
                random.nextInt(5),
                random.nextInt(3),
                sleeves,
                3 * sleeves,
                gained,
                random.nextInt(gained + 1),
                random.nextInt(5),
                random.nextInt(4) == 0 ? 0 : random.nextDouble(),
                random.nextInt(3) == 0 ? 3 * random.nextDouble() : 0,
                vault(random, rates, zones),
                vault(random, rates, zones),
                rules(random),
                random.nextInt(4),
                random.nextInt(6),
                0,
                List.of(Surface.values()).get(random.nextInt(Surface.values().length)),
                false,
                rates.rows(zones, ""));
    }

    private static VaultWork vault(Random random, Rates rates, Set<String> zones) {
        RateRows rows = rates.rows(zones, List.of("", "large").get(random.nextInt(2)));
        OptionalDouble volumeM3 =
                random.nextBoolean() ? OptionalDouble.of(0.5 + 60 * random.nextDouble()) : OptionalDouble.empty();
        return new VaultWork("V", volumeM3, random.nextBoolean(), random.nextBoolean(), random.nextInt(3), rows);
    }

    private static Map<ZoneRule, RuledPart> rules(Random random) {
        var rules = new EnumMap<ZoneRule, RuledPart>(ZoneRule.class);
        for (ZoneRule rule : ZoneRule.values()) {
            if (random.nextInt(4) == 0) {
                rules.put(rule, new RuledPart(random.nextInt(500), Optional.empty()));
            }
        }
        return rules;
    }
}
