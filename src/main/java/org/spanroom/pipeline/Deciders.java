package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.spanroom.model.Counted;
import org.spanroom.model.Term;
import org.spanroom.model.bore.Room;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.LimitUse;
import org.spanroom.model.rank.Assessment;

/**
 * What decides the results of most ranked spans: one assumed size, one rule of the room, one limit of the pull. Where a single setting decides a
 * whole ranking, a planner has to know it before anything else.
 */
final class Deciders {
    /** An assumed bore is reported from this share of the ranked spans on. */
    private static final double LEAST_ASSUMED_RATIO = 0.1;

    /** A rule or limit is reported where it decides more than this share. */
    private static final double MOST_RATIO = 0.5;

    private static final Map<String, String> RULES = Map.of(
            Room.SLEEVES_PER_DUCT,
            "the sleeves-per-duct table (room.sleeves_by_duct) sets the number of cable positions",
            Room.FREE_BORE,
            "the sleeves that the free bore takes (room.sleeves_by_duct) set the number of cable positions",
            Room.BORE_FILL,
            "the fill limit (room.fill_limit_one_ratio and the next two) sets the number of cable positions");

    private final ConcurrentLinkedQueue<Counts> collected = new ConcurrentLinkedQueue<>();

    /** What one thread has counted. */
    static final class Counts {
        private final Map<String, Long> rules = new TreeMap<>();
        private final Map<LimitKind, Long> limits = new EnumMap<>(LimitKind.class);
        private long ranked;
        private long boreAssumed;

        private Counts() {}

        /** Takes a ranked span. */
        void add(Assessment assessed) {
            add(
                    assessed.span().duct().assumed().contains(Term.INSIDE_DIAMETER),
                    assessed.room().bindingRule(),
                    assessed.pull().outcome().findTightest().map(LimitUse::kind));
        }

        /**
         * Takes a ranked span by its figures.
         *
         * @param assumedBore whether its inside diameter is assumed
         * @param rule that sets its number of cable positions
         * @param limit that its pull comes closest to, if it has any
         */
        void add(boolean assumedBore, String rule, Optional<LimitKind> limit) {
            ranked++;
            boreAssumed += assumedBore ? 1 : 0;
            rules.merge(rule, 1L, Long::sum);
            limit.ifPresent(kind -> limits.merge(kind, 1L, Long::sum));
        }

        private void addAll(Counts other) {
            ranked += other.ranked;
            boreAssumed += other.boreAssumed;
            other.rules.forEach((rule, count) -> rules.merge(rule, count, Long::sum));
            other.limits.forEach((limit, count) -> limits.merge(limit, count, Long::sum));
        }
    }

    /** Returns what a thread counts in. */
    Counts begin() {
        var counts = new Counts();
        collected.add(counts);
        return counts;
    }

    /** Returns what decides most of the ranked spans, one sentence each without a full stop. */
    List<String> sentences() {
        var all = new Counts();
        collected.forEach(all::addAll);
        var sentences = new ArrayList<String>();
        if (all.boreAssumed > 0 && all.boreAssumed >= LEAST_ASSUMED_RATIO * all.ranked) {
            sentences.add(
                    of(all.boreAssumed, all)
                            + ", the inside diameter is assumed because no usable one is recorded; their cable positions rest on that");
        }
        all.rules.forEach((rule, count) -> {
            if (RULES.containsKey(rule) && count > MOST_RATIO * all.ranked) {
                sentences.add(of(count, all) + ", " + RULES.get(rule));
            }
        });
        all.limits.forEach((limit, count) -> {
            if (count > MOST_RATIO * all.ranked) {
                sentences.add(of(count, all) + ", " + limit.meaning() + " comes closest to its limit");
            }
        });
        return List.copyOf(sentences);
    }

    private static String of(long count, Counts all) {
        return String.format(Locale.ROOT, "In %,d of %s", count, Counted.of(all.ranked, "candidate"));
    }
}
