package org.spanroom.input;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Optional;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.FieldProposer;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** Which fields are proposed for what is recorded of a duct at its two vaults: those that name the thing and the end. */
class EndFieldsTest {
    private static FieldProposal.Field field(String name, IntFunction<Object> value) {
        var lines = new FakeLayer("OGC:CRS84", "segment_id", name).named("lines.geojson");
        for (int n = 0; n < 40; n++) {
            lines.line(new double[] {-140, 20 + 0.001 * n, -140, 20.001 + 0.001 * n}, "L" + n, value.apply(n));
        }
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readRoutes(lines, LayerConfig.NONE);
        return proposer.proposals().get(0).fields().stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        "hole_a, HOLE_A",
        "HOLE_B, HOLE_B",
        "Duct Position A, HOLE_A",
        "ductPositionB, HOLE_B",
        "hole_no_a, HOLE_A",
        "from_hole, HOLE_A",
        "bank_hole_b, HOLE_B",
        "hole, ",
        "duct_position, ",
        "position, ",
        "hole_a_b, ",
        "pole_a, ",
        "whole_b, ",
        "hole_depth_a, "
    })
    void holesAreFoundByThingAndEnd(String name, Term expected) {
        FieldProposal.Field found = field(name, n -> n % 4 == 0 ? "2/" + n % 3 : Integer.toString(n % 9));

        assertEquals(Optional.ofNullable(expected), found.term(), found::doubt);
        assertEquals(expected != null, found.isSure());
    }

    @ParameterizedTest
    @CsvSource({
        "uncut_a, CONTINUOUS_AT_A",
        "continuous_at_b, CONTINUOUS_AT_B",
        "innerduct_continuous_a, CONTINUOUS_AT_A",
        "continuous, ",
        "uncut, "
    })
    void uncutInnerductsAreFoundByThingAndEnd(String name, Term expected) {
        assertEquals(
                Optional.ofNullable(expected),
                field(name, n -> n % 2 == 0 ? "yes" : "N").term());
        // Lengths are no answers.
        assertFalse(field(name, n -> 12.5 * n).isSure());
    }

    @ParameterizedTest
    @CsvSource({"slack_a_ft, SLACK_A", "cable_slack_b_m, SLACK_B", "slack_m, ", "coil_length_a_ft, SLACK_A"})
    void slacksAreFoundWithTheirUnit(String name, Term expected) {
        FieldProposal.Field found = field(name, n -> 5L * (n % 7));

        assertEquals(Optional.ofNullable(expected), found.term());
        if (expected != null) {
            assertEquals(Optional.of(name.endsWith("ft") ? Unit.FT : Unit.M), found.unit());
        }
    }

    @Test
    void whatDoesNotLookLikeAHoleIsMarked() {
        assertFalse(field("hole_a", n -> 0.125 * n).isSure());
        assertFalse(field("hole_a", n -> "see drawing " + n).isSure());
    }
}
