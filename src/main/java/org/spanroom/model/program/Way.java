package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;

/**
 * A way for cables that go together, from vault to vault.
 *
 * @param cables how many go along it, in one duct of each section
 * @param steps in order; at least one
 */
public record Way(int cables, List<WayStep> steps) {
    public Way {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("a way has at least one section");
        }
    }

    public double lengthM() {
        return steps.stream().mapToDouble(step -> step.section().lengthM()).sum();
    }

    /** Returns what all its steps cost. */
    public Costs costs() {
        return steps.stream().map(WayStep::costs).reduce(Costs.NONE, Costs::plus);
    }

    /** Returns the hours on site, each span by itself: what a shared vault saves is not deducted. */
    public double siteHours() {
        return steps.stream().mapToDouble(WayStep::siteHours).sum();
    }

    /** Returns the days until all permits are issued, if they are applied for on the same day. */
    public int leadDays() {
        return steps.stream().mapToInt(WayStep::leadDays).max().orElse(0);
    }

    /** Returns the first day on which the last of its steps can begin. */
    public LocalDate earliest(LocalDate onDate) {
        return steps.stream()
                .map(step -> step.earliest(onDate))
                .max(Comparator.naturalOrder())
                .orElse(onDate);
    }

    /**
     * Returns the chance that every recovery on it works: the share of the samples in which all do. Spans that are uncertain for a shared
     * reason fail together, so that a product of chances would be too low.
     *
     * @param samples how many samples the masks have; empty is returned for 0, and where a recovery on the way was not simulated
     */
    public OptionalDouble feasibleRatio(int samples) {
        if (samples == 0) {
            return OptionalDouble.empty();
        }
        long all = samples >= Long.SIZE ? -1L : (1L << samples) - 1;
        for (WayStep step : steps) {
            OptionalLong draws = step.feasibleDraws();
            if (draws.isEmpty()) {
                return OptionalDouble.empty();
            }
            all &= draws.getAsLong();
        }
        return OptionalDouble.of(Long.bitCount(all) / (double) Math.min(samples, Long.SIZE));
    }

    /** Returns the binding section: the one in whose widest duct the fewest cables can go together without new build; of equals the first. */
    public WayStep binding() {
        return steps.stream()
                .min(Comparator.comparingInt(step -> step.section().widthPositions()))
                .orElseThrow();
    }

    /** Returns how many steps do something. */
    public long count(WayStep.Action action) {
        return steps.stream().filter(step -> step.action() == action).count();
    }

    /** Returns the length of the sections that another way has too. */
    public double sharedM(Way other) {
        Set<String> there = new HashSet<>();
        other.steps.forEach(step -> there.add(step.section().id()));
        return steps.stream()
                .filter(step -> there.contains(step.section().id()))
                .mapToDouble(step -> step.section().lengthM())
                .sum();
    }
}
