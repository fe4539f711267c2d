package org.spanroom.model.rank;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What gates and cautions say of one span.
 *
 * @param exclusions every reason for which the span is not ranked, the most basic first
 * @param waived reasons whose gate is open: they apply, but the span is ranked
 * @param cautions conditions to check before work
 */
public record Verdict(List<Exclusion> exclusions, List<Exclusion> waived, List<Caution> cautions) {
    /** Nothing speaks against the span. */
    public static final Verdict CLEAR = new Verdict(List.of(), List.of(), List.of());

    public Verdict {
        exclusions = List.copyOf(exclusions);
        waived = List.copyOf(waived);
        cautions = List.copyOf(cautions);
    }

    public boolean isExcluded() {
        return !exclusions.isEmpty();
    }

    /** Returns whether the span is excluded for now only: from a day on, or once other room is used up, it could be recovered. */
    public boolean mayOpen() {
        return isExcluded()
                && exclusions.stream().allMatch(reason -> GateEffect.of(reason.key()) == GateEffect.OPENS_LATER);
    }

    /** Returns whether on paper the innerducts come out only when well lubricated. */
    public boolean isPullDoubtful() {
        return hasCaution(Caution.PULL_DOUBTFUL);
    }

    /** Returns whether an innerduct must pass a bend tighter than its minimum radius, which lubrication does not change. */
    public boolean isBendTight() {
        return hasCaution(Caution.INNERDUCT_RADIUS);
    }

    private boolean hasCaution(String key) {
        for (Caution caution : cautions) {
            if (caution.key().equals(key)) {
                return true;
            }
        }
        return false;
    }

    /** Finds the reason that is given where there is space for one only: the most basic. */
    public Optional<Exclusion> findFirst() {
        return exclusions.isEmpty() ? Optional.empty() : Optional.of(exclusions.get(0));
    }

    /** Finds the most basic reason that applies, whether its gate is open or not. */
    public Optional<Exclusion> findBasic() {
        return Stream.concat(exclusions.stream(), waived.stream()).min(Comparator.naturalOrder());
    }

    /** Returns how many cautions there are, those of open gates included. */
    public int cautionCount() {
        return waived.size() + cautions.size();
    }

    /** Returns the words for all cautions in columns, those of open gates first. */
    public List<String> cautionKeys() {
        var keys = new ArrayList<String>(cautionCount());
        waived.forEach(reason -> keys.add(reason.key()));
        cautions.forEach(caution -> keys.add(caution.key()));
        return keys;
    }
}
