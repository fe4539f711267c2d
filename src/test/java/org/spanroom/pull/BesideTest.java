package org.spanroom.pull;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bend.Bends;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.pull.Beside;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullSettings;

/** Cables placed beside the innerducts before a pull are its neighbors. */
class BesideTest {
    private static final Bends BENDS = PullCase.bends(40, 60, 0.9144);
    private static final double MASS_KG_PER_M = 0.31;

    private final PullSettings settings = ShippedConfig.get().pull();
    private final PullAssessor assessor = new PullAssessor(settings);

    @Test
    void nothingBesideChangesNothing() {
        Span span = span(2);

        assertThat(assessor.assess(span, BENDS, 2, Beside.NONE)).isEqualTo(assessor.assess(span, BENDS, 2));
        assertThat(assessor.trace(span, BENDS, 2, Beside.NONE, 1, Friction.DRY))
                .isEqualTo(assessor.trace(span, BENDS, 2, 1, Friction.DRY));
    }

    /** The weight that rests on a neighbor is the share of the mass times standard gravity (BIPM, exact), in every turn. */
    @ParameterizedTest
    @CsvSource({"1,1", "2,2", "3,3", "3,2"})
    void itsWeightRestsOnEveryPull(int innerducts, int out) {
        Span span = span(innerducts);
        List<InnerductPull> alone = assessor.assess(span, BENDS, out).pulls();
        List<InnerductPull> with =
                assessor.assess(span, BENDS, out, new Beside(1, MASS_KG_PER_M)).pulls();

        double restingNPerM = settings.neighbors().restingShareRatio() * 9.80665 * MASS_KG_PER_M;
        for (int i = 0; i < out; i++) {
            assertThat(with.get(i).neighborNPerM() - alone.get(i).neighborNPerM())
                    .isCloseTo(restingNPerM, within(1e-12));
            for (Friction friction : Friction.values()) {
                assertThat(with.get(i).fromA().forces(friction).pullN())
                        .isGreaterThan(alone.get(i).fromA().forces(friction).pullN());
                // The cable inside does not feel what rests on its innerduct.
                assertThat(with.get(i).fromA().forces(friction).holdN())
                        .isEqualTo(alone.get(i).fromA().forces(friction).holdN());
            }
        }
    }

    /** A loose cable that is recorded weighs as much on a pull as one that is placed there. */
    @Test
    void aPlacedCableRestsOnAPullAsARecordedOneDoes() {
        var loose = new Cable("loose", 12.7, MASS_KG_PER_M, Service.LIVE);
        Span recorded = PullCase.span(
                PullCase.duct(new Contents(List.of(PullCase.exampleInnerduct("i0")), List.of(loose), true)), 150);

        assertThat(assessor.assess(span(1), BENDS, 1, new Beside(1, MASS_KG_PER_M))
                        .pulls()
                        .get(0)
                        .neighborNPerM())
                .isCloseTo(assessor.assess(recorded, BENDS, 1).pulls().get(0).neighborNPerM(), within(1e-12));
    }

    /** Four bodies and more in one bore: 1.4 (common practice, no source). */
    @ParameterizedTest
    @CsvSource({"0,1", "1,1", "3,1.4", "9,1.4"})
    void eachCountsAsABodyToBeWedgedAgainst(int cables, double wedgeRatio) {
        var beside = new Beside(cables, cables * MASS_KG_PER_M);

        assertThat(assessor.assess(span(1), BENDS, 1, beside).pulls().get(0).wedgeRatio())
                .isEqualTo(wedgeRatio);
    }

    @Test
    void twoBesideOneInnerductWedgeItAsTwoInnerductsDo() {
        double wedge = assessor.assess(span(1), BENDS, 1, new Beside(2, 0.1))
                .pulls()
                .get(0)
                .wedgeRatio();

        assertThat(wedge)
                .isGreaterThan(1)
                .isEqualTo(assessor.assess(span(3), BENDS, 3).pulls().get(0).wedgeRatio());
    }

    @Test
    void aTraceIsThatOfTheAssessment() {
        var beside = new Beside(3, 3 * MASS_KG_PER_M);

        assertThat(assessor.trace(span(3), BENDS, 2, beside, 2, Friction.DRY).pull())
                .isEqualTo(assessor.assess(span(3), BENDS, 2, beside).pulls().get(1));
    }

    @Test
    void nothingHasNoMass() {
        assertThatThrownBy(() -> new Beside(0, 0.1)).hasMessageContaining("massKgPerM");
        assertThatThrownBy(() -> new Beside(-1, 0)).hasMessageContaining("count");
        assertThatThrownBy(() -> new Beside(1, -0.1)).hasMessageContaining("massKgPerM");
    }

    private static Span span(int innerducts) {
        var all = new Innerduct[innerducts];
        for (int i = 0; i < innerducts; i++) {
            all[i] = PullCase.exampleInnerduct("i" + i);
        }
        return PullCase.span(PullCase.ductWith(all), 150);
    }
}
