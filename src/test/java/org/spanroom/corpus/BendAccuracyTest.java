package org.spanroom.corpus;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;

/** The promised accuracy, on one seed; src/bench/bends-accuracy.sh prints the same figures for any other. */
class BendAccuracyTest {
    private static BendAccuracy accuracy;
    private static Tally all;

    @BeforeAll
    static void readTheCorpus() {
        accuracy = BendAccuracy.measure(20260101, 3000, ShippedConfig.get().bend());
        all = accuracy.all();
    }

    @Test
    void totalDeflectionIsWithinTwoDegreesInNineteenSpansOfTwenty() {
        assertThat(ratio(all.totalWithin2, all.spans)).isGreaterThanOrEqualTo(0.95);
    }

    @Test
    void nineDecimalsChangeNoNumberOfBends() {
        assertThat(all.spans - all.steady).isZero();
    }

    /** Once 99.3 % of the compound curves of this seed, and 97.4 % of those of seed 1: two corners a chord apart are one bend. */
    @Test
    void aCompoundCurveIsOneBend() {
        Tally compound = accuracy.ofShape(DrawnSpan.Shape.COMPOUND);

        assertThat(ratio(compound.exact, compound.spans)).isGreaterThanOrEqualTo(0.99);
        assertThat(ratio(compound.countRight, compound.spans)).isGreaterThanOrEqualTo(0.99);
    }

    @Test
    void plainSpansAreReadAsWellAsTheyCanBe() {
        Tally plain = accuracy.ofShape(DrawnSpan.Shape.PLAIN);

        assertThat(ratio(plain.totalWithin2, plain.spans)).isGreaterThanOrEqualTo(0.995);
    }

    /** Reverse curves a few meters apart cannot be read so well by anyone: they are checked against the ideal reader instead. */
    @Test
    void totalDeflectionIsWithinFiveDegreesWhereStraightsLieBetweenBends() {
        Tally plain = accuracy.ofShape(DrawnSpan.Shape.PLAIN);
        Tally compound = accuracy.ofShape(DrawnSpan.Shape.COMPOUND);
        Tally reverse = accuracy.ofShape(DrawnSpan.Shape.REVERSE);

        assertThat(ratio(plain.totalWithin5 + compound.totalWithin5, plain.spans + compound.spans))
                .isGreaterThanOrEqualTo(0.995);
        assertThat(ratio(reverse.totalWithin5, reverse.spans))
                .isGreaterThanOrEqualTo(reverse.idealWithin5 / reverse.spans - 0.06);
        assertThat(ratio(all.knowable5Right, all.knowable5)).isGreaterThanOrEqualTo(0.99);
    }

    @Test
    void theNumberOfBendsIsRight() {
        assertThat(ratio(all.countRight, all.spans)).isGreaterThanOrEqualTo(0.97);
    }

    /** Over all arcs noise forbids 90 %: an ideal reader reaches about as much, and the finder keeps close to it. */
    @Test
    void radiusIsWithinFifteenPercentWhereAnIdealReaderKnowsIt() {
        assertThat(ratio(all.knowableArcsRight, all.knowableArcs)).isGreaterThanOrEqualTo(0.95);
        assertThat(ratio(all.radiusWithin, all.arcs)).isGreaterThanOrEqualTo(all.idealRadius / all.arcs - 0.03);
    }

    @Test
    void theSameSeedGivesTheSameFigures() {
        String once = BendAccuracy.measure(7, 40, ShippedConfig.get().bend()).toText();

        assertThat(BendAccuracy.measure(7, 40, ShippedConfig.get().bend()).toText())
                .isEqualTo(once);
        assertThat(BendAccuracy.measure(8, 40, ShippedConfig.get().bend()).toText())
                .isNotEqualTo(once);
    }

    private static double ratio(int part, int whole) {
        return (double) part / whole;
    }
}
