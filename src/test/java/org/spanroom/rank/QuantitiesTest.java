package org.spanroom.rank;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Answer;
import org.spanroom.model.Term;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.permit.Permits;

class QuantitiesTest {
    private final Quantities quantities = new Quantities(ShippedConfig.get().scoring());

    @Test
    void roomShortagePullBendsAndLengthAreThoseOfTheStages() {
        var one = HandMade.sound();
        one.positionsNow = 2;
        one.turnDeg = 45;

        assertThat(of(Criterion.ROOM_GAINED, one)).isEqualTo(7);
        assertThat(of(Criterion.SHORTAGE, one)).isEqualTo(2);
        assertThat(of(Criterion.EASE_PULL, one)).isEqualTo(50);
        assertThat(of(Criterion.EASE_BENDS, one)).isCloseTo(45, within(1e-9));
        assertThat(of(Criterion.LENGTH, one)).isEqualTo(100);
    }

    @Test
    void wetPlacesAreTheDuctAndEachVault() {
        var one = HandMade.sound();
        assertThat(of(Criterion.EASE_WATER, one)).isZero();
        one.flooded = true;
        one.toSite = site(Answer.YES, "");
        assertThat(of(Criterion.EASE_WATER, one)).isEqualTo(2);
        one.fromSite = site(Answer.YES, "");
        assertThat(of(Criterion.EASE_WATER, one)).isEqualTo(3);
    }

    @Test
    void drawbacksAreHardKindsAndHardSurfacesAtEachVault() {
        var one = HandMade.sound();
        one.fromKind = " Handhole";
        one.fromSite = site(Answer.NO, "ROADWAY");
        one.toSite = site(Answer.NO, "verge");

        assertThat(of(Criterion.EASE_ACCESS, one)).isEqualTo(2);
    }

    @Test
    void avoidedPermitsAreCounted() {
        var one = HandMade.sound();
        one.permits = new Permits(List.of(), List.of("lane"), List.of("cut", "heritage"), Map.of());

        assertThat(of(Criterion.PERMITS_AVOIDED, one)).isEqualTo(2);
    }

    /** Worked by hand: the shipped weights are 20 for terms, 2 for the position and 1 for the year, 23 in all. */
    @ParameterizedTest(name = "{0}, year {1}, quality {2}: {3} of 23")
    @CsvSource({
        "all, 2010, QL-A, 23",
        "all, 1985, ql-c, 21.3",
        "all, , , 20",
        "sizes, , , 18",
        "service, , , 17",
        "condition, , , 18",
        "contents, , , 5",
        "all, , surveyed, 20"
    })
    void knowledgeIsTheWeightedShareThatIsRecorded(String what, Integer year, String quality, double of23) {
        var one = HandMade.sound();
        one.positionQuality = quality == null ? "" : quality;
        one.year = year == null ? OptionalInt.empty() : OptionalInt.of(year);
        switch (what) {
            case "sizes" -> one.assumed = EnumSet.of(Term.CABLE_OUTSIDE_DIAMETER);
            case "service" -> one.contents = HandMade.holding(Service.UNKNOWN);
            case "condition" -> one.condition = Condition.UNKNOWN;
            case "contents" -> one.contents = Contents.UNKNOWN;
            default -> {}
        }

        assertThat(of(Criterion.KNOWLEDGE, one)).isEqualTo(Math.round(10_000 * of23 / 23) / 100.0);
    }

    private double of(Criterion criterion, HandMade one) {
        return criterion.quantity(one.assessed(), quantities);
    }

    private static VaultSite site(Answer water, String surface) {
        return new VaultSite(OptionalDouble.empty(), water, surface, Answer.UNKNOWN);
    }
}
