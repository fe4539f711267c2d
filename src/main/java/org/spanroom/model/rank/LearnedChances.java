package org.spanroom.model.rank;

import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.model.Term;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.DuctStratum;

/**
 * What ducts that were opened say of the others: chances for each stratum, and for all ducts of which no like one was opened.
 * Immutable.
 */
public final class LearnedChances {
    /** Nothing was learned: the chances are those of the settings. */
    public static final LearnedChances NONE = new LearnedChances(Optional.empty(), Map.of());

    private final Optional<Levels> levels;
    private final Map<String, SpanChances> byStratum;

    /** The chances of the settings, and those that all opened ducts together leave. */
    private record Levels(SpanChances prior, SpanChances all) {}

    private LearnedChances(Optional<Levels> levels, Map<String, SpanChances> byStratum) {
        this.levels = levels;
        this.byStratum = Map.copyOf(byStratum);
    }

    /**
     * Makes chances.
     *
     * @param prior those of the settings
     * @param all those for ducts of whose stratum none was opened
     * @param byStratum by names of strata, see {@link DuctStratum#name}
     */
    public static LearnedChances of(SpanChances prior, SpanChances all, Map<String, SpanChances> byStratum) {
        return new LearnedChances(Optional.of(new Levels(prior, all)), new TreeMap<>(byStratum));
    }

    /** Returns whether nothing was learned. */
    public boolean isNone() {
        return levels.isEmpty();
    }

    /**
     * Returns the chances for a duct.
     *
     * @param settings what applies where nothing was learned
     */
    public SpanChances of(Duct duct, SpanChances settings) {
        return levels.isEmpty()
                ? settings
                : Objects.requireNonNullElse(
                        byStratum.get(DuctStratum.name(duct)), levels.get().all());
    }

    /**
     * Returns how far an assumed term of a duct is verified by like ducts: by how much more likely its assumption is right than by the
     * settings, 0 where it is not.
     */
    public double verifiedRatio(Duct duct, Term term) {
        if (levels.isEmpty()) {
            return 0;
        }
        SpanChances prior = levels.get().prior();
        return Math.max(0, rightRatio(of(duct, prior), term) - rightRatio(prior, term));
    }

    /** A term of which no chance is learned counts as never right, so that nothing is gained. */
    private static double rightRatio(SpanChances chances, Term term) {
        return switch (term) {
            case INSIDE_DIAMETER, CABLE_OUTSIDE_DIAMETER -> 1 - chances.otherSizeRatio();
            case INNERDUCT_COUNT, CABLE_COUNT -> chances.countsRightRatio();
            case CONDITION -> 1 - chances.blockedUnknownRatio();
            default -> 0;
        };
    }
}
