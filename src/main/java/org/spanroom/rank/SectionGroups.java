package org.spanroom.rank;

import java.util.Arrays;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.spanroom.model.network.SectionKey;

/**
 * Which spans of a ranking form which section: each span is in exactly one. The sections are in the order of their best spans; those
 * without a ranked span follow in the order of their names. Spans are given by their places in the ranking, from 0, and are in that
 * order within a section. Two numbers for each of millions of spans at most. Immutable.
 */
public final class SectionGroups {
    /** Memory for each span, without the places where sections begin. */
    public static final int SPAN_BYTES = Integer.BYTES;

    /** For each section where its members begin among all; at the end, where the last one ends. */
    private final int[] begins;

    private final int[] members;
    private final int ranked;

    private SectionGroups(int[] begins, int[] members, int ranked) {
        this.begins = begins;
        this.members = members;
        this.ranked = ranked;
    }

    /**
     * Groups the spans of a ranking.
     *
     * @param spans how many there are
     * @param ranked how many of them are ranked: the first ones
     * @param keys finds the section of the span at a place; may be asked more than once, and by several threads
     */
    public static SectionGroups of(int spans, int ranked, IntFunction<SectionKey> keys) {
        return of(IntStream.range(0, spans).toArray(), ranked, keys);
    }

    /**
     * Groups the spans of a ranking, in the order in which they are numbered: those whose numbers are near each other are so in memory,
     * which the ranking scatters.
     *
     * @param order the number of the span at each place, every number from 0 once
     * @param ranked how many of them are ranked: the first ones
     * @param keys finds the section of the span of a number; may be asked more than once, and by several threads
     */
    public static SectionGroups of(int[] order, int ranked, IntFunction<SectionKey> keys) {
        int[] hashes = new int[order.length];
        Arrays.parallelSetAll(hashes, span -> keys.apply(span).hashCode());
        var numbering = new Numbering(keys, hashes);
        int[] groupOf = new int[order.length];
        for (int span = 0; span < order.length; span++) {
            groupOf[span] = numbering.number(span);
        }
        numbering.forgetTable();
        return ordered(order, ranked, groupOf, numbering);
    }

    /** The numbers of sections are in the order of their first spans, which is that of the best spans as far as these are ranked. */
    private static SectionGroups ordered(int[] order, int ranked, int[] groupOf, Numbering numbering) {
        int[] sectionOf = new int[order.length];
        int[] numberOf = new int[numbering.size];
        int[] groups = new int[numbering.size];
        int size = 0;
        int rankedSections = 0;
        for (int place = 0; place < order.length; place++) {
            int group = groupOf[order[place]];
            if (numberOf[group] == 0) {
                groups[size++] = group;
                numberOf[group] = size;
            }
            sectionOf[place] = numberOf[group] - 1;
            if (place == ranked - 1) {
                rankedSections = size;
            }
        }
        return ordered(sectionOf, section -> numbering.key(groups[section]), size, rankedSections);
    }

    private static SectionGroups ordered(int[] sectionOf, IntFunction<SectionKey> keys, int size, int ranked) {
        int[] order = new int[size];
        Arrays.setAll(order, section -> section);
        NumberSort.sort(order, ranked, order.length, (a, b) -> keys.apply(a).compareTo(keys.apply(b)));
        int[] counts = new int[order.length];
        for (int section : sectionOf) {
            counts[section]++;
        }
        int[] begins = new int[order.length + 1];
        int[] next = new int[order.length];
        for (int i = 0; i < order.length; i++) {
            next[order[i]] = begins[i];
            begins[i + 1] = begins[i] + counts[order[i]];
        }
        int[] members = new int[sectionOf.length];
        for (int place = 0; place < members.length; place++) {
            members[next[sectionOf[place]]++] = place;
        }
        return new SectionGroups(begins, members, ranked);
    }

    /** Returns how many sections there are. */
    public int size() {
        return begins.length - 1;
    }

    /** Returns how many sections have a ranked span: the first ones. */
    public int countRanked() {
        return ranked;
    }

    /** Returns the place in the ranking of a section's best span or, where none is ranked, of its first one. */
    public int first(int section) {
        return members[begins[section]];
    }

    /** Returns how many spans a section has. */
    public int count(int section) {
        return begins[section + 1] - begins[section];
    }

    /** Returns the places in the ranking of a section's spans, in their order. */
    public int[] members(int section) {
        return members(section, section + 1);
    }

    /** Returns the places in the ranking of the spans of sections that follow one another, section by section. */
    public int[] members(int from, int to) {
        return Arrays.copyOfRange(members, begins[from], begins[to]);
    }

    /**
     * Gives each group of spans, a section to be, the next number when its first span is met: an open table of numbers, in which objects would take ten times the
     * room. Names are compared only where their hashes are equal.
     */
    private static final class Numbering {
        private static final int FIRST_SLOTS = 1 << 10;

        private final IntFunction<SectionKey> keys;
        private final int[] hashes;

        /** Numbers from 1, 0 in a free slot. */
        private int[] slots = new int[FIRST_SLOTS];

        private int[] firsts = new int[FIRST_SLOTS];
        private int size;

        /** @param hashes those of the keys, by number */
        Numbering(IntFunction<SectionKey> keys, int[] hashes) {
            this.keys = keys;
            this.hashes = hashes;
        }

        SectionKey key(int group) {
            return keys.apply(firsts[group]);
        }

        int number(int span) {
            int slot = slot(span);
            if (slots[slot] == 0) {
                add(span, slot);
                return size - 1;
            }
            return slots[slot] - 1;
        }

        private void add(int span, int slot) {
            if (size == firsts.length) {
                firsts = Arrays.copyOf(firsts, 2 * size);
            }
            firsts[size++] = span;
            slots[slot] = size;
            if (size > slots.length / 2) {
                widen();
            }
        }

        private void widen() {
            slots = new int[2 * slots.length];
            for (int group = 0; group < size; group++) {
                int slot = firstSlot(hashes[firsts[group]]);
                while (slots[slot] != 0) {
                    slot = next(slot);
                }
                slots[slot] = group + 1;
            }
        }

        /** Returns the slot that holds the group of the span, or the free one where it belongs. */
        private int slot(int span) {
            int slot = firstSlot(hashes[span]);
            while (slots[slot] != 0 && !isOf(slots[slot] - 1, span)) {
                slot = next(slot);
            }
            return slot;
        }

        private boolean isOf(int group, int span) {
            return hashes[firsts[group]] == hashes[span] && key(group).equals(keys.apply(span));
        }

        private int firstSlot(int hash) {
            int mixed = hash * 0x9E3779B9;
            return (mixed ^ mixed >>> 16) & slots.length - 1;
        }

        private int next(int slot) {
            return slot + 1 & slots.length - 1;
        }

        void forgetTable() {
            slots = new int[0];
        }
    }
}
