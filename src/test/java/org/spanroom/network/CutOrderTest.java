package org.spanroom.network;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CutOrderTest {
    /** Against looking at every cut; some reach beyond the next, some begin at one place. */
    @ParameterizedTest(name = "round of {0} m")
    @ValueSource(doubles = {0, 100})
    void nextAndLastAreThoseFoundByLookingAtEach(double roundM) {
        var random = new Random(7);
        for (int chain = 0; chain < 300; chain++) {
            List<Cut> cuts = new ArrayList<>();
            for (int cut = random.nextInt(12); cut > 0; cut--) {
                double fromM = random.nextInt(100);
                cuts.add(new Cut(cuts.size(), fromM, fromM + Math.max(0, random.nextInt(30) - 10)));
            }
            cuts.sort(Comparator.comparingDouble(Cut::fromM));
            var order = new CutOrder(cuts);
            for (double placeM = -5; placeM <= 135; placeM += 2.5) {
                assertThat(order.next(placeM, roundM)).isEqualTo(next(cuts, placeM, roundM));
                assertThat(order.last(placeM, roundM)).isEqualTo(last(cuts, placeM, roundM));
            }
        }
    }

    @Test
    void cutAtThePlaceItselfIsBothNextAndLast() {
        var order = new CutOrder(List.of(new Cut(7, 10, 10), new Cut(8, 20, 20)));

        assertThat(order.next(20, 0)).hasValue(8);
        assertThat(order.last(20, 0)).hasValue(8);
        assertThat(order.next(20.1, 0)).isEmpty();
        assertThat(order.last(9.9, 0)).isEmpty();
        assertThat(order.next(20.1, 30)).hasValue(7);
    }

    private static OptionalInt next(List<Cut> cuts, double placeM, double roundM) {
        for (double addM : roundM == 0 ? new double[] {0} : new double[] {-roundM, 0, roundM}) {
            for (Cut cut : cuts) {
                if (cut.toM() + addM >= placeM - VaultCrossing.SAME_PLACE_M) {
                    return OptionalInt.of(cut.vault());
                }
            }
        }
        return OptionalInt.empty();
    }

    private static OptionalInt last(List<Cut> cuts, double placeM, double roundM) {
        for (double addM : roundM == 0 ? new double[] {0} : new double[] {roundM, 0, -roundM}) {
            for (int i = cuts.size() - 1; i >= 0; i--) {
                if (cuts.get(i).fromM() + addM <= placeM + VaultCrossing.SAME_PLACE_M) {
                    return OptionalInt.of(cuts.get(i).vault());
                }
            }
        }
        return OptionalInt.empty();
    }
}
