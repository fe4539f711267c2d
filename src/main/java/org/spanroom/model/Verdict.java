package org.spanroom.model;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What gates and cautions say of one span. The sets are in the order of their kinds.
 *
 * @param exclusions every reason for which the span is not ranked
 * @param waived reasons whose gate is open: they hold, but the span is ranked
 * @param cautions what to bear in mind before work
 */
public record Verdict(Set<Exclusion> exclusions, Set<Exclusion> waived, Set<Caution> cautions) {
    /** Nothing speaks against the span. */
    public static final Verdict CLEAR = new Verdict(Set.of(), Set.of(), Set.of());

    public Verdict {
        exclusions = ordered(exclusions, Exclusion.class);
        waived = ordered(waived, Exclusion.class);
        cautions = ordered(cautions, Caution.class);
    }

    public boolean isExcluded() {
        return !exclusions.isEmpty();
    }

    /** Finds the reason that is told where there is space for one only: the first in the order of {@link Exclusion}. */
    public Optional<Exclusion> findFirst() {
        return exclusions.stream().findFirst();
    }

    /** Returns the words for all cautions in columns, those of open gates first. */
    public List<String> cautionKeys() {
        var keys = new ArrayList<String>(waived.size() + cautions.size());
        waived.forEach(reason -> keys.add(reason.key()));
        cautions.forEach(caution -> keys.add(caution.key()));
        return keys;
    }

    /** A run has millions of these and most are empty. */
    private static <E extends Enum<E>> Set<E> ordered(Set<E> set, Class<E> type) {
        if (set.isEmpty()) {
            return Set.of();
        }
        var copy = EnumSet.noneOf(type);
        copy.addAll(set);
        return Collections.unmodifiableSet(copy);
    }
}
