package org.spanroom.pipeline;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.spanroom.config.RunConfig;
import org.spanroom.effort.DrawnCosts;
import org.spanroom.model.OrderStatistics;
import org.spanroom.model.effort.Cents;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.effort.MoneyTotals;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.UncertaintySettings;

/**
 * What the ranked spans of a run cost and save: with all rates at their values, and low, likely and high from draws of the rates. A drawing is the same for all
 * spans, so the total of a drawing is the sum over the spans in it, and the range of the total is that of these sums, never the sum of the
 * spans' ranges. Of each span nine numbers are kept. First every ranked span is given, in any order and by any thread; then what came of
 * it is requested.
 */
final class MoneyRun {
    /** Memory for each span, where rates are drawn. */
    static final long SPAN_BYTES = (long) Range.values().length * Float.BYTES;

    private final String currency;
    private final UncertaintySettings settings;
    private final Optional<RateDrawings> drawings;
    private final float[][] ranges;
    private final ConcurrentLinkedQueue<Sums> collected = new ConcurrentLinkedQueue<>();

    /** Of each amount low, likely and high follow one another. */
    private enum Range {
        RECOVERY_LOW,
        RECOVERY_LIKELY,
        RECOVERY_HIGH,
        NEW_BUILD_LOW,
        NEW_BUILD_LIKELY,
        NEW_BUILD_HIGH,
        SAVING_LOW,
        SAVING_LIKELY,
        SAVING_HIGH
    }

    /**
     * Prepares for this many spans.
     *
     * @param rates at their values
     */
    MoneyRun(RunConfig config, Rates rates, int spans) {
        currency = config.rates().currency();
        settings = config.uncertainty();
        drawings = settings.simulated() ? Optional.of(new RateDrawings(settings, rates)) : Optional.empty();
        ranges = new float[drawings.isPresent() ? Range.values().length : 0][spans];
    }

    /** What one thread has added up. */
    static final class Sums {
        private final MoneyDraws.Sums draws;
        private final Optional<DrawnCosts> costs;
        private final OrderStatistics percentiles = new OrderStatistics();
        private double recoveryCents;
        private double newBuildCents;

        private Sums(Optional<RateDrawings> drawings) {
            draws = new MoneyDraws.Sums(drawings.map(RateDrawings::count).orElse(0));
            costs = drawings.map(RateDrawings::begin);
        }

        private void add(Effort effort, MoneyDraws drawn) {
            recoveryCents += Cents.of(effort.recoveryMoney());
            newBuildCents += Cents.of(effort.newBuildMoney());
            draws.add(drawn);
        }

        private void addAll(Sums other) {
            recoveryCents += other.recoveryCents;
            newBuildCents += other.newBuildCents;
            draws.addAll(other.draws);
        }
    }

    /** Returns what a thread adds up in. */
    Sums begin() {
        var sums = new Sums(drawings);
        collected.add(sums);
        return sums;
    }

    /** Takes a ranked span, and returns what it costs in each drawing. */
    MoneyDraws add(int number, Assessment assessed, Sums into) {
        MoneyDraws drawn =
                drawings.map(all -> all.of(assessed, into.costs.orElseThrow())).orElse(MoneyDraws.NONE);
        assessed.effort().ifPresent(effort -> into.add(effort, drawn));
        Optional<MoneyRanges> found = drawn.ranges(settings, into.percentiles);
        found.ifPresent(each -> RecyclingCheck.demand(assessed.span(), each));
        found.ifPresentOrElse(each -> keep(number, each), () -> keepNothing(number));
        return drawn;
    }

    /** Returns the ranges of a ranked span; empty if no innerduct comes out, or nothing was simulated. */
    Optional<MoneyRanges> of(int number) {
        if (drawings.isEmpty() || Float.isNaN(ranges[0][number])) {
            return Optional.empty();
        }
        return Optional.of(new MoneyRanges(
                range(number, Range.RECOVERY_LOW),
                range(number, Range.NEW_BUILD_LOW),
                range(number, Range.SAVING_LOW)));
    }

    /** Returns the totals over all spans that were given. */
    MoneyTotals totals() {
        var all = new Sums(drawings);
        collected.forEach(all::addAll);
        return new MoneyTotals(
                currency,
                Cents.money(all.recoveryCents),
                Cents.money(all.newBuildCents),
                OptionalDouble.empty(),
                all.draws.draws().ranges(settings));
    }

    private void keep(int number, MoneyRanges found) {
        keep(number, found.recovery(), Range.RECOVERY_LOW);
        keep(number, found.newBuild(), Range.NEW_BUILD_LOW);
        keep(number, found.saving(), Range.SAVING_LOW);
    }

    @SuppressWarnings("EnumOrdinal") // packed in the order of the constants, in memory only
    private void keep(int number, MoneyRange range, Range low) {
        ranges[low.ordinal()][number] = (float) range.lowMoney();
        ranges[low.ordinal() + 1][number] = (float) range.likelyMoney();
        ranges[low.ordinal() + 2][number] = (float) range.highMoney();
    }

    private void keepNothing(int number) {
        Arrays.stream(ranges).forEach(kept -> kept[number] = Float.NaN);
    }

    @SuppressWarnings("EnumOrdinal") // packed in the order of the constants, in memory only
    private MoneyRange range(int number, Range low) {
        return new MoneyRange(
                ranges[low.ordinal()][number], ranges[low.ordinal() + 1][number], ranges[low.ordinal() + 2][number]);
    }
}
