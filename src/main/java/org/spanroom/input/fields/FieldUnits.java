package org.spanroom.input.fields;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * Whether a whole field is in another unit than the config says. It is doubtful where at least half of the values, and at least five, are
 * implausible in the configured unit, and at least half of these are plausible in another one. Common practice, no source.
 */
final class FieldUnits {
    private static final int LEAST = 5;

    private final PlausibleRanges ranges;
    private final Map<Term, Seen> byTerm = new EnumMap<>(Term.class);

    FieldUnits(PlausibleRanges ranges) {
        this.ranges = ranges;
    }

    /** What was seen of one field, in the unit that the config gives for it. */
    private static final class Seen {
        private final String field;
        private final Unit unit;
        private final Map<Unit, Long> plausibleIn = new EnumMap<>(Unit.class);
        private long values;
        private long implausible;

        private Seen(String field, Unit unit) {
            this.field = field;
            this.unit = unit;
        }

        private Seen and(Seen other) {
            values += other.values;
            implausible += other.implausible;
            other.plausibleIn.forEach((unit, count) -> plausibleIn.merge(unit, count, Long::sum));
            return this;
        }

        private boolean isLikely(Unit other) {
            return 2 * plausibleIn.getOrDefault(other, 0L) >= implausible;
        }

        /** Says what is doubtful, with every unit that is likely; empty where nothing is. */
        private Optional<String> doubt() {
            if (implausible < LEAST || 2 * implausible < values) {
                return Optional.empty();
            }
            String likely = TermNumbers.BY_HABIT.stream()
                    .filter(this::isLikely)
                    .map(other -> String.format(Locale.ROOT, "%,d in %s", plausibleIn.get(other), other.inWords()))
                    .collect(Collectors.joining(", "));
            return likely.isEmpty()
                    ? Optional.empty()
                    : Optional.of(String.format(
                            Locale.ROOT,
                            "check the unit of %s in the config: %,d of %,d values are implausible in %s; plausible"
                                    + " would be %s",
                            field,
                            implausible,
                            values,
                            unit.inWords(),
                            likely));
        }
    }

    /**
     * Counts a value of a field with a unit.
     *
     * @param inUnit the value in the configured unit
     * @param isGood whether it is plausible, or brings a unit of its own
     */
    void see(Term term, LayerFields.Column column, double inUnit, boolean isGood) {
        if (column.unit().isEmpty()) {
            return;
        }
        Unit configured = column.unit().get();
        Seen seen = byTerm.computeIfAbsent(term, key -> new Seen(column.field(), configured));
        seen.values++;
        if (isGood) {
            return;
        }
        seen.implausible++;
        for (Unit other : TermNumbers.BY_HABIT) {
            if (other != configured
                    && other.dimension() == configured.dimension()
                    && ranges.contains(term, TermNumbers.kept(term, inUnit, Optional.of(other)))) {
                seen.plausibleIn.merge(other, 1L, Long::sum);
            }
        }
    }

    /** Reports each doubtful field once, whatever terms it is mapped to; to be called when all has been read. */
    void report(CappedLog log) {
        var byField = new TreeMap<String, Seen>();
        byTerm.values().forEach(seen -> byField.merge(seen.field + " in " + seen.unit.symbol(), seen, Seen::and));
        byTerm.clear();
        byField.values()
                .forEach(seen -> seen.doubt()
                        .ifPresent(text -> log.add(Finding.of(FindingCode.UNIT_DOUBTFUL, log.source(), "", text)
                                .inField(seen.field))));
    }
}
