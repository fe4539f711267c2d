package org.spanroom.pipeline;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.spanroom.model.network.SectionKey;
import org.spanroom.rank.SectionGroups;

class BankPlacesTest {
    @Test
    void theMiddleOfAnOddNumberIsZero() {
        assertArrayEquals(new int[] {-1, 0, 1}, places(List.of("D1", "D2", "D3"), List.of(true, true, true)));
    }

    @Test
    void ofAnEvenNumberOneMoreIsOnTheRight() {
        assertArrayEquals(
                new int[] {-1, 0, 1, 2}, places(List.of("D1", "D2", "D3", "D4"), List.of(true, true, true, true)));
    }

    /** The ranking mixes the ducts; their names put them in order, by their numbers. */
    @Test
    void namesDecideNotRanks() {
        assertArrayEquals(new int[] {1, -1, 0}, places(List.of("D10", "D2", "D9"), List.of(true, true, true)));
    }

    /** Right of a line that is drawn back is left of one that is drawn forth. */
    @Test
    void aLineDrawnBackHasTheOtherSign() {
        assertArrayEquals(new int[] {1, 0, 1}, places(List.of("D1", "D2", "D3"), List.of(false, true, true)));
    }

    @Test
    void ductsOfDifferentSectionsAreNotBesideEachOther() {
        SectionGroups groups = SectionGroups.of(2, 2, place -> SectionKey.of("", "D" + place, "V1", "V2"));

        BankPlaces places = BankPlaces.of(groups, place -> "D" + place, place -> true);

        assertEquals(0, places.at(0));
        assertEquals(0, places.at(1));
    }

    private static int[] places(List<String> ducts, List<Boolean> forth) {
        SectionGroups groups =
                SectionGroups.of(ducts.size(), ducts.size(), place -> SectionKey.of("B", ducts.get(place), "V1", "V2"));
        BankPlaces places = BankPlaces.of(groups, ducts::get, forth::get);
        return IntStream.range(0, ducts.size()).map(places::at).toArray();
    }
}
