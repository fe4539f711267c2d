package org.spanroom.model.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.network.BoreShape;

class CatalogTest {
    private final Catalog shipped = ShippedConfig.get().catalog();

    /** NEC Chapter 9 Table 4 and NEMA TC 10, inside diameters in inches. */
    @ParameterizedTest(name = "{0}: {1} in")
    @CsvSource({
        "pvc40 4 in, 3.998",
        "pvc80 4 in, 3.786",
        "pvc-eb 4 in, 4.289",
        "rmc 4 in, 4.050",
        "telephone type C 4 in, 4.050",
        "PVC40 2 in, 2.047",
        "db60 6 in, 6.261"
    })
    void outerDuctsHaveTheirPublishedBore(String name, double insideIn) {
        assertThat(shipped.findOuterDuct(name).orElseThrow().insideDiameterMm() / 25.4)
                .isCloseTo(insideIn, within(1e-9));
    }

    /** Weights in pounds per 1 000 ft as in a published weight table; 1 lb/1 000 ft is 0.00148816 kg/m. */
    @ParameterizedTest(name = "{0}: {1} lb per 1 000 ft")
    @CsvSource({
        "sdr13.5 3/4 in, 110",
        "sdr13.5 1 in, 168",
        "sdr13.5 1-1/4 in, 264",
        "sdr13.5 1-1/2 in, 343",
        "sdr13.5 2 in, 531",
        "sdr11 3/4 in, 130"
    })
    void innerductsWeighWhatIsPublished(String name, double poundsPerThousandFeet) {
        assertThat(shipped.findInnerduct(name).orElseThrow().massKgPerM() / 0.00148816)
                .isCloseTo(poundsPerThousandFeet, within(1.2));
    }

    /** Public copies of NEC Table 4 hold wrong rows, such as 10.705 in2 for 4-in PVC Schedule 80 instead of 11.258. */
    @Test
    void aRowWhoseAreaDisagreesWithItsDiameterIsRefused() {
        assertThatThrownBy(() -> new Catalog.OuterDuct(
                        "wrong", "PVC Schedule 80", "4 in", BoreShape.ROUND, 3.786, 10.705, "a public copy"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("11.258")
                .hasMessageContaining("10.705");
    }

    @Test
    void aWallThatDisagreesWithItsRatioIsRefused() {
        assertThatThrownBy(
                        () -> new Catalog.InnerductSize("wrong", "SDR 11", "1 in", 1.315, 11, 0.140, 0.15, 950, "none"))
                .hasMessageContaining("minimumWallIn");
    }

    @Test
    void namesStandOnce() {
        var cable = new Catalog.DesignCable("a", 10, 0.1, 96, "illustrative");
        var again = new Catalog.DesignCable("A", 11, 0.1, 96, "illustrative");

        assertThatThrownBy(() -> new Catalog(List.of(), List.of(), List.of(), List.of(cable, again)))
                .hasMessageContaining("is repeated");
    }

    @Test
    void everyRowSaysWhereItComesFrom() {
        assertThat(shipped.outerDucts())
                .hasSizeGreaterThan(40)
                .noneMatch(row -> row.source().isBlank());
        assertThat(shipped.innerducts())
                .hasSize(20)
                .noneMatch(row -> row.source().isBlank());
        assertThat(shipped.sleeves()).extracting(Catalog.Sleeve::cells).containsExactly(1, 2, 3, 4);
        assertThat(shipped.designCables()).allMatch(row -> row.source().equals("illustrative"));
    }

    @Test
    void squareClayDuctsAreSquare() {
        assertThat(shipped.findOuterDuct("clay square 3-1/2 in").orElseThrow().boreShape())
                .isEqualTo(BoreShape.SQUARE);
        assertThat(shipped.findOuterDuct("no such duct")).isEmpty();
    }
}
