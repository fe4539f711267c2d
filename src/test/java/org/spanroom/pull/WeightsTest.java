package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.pull.PullCase.FT_M;
import static org.spanroom.pull.PullCase.LBF_N;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.pull.PullSettings;

/** Weights in air and in water; values in lb/ft, derived from 62.4 lb/ft3 of water (1000 kg/m3 here). */
class WeightsTest {
    private static final Innerduct INNERDUCT = PullCase.exampleInnerduct("i");

    @Test
    void inAirTheBodyWeighsInnerductAndCable() {
        Weights weights = weights(false, false);

        assertThat(lbPerFt(weights.cablesNPerM(INNERDUCT))).isCloseTo(0.080, within(1e-9));
        assertThat(lbPerFt(weights.bodyNPerM(INNERDUCT))).isCloseTo(0.343, within(1e-9));
    }

    /** Buoyancy 0.938 less 0.343: pushed up with 0.60 lb/ft, 1.7 times the dry load. */
    @Test
    void sealedInnerductInAFloodedDuctIsPushedUp() {
        Weights weights = weights(true, true);

        assertThat(lbPerFt(weights.bodyNPerM(INNERDUCT))).isCloseTo(-0.595, within(0.002));
        // Its cable is in air.
        assertThat(lbPerFt(weights.cablesNPerM(INNERDUCT))).isCloseTo(0.080, within(1e-9));
        assertThat(lbPerFt(weights.looseNPerM(PullCase.exampleCable("c")))).isCloseTo(-0.005, within(0.0005));
    }

    /** A half-inch cable of 0.080 lb/ft in water: -0.005 lb/ft; polyethylene itself floats a little. */
    @Test
    void innerductFullOfWaterWeighsAlmostNothing() {
        Weights weights = weights(true, false);

        assertThat(lbPerFt(weights.cablesNPerM(INNERDUCT))).isCloseTo(-0.005, within(0.0005));
        assertThat(lbPerFt(weights.bodyNPerM(INNERDUCT))).isBetween(-0.03, 0.0);
    }

    @Test
    void floatingBodyRubsWithAllItsLift() {
        var load = new Load(1.2, -8.7, 2, 1, true, 1, 12);

        assertThat(load.pressNPerM()).isEqualTo(-10.7);
        var level = new PullSegments();
        level.addStraight(100, 0);
        var passes = new TwoPasses(level, new TwoPasses.Passing(0, false, 0));
        passes.run(load, ShippedConfig.get().pull().friction().dry());
        // Hold 0.30 x 1.2 x 100, then 0.35 x 10.7 and 0.30 x 2 each for 100 m.
        assertThat(passes.holdN()).isCloseTo(36, within(1e-9));
        assertThat(passes.pullN()).isCloseTo(36 + 374.5 + 60, within(1e-9));
    }

    private static Weights weights(boolean flooded, boolean sealed) {
        PullSettings d = ShippedConfig.get().pull();
        var settings = new PullSettings(
                d.friction(),
                d.judgedBy(),
                0,
                1,
                0,
                false,
                sealed,
                PullCase.exampleDensity(),
                0.15,
                7.6,
                10,
                ShippedConfig.get().pull().neighbors(),
                ShippedConfig.get().pull().limits());
        return new Weights(PullCase.duct(new Contents(List.of(INNERDUCT), List.of(), true), flooded), settings);
    }

    private static double lbPerFt(double newtonPerM) {
        return newtonPerM / LBF_N * FT_M;
    }
}
