package org.spanroom.rank;

import java.util.Arrays;
import java.util.Comparator;
import java.util.function.IntFunction;
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
        // Names are scattered over the memory: several threads wait for it at the same time.
        int[] hashes = new int[spans];
        Arrays.parallelSetAll(hashes, place -> keys.apply(place).hashCode());
        var numbering = new Numbering(keys, hashes);
        int[] sectionOf = new int[spans];
        int rankedSections = 0;
        for (int place = 0; place < spans; place++) {
            sectionOf[place] = numbering.number(place);
            if (place == ranked - 1) {
                rankedSections = numbering.size;
            }
        }
        numbering.forgetTable();
        return ordered(sectionOf, numbering, rankedSections);
    }

    /** The numbers of sections are in the order of their first spans, which is that of the best spans as far as these are ranked. */
    private static SectionGroups ordered(int[] sectionOf, Numbering numbering, int ranked) {
        int[] order = new int[numbering.size];
        Arrays.setAll(order, section -> section);
        Standings.sort(order, ranked, order.length, Comparator.comparing(numbering::key));
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
        return Arrays.copyOfRange(members, begins[section], begins[section + 1]);
    }

    /**
     * Gives each section the next number when its first span is met: an open table of numbers, in which objects would take ten times the
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

        /** @param hashes those of the keys, by place */
        Numbering(IntFunction<SectionKey> keys, int[] hashes) {
            this.keys = keys;
            this.hashes = hashes;
        }

        SectionKey key(int section) {
            return keys.apply(firsts[section]);
        }

        int number(int place) {
            int slot = slot(place);
            if (slots[slot] == 0) {
                add(place, slot);
                return size - 1;
            }
            return slots[slot] - 1;
        }

        private void add(int place, int slot) {
            if (size == firsts.length) {
                firsts = Arrays.copyOf(firsts, 2 * size);
            }
            firsts[size++] = place;
            slots[slot] = size;
            if (size > slots.length / 2) {
                widen();
            }
        }

        private void widen() {
            slots = new int[2 * slots.length];
            for (int section = 0; section < size; section++) {
                int slot = firstSlot(hashes[firsts[section]]);
                while (slots[slot] != 0) {
                    slot = next(slot);
                }
                slots[slot] = section + 1;
            }
        }

        /** Returns the slot that holds the section of the span at a place, or the free one where it belongs. */
        private int slot(int place) {
            int slot = firstSlot(hashes[place]);
            while (slots[slot] != 0 && !isOf(slots[slot] - 1, place)) {
                slot = next(slot);
            }
            return slot;
        }

        private boolean isOf(int section, int place) {
            return hashes[firsts[section]] == hashes[place] && key(section).equals(keys.apply(place));
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
