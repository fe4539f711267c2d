package org.spanroom.bend;

import org.jspecify.annotations.Nullable;

/**
 * What joining groups of corners saves, from one round to the next: most of a line stays as it is, and is answered once.
 *
 * <p>Groups are only ever joined and dropped, so a part of the line that has changed never comes back, and the answers of the round
 * before are all that can be asked for again. They lie in order along the line, as the questions do: found by walking along, without
 * a search, in as little memory as one round needs. One for each number of groups that are joined at once.
 */
final class JoinAnswers {
    private Fits.Part[] knownParts = {};
    private Saving[] knownSavings = {};
    private Fits.Part[] parts = {};
    private Saving[] savings = {};
    private int knownCount;
    private int count;
    private int at;

    /** Begins a round of at most so many questions, which must come in order along the line, or all the other way round. */
    void begin(int most) {
        knownParts = parts;
        knownSavings = savings;
        knownCount = count;
        parts = new Fits.Part[most];
        savings = new Saving[most];
        count = 0;
        at = 0;
    }

    /** Returns what was answered in the round before for the groups from one to another, both included, and the same vertices. */
    @Nullable
    Saving find(Corners corners, int fromGroup, int toGroup, int from, int to) {
        while (at < knownCount && knownParts[at].corners().first[0] < corners.first[fromGroup]) {
            at++;
        }
        if (at == knownCount) {
            return null;
        }
        Fits.Part known = knownParts[at];
        boolean same =
                known.from() == from && known.to() == to && corners.hasAt(fromGroup, toGroup + 1, known.corners());
        if (!same) {
            return null;
        }
        keep(known, knownSavings[at]);
        return knownSavings[at];
    }

    void keep(Fits.Part part, Saving saving) {
        parts[count] = part;
        savings[count++] = saving;
    }

    /** Ends a round whose questions came in reverse order. */
    void reverse() {
        for (int one = 0, other = count - 1; one < other; one++, other--) {
            Fits.Part part = parts[one];
            parts[one] = parts[other];
            parts[other] = part;
            Saving saving = savings[one];
            savings[one] = savings[other];
            savings[other] = saving;
        }
    }
}
