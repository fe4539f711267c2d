package org.spanroom.pipeline;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.rank.GateEffect;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.columns.SpanColumns;

/** Reads from the recorded rows of a run what each span offers a program. */
final class RecordedOffers {
    private final SpanCells cells;
    private final Set<String> ignoredGates;

    /** @param ignoredGates keys of gates that are treated as open, for what-ifs */
    RecordedOffers(SpanCells cells, Set<String> ignoredGates) {
        this.cells = cells;
        this.ignoredGates = ignoredGates;
    }

    /** What is kept of a span while the others are read; money that is not recorded is NaN. */
    record Offer(
            String spanId,
            String ductId,
            int now,
            int after,
            OptionalInt rank,
            String closedBy,
            boolean closed,
            double lengthM,
            double recoveryMoney,
            MoneyRange recovery,
            double siteHours,
            int leadDays,
            Optional<LocalDate> notBefore,
            OptionalLong draws,
            int newPositions,
            double newMoney,
            double furtherMoney,
            int newLeadDays) {}

    /** Returns what a row says. */
    Offer read(RecordedSpans.Row row) {
        List<String> reasons = Arrays.stream(cells.text(row, "reasons").split(";"))
                .filter(reason -> GateEffect.isGate(reason) && !ignoredGates.contains(reason))
                .filter(reason -> GateEffect.of(reason) != GateEffect.OPENS_LATER)
                .toList();
        boolean unusable = reasons.stream().anyMatch(reason -> GateEffect.of(reason) == GateEffect.CLOSES_USE);
        double rank = cells.number(row, "rank");
        return new Offer(
                cells.text(row, "span_id"),
                cells.text(row, SpanColumns.DUCT.name()),
                unusable ? 0 : (int) cells.numberOr0(row, SpanColumns.POSITIONS_NOW.name()),
                (int) cells.numberOr0(row, SpanColumns.POSITIONS_AFTER.name()),
                Double.isNaN(rank) ? OptionalInt.empty() : OptionalInt.of((int) rank),
                String.join(";", reasons),
                !reasons.isEmpty(),
                cells.number(row, SpanColumns.LENGTH.name()),
                cells.number(row, "recovery_money"),
                cells.range(row, "recovery"),
                cells.numberOr0(row, "site_hours"),
                (int) cells.numberOr0(row, "recovery_lead_days"),
                notBefore(row),
                draws(row),
                (int) cells.numberOr0(row, "new_duct_positions"),
                cells.number(row, "new_duct_money"),
                cells.number(row, "further_duct_money"),
                (int) cells.numberOr0(row, "new_build_lead_days"));
    }

    /**
     * Returns in which samples recovery works; empty where that was not simulated, e.g. for a span that is excluded for good or that only
     * another scoring ranks: the same empty cell stands for no sample.
     */
    private OptionalLong draws(RecordedSpans.Row row) {
        String draws = cells.text(row, SpanColumns.FEASIBLE_DRAWS.name());
        if (!draws.isEmpty()) {
            return OptionalLong.of(Long.parseUnsignedLong(draws, 16));
        }
        String reasons = cells.text(row, "reasons");
        boolean isSimulated = reasons.isEmpty()
                ? !cells.text(row, "feasible_chance_pct").isEmpty()
                : Arrays.stream(reasons.split(";"))
                        .allMatch(
                                reason -> GateEffect.isGate(reason) && GateEffect.of(reason) == GateEffect.OPENS_LATER);
        return isSimulated ? OptionalLong.of(0) : OptionalLong.empty();
    }

    /** Returns the first day after an embargo, unless its gate is ignored. */
    private Optional<LocalDate> notBefore(RecordedSpans.Row row) {
        return ignoredGates.contains("embargo")
                ? Optional.empty()
                : day(cells.text(row, "embargo_until")).map(last -> last.plusDays(1));
    }

    private static Optional<LocalDate> day(String text) {
        try {
            return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException notADay) {
            return Optional.empty();
        }
    }
}
