package org.spanroom.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.ShippedConfig;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.FieldProposer;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** Units of fields whose names say none. */
class FieldUnitsTest {
    private static FieldProposal.Field field(FakeLayer layer, Term term) {
        var proposer = new FieldProposer(ShippedConfig.get());
        proposer.readRoutes(layer, LayerConfig.NONE);
        return proposer.proposals().get(0).find(term).orElseThrow();
    }

    static Stream<Arguments> diameters() {
        return Stream.of(
                Arguments.of(List.of(0.1524), Unit.M, true),
                Arguments.of(List.of(0.1016, 0.1524, 0.2032), Unit.M, true),
                Arguments.of(List.of(0.15, 0.2, 0.3, 0.15), Unit.M, true),
                Arguments.of(List.of(0.3333, 0.6667, 0.8333), Unit.FT, true),
                Arguments.of(List.of(0.5), Unit.M, false),
                Arguments.of(List.of(6, 8, 12), Unit.IN, true),
                Arguments.of(List.of(4, 4, 3.5), Unit.IN, true),
                Arguments.of(List.of(3.786, 4.026), Unit.IN, true),
                Arguments.of(List.of(12, 15, 18, 24, 30, 36), Unit.IN, true),
                Arguments.of(List.of(10, 15, 20), Unit.IN, false),
                Arguments.of(List.of(150, 200, 300), Unit.MM, true),
                Arguments.of(List.of(-1, 0, 150, 200), Unit.MM, true),
                Arguments.of(List.of(32, 40, 50, 110), Unit.MM, true),
                Arguments.of(List.of(96.62, 81.4), Unit.MM, true),
                Arguments.of(List.of("4\"", "6\"", "4 in"), Unit.IN, true));
    }

    @ParameterizedTest
    @MethodSource("diameters")
    void diametersShowTheirUnitByRangeAndSteps(List<Object> values, Unit unit, boolean sure) {
        var layer = new FakeLayer("OGC:CRS84", "DIAMETER");
        for (Object value : values) {
            layer.line(new double[] {0, 0, 0.001, 0}, value);
        }

        FieldProposal.Field field = field(layer, Term.INSIDE_DIAMETER);

        assertThat(field.unit()).contains(unit);
        assertThat(field.isSure()).as(field.doubt()).isEqualTo(sure);
    }

    /**
     * The lengths that lines are drawn with decide. EPSG:2263 is in US survey feet, EPSG:26918 in meters (EPSG dataset); one unit of the
     * plane is as long on the ground within 0.1 % there.
     */
    @ParameterizedTest
    @CsvSource({
        "EPSG:26918, 585000, 4511000, 1, LENGTH, M, true",
        "EPSG:26918, 585000, 4511000, 3.2808, LENGTH, FT, true",
        "EPSG:26918, 585000, 4511000, 0.001, LENGTH, KM, true",
        "EPSG:26918, 585000, 4511000, 3.2808, LENGTH_FT, FT, true",
        "EPSG:26918, 585000, 4511000, 1, LENGTH_FT, M, false",
        "EPSG:26918, 585000, 4511000, 1.7, LENGTH, M, false",
        "EPSG:2263, 980000, 200000, 1, LENGTH, FT_US, true",
        "EPSG:2263, 980000, 200000, 0.3048, LENGTH, M, true",
    })
    void recordedLengthsShowTheirUnitByTheDrawnOnes(
            String crs, double x, double y, double factor, String name, Unit unit, boolean sure) {
        var layer = new FakeLayer(crs, name);
        for (int n = 1; n <= 10; n++) {
            layer.line(new double[] {x, y, x + 100 * n, y}, Math.round(100 * n * factor * 1000) / 1000.0);
        }

        FieldProposal.Field field = field(layer, Term.RECORDED_LENGTH);

        assertThat(field.unit()).contains(unit);
        assertThat(field.isSure()).as(field.doubt()).isEqualTo(sure);
    }
}
