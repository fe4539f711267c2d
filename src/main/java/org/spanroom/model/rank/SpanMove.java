package org.spanroom.model.rank;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.Check;
import org.spanroom.model.Line;

/**
 * The rank of a span in two runs, where they differ.
 *
 * @param before its rank in the first run; empty where that run does not have it
 * @param after its rank in the second run; empty if the span is not in it
 * @param lonLat its line in the second run, or in the first where only that has it; empty until it has been looked up
 * @param partChanges what each criterion adds to the change of the score, the largest first: "room_gained +12.50"
 * @param valueChanges columns whose values differ, apart from rank and score: "inside_diameter_mm: 101.6 to 95.25"
 * @param fieldChanges entries of the field book that only one of the runs has: "done (entry 12)"
 */
public record SpanMove(
        String spanId,
        Optional<Standing> before,
        Optional<Standing> after,
        Optional<Line> lonLat,
        List<String> partChanges,
        List<String> valueChanges,
        List<String> fieldChanges) {
    /** Why a span has another rank. */
    public enum Cause {
        /** Only the second run has it. */
        NEW,
        /** Only the first run has it. */
        GONE,
        /** It lost its rank. */
        EXCLUDED,
        /** It newly ranked. */
        ADMITTED,
        /** Its own score is another; it has a rank in both runs, or in neither and for the same reason. */
        SCORE,
        /** Its score is what it was: others went past it. */
        OTHERS,
        /** It has no rank in both, for another reason. */
        REASON;

        /** Returns the word for this cause in columns. */
        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public SpanMove {
        Check.notBlank("spanId", spanId);
        if (before.isEmpty() && after.isEmpty()) {
            throw new IllegalArgumentException("one of the runs must have the span " + spanId);
        }
        partChanges = List.copyOf(partChanges);
        valueChanges = List.copyOf(valueChanges);
        fieldChanges = List.copyOf(fieldChanges);
    }

    /** A move that no field book explains. */
    public SpanMove(
            String spanId,
            Optional<Standing> before,
            Optional<Standing> after,
            Optional<Line> lonLat,
            List<String> partChanges,
            List<String> valueChanges) {
        this(spanId, before, after, lonLat, partChanges, valueChanges, List.of());
    }

    public Cause cause() {
        if (before.isEmpty()) {
            return Cause.NEW;
        }
        if (after.isEmpty()) {
            return Cause.GONE;
        }
        boolean had = before.get().rank().isPresent();
        boolean has = after.get().rank().isPresent();
        if (had != has) {
            return had ? Cause.EXCLUDED : Cause.ADMITTED;
        }
        if (!had) {
            return before.get().exclusion().equals(after.get().exclusion()) ? Cause.SCORE : Cause.REASON;
        }
        return before.get().scorePoints() == after.get().scorePoints() ? Cause.OTHERS : Cause.SCORE;
    }

    /** Returns this move with the values that differ, and the line to draw it by. */
    public SpanMove with(Optional<Line> line, List<String> changes) {
        return new SpanMove(spanId, before, after, line, partChanges, changes, fieldChanges);
    }

    /** Returns this move with the entries of the field book that only one of the runs has. */
    public SpanMove withFieldChanges(List<String> changes) {
        return new SpanMove(spanId, before, after, lonLat, partChanges, valueChanges, changes);
    }

    /** Returns how many places the span went up; empty where one of the runs gives it none. */
    public OptionalInt rankGain() {
        int was = rank(before);
        int is = rank(after);
        return was == 0 || is == 0 ? OptionalInt.empty() : OptionalInt.of(was - is);
    }

    /** Returns the better of the two ranks; the largest number where neither run gives it one. */
    public int bestRank() {
        int was = rank(before);
        int is = rank(after);
        int best = was == 0 ? is : is == 0 ? was : Math.min(was, is);
        return best == 0 ? Integer.MAX_VALUE : best;
    }

    private static int rank(Optional<Standing> standing) {
        return standing.map(Standing::rank).orElse(OptionalInt.empty()).orElse(0);
    }
}
