package org.spanroom.model;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.model.network.BoreCapacity;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.ContentsScenario;

class BoreCapacityTest {
    /** Trade sizes of round ducts and 1-1/4 in innerducts (42.16 mm): what fits follows from the proved packings of Graham 1968. */
    @ParameterizedTest
    @CsvSource({
        "ROUND, 42.1, 42.16, 0",
        "ROUND, 52.5, 42.16, 1",
        "ROUND, 77.9, 42.16, 1",
        "ROUND, 84.4, 42.16, 2",
        "ROUND, 90.8, 42.16, 2",
        "ROUND, 90.9, 42.16, 3",
        "ROUND, 101.6, 42.16, 3",
        "ROUND, 101.9, 42.16, 4",
        "ROUND, 114, 42.16, 5",
        "ROUND, 126.5, 42.16, 7",
        "SQUARE, 72.0, 42.16, 2",
        "SQUARE, 83, 42.16, 3",
        "SQUARE, 84.4, 42.16, 4",
        "SQUARE, 88.9, 42.16, 4",
    })
    void theCountIsThatOfTheProvedPacking(BoreShape shape, double insideMm, double outsideMm, int items) {
        int found = BoreCapacity.items(shape, insideMm, outsideMm);

        if ((shape == BoreShape.SQUARE && items == 4) || items == 7) {
            // The last proved count: the area bound beyond it may allow more, never fewer.
            assertThat(found).isGreaterThanOrEqualTo(items);
        } else {
            assertThat(found).isEqualTo(items);
        }
    }

    @ParameterizedTest
    @CsvSource({"3, 2, 9, 3, 2", "3, 2, 2, 2, 2", "3, 2, 1, 1, 1", "3, 2, 0, 1, 1", "2, 5, 1, 1, 5", "4, 4, 3, 3, 3"})
    void fewerInnerductsHoldNoMoreCablesThanThereAre(int innerducts, int cables, int most, int fitted, int left) {
        ContentsScenario found = new ContentsScenario(innerducts, cables, 0.5).within(most);

        assertThat(found).isEqualTo(new ContentsScenario(fitted, left, 0.5));
    }
}
