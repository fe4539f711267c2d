package org.spanroom.pipeline;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.RankedSpans;
import org.spanroom.rank.SectionGroups;

/**
 * Where each duct of a section is shown beside the others: in the order of the ducts' names, the middle one at 0. The spans of a
 * section may be drawn in opposite directions, so the sign is turned for those drawn back. Immutable.
 */
final class BankPlaces {
    /** Memory for each span. */
    static final int SPAN_BYTES = Byte.BYTES;

    /** Names with numbers in them in the order of the numbers, as far as the text before is the same: 9 before 10. */
    private static final Comparator<String> BY_NAME =
            Comparator.comparingInt(String::length).thenComparing(Comparator.naturalOrder());

    private final byte[] places;

    private BankPlaces(byte[] places) {
        this.places = places;
    }

    /**
     * Finds the places of all spans.
     *
     * @param duct finds the name of the duct of the span at a place in the ranking
     * @param forth finds whether that span is drawn one way or the other; all of one section are compared by it
     */
    static BankPlaces of(SectionGroups groups, IntFunction<String> duct, IntPredicate forth) {
        int spans = 0;
        for (int section = 0; section < groups.size(); section++) {
            spans += groups.count(section);
        }
        byte[] places = new byte[spans];
        IntStream.range(0, groups.size())
                .parallel()
                .filter(section -> groups.count(section) > 1)
                .forEach(section -> put(groups.members(section), duct, forth, places));
        return new BankPlaces(places);
    }

    /** Puts the places of one section; no other section has one of them. */
    private static void put(int[] section, IntFunction<String> duct, IntPredicate forth, byte[] places) {
        Integer[] members = Arrays.stream(section).boxed().toArray(Integer[]::new);
        Arrays.sort(members, Comparator.comparing(duct::apply, BY_NAME));
        int middle = (members.length - 1) / 2;
        for (int i = 0; i < members.length; i++) {
            int place = Math.max(-Byte.MAX_VALUE, Math.min(Byte.MAX_VALUE, i - middle));
            places[members[i]] = (byte) (forth.test(members[i]) ? place : -place);
        }
    }

    /** Returns the place of the span at a place in the ranking. */
    int at(int place) {
        return places[place];
    }

    /** Returns spans with their places. */
    RankedSpans among(RankedSpans ranked) {
        return new RankedSpans() {
            @Override
            public int size() {
                return ranked.size();
            }

            @Override
            public RankedSpan at(int place) {
                return ranked.at(place).withBankPlace(places[place]);
            }
        };
    }
}
