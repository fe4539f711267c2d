package org.spanroom.learn;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.effort.RateOverride;
import org.spanroom.model.effort.RateSettings;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.learn.LeftOut;
import org.spanroom.model.learn.RateChange;
import org.spanroom.model.learn.RatioEstimate;

/**
 * Proposes rates from reported production. Each rate follows the ratio of actual to planned of its step or quantity; every row of it,
 * for kinds of vaults and zones too, by the same ratio.
 */
public final class LearnedRates {
    /** What a learned number is written with. */
    private static final MathContext DIGITS = new MathContext(6, RoundingMode.HALF_EVEN);

    private final RateSettings before;
    private final RateSettings shipped;
    private final LearnSettings settings;
    private final List<RateChange> changes = new ArrayList<>();
    private final Map<RateKey, Rate> standard;
    private final List<RateOverride> byVaultKind;
    private final List<RateOverride> byZoneKind;

    private LearnedRates(RateSettings before, RateSettings shipped, LearnSettings settings) {
        this.before = before;
        this.shipped = shipped;
        this.settings = settings;
        standard = new EnumMap<>(before.standard());
        byVaultKind = new ArrayList<>(before.byVaultKind());
        byZoneKind = new ArrayList<>(before.byZoneKind());
    }

    /**
     * What is proposed.
     *
     * @param after all rates; those that nothing was learned of are as before
     * @param changes of each rate and quantity, in the order of the work, also where nothing is proposed
     */
    public record Proposal(RateSettings after, List<RateChange> changes, List<LeftOut> leftOut) {
        public Proposal {
            changes = List.copyOf(changes);
            leftOut = List.copyOf(leftOut);
        }
    }

    /**
     * Returns what a field book says of the rates of a run.
     *
     * @param runCode code of the run
     * @param before its rates
     * @param shipped the rates of the program, to say which values are its
     */
    public static Proposal of(
            FieldBook book,
            String runCode,
            PlannedFigures figures,
            RateSettings before,
            RateSettings shipped,
            LearnSettings settings) {
        var reader = new ProductionReader(book, runCode, figures, settings);
        var learned = new LearnedRates(before, shipped, settings);
        reader.found().forEach(learned::learn);
        var after = new RateSettings(
                before.currency(),
                before.surfaces(),
                before.surfaceWhenUnknown(),
                learned.standard,
                learned.byVaultKind,
                learned.byZoneKind);
        return new Proposal(after, learned.changes, reader.leftOut());
    }

    private void learn(Learnable learnable, List<Observation> found) {
        if (learnable.rates().isEmpty()) {
            changes.add(change(learnable, Optional.empty(), "", Optional.empty(), found));
        }
        for (RateKey key : learnable.rates()) {
            Rate rate = before.standard().get(key);
            if (rate == null) {
                continue;
            }
            RateChange change = change(learnable, Optional.of(key), "", Optional.of(rate), found);
            changes.add(change);
            change.after().ifPresent(after -> standard.put(key, after));
            learnRows(learnable, key, byVaultKind, found);
            learnRows(learnable, key, byZoneKind, found);
        }
    }

    private void learnRows(Learnable learnable, RateKey key, List<RateOverride> rows, List<Observation> found) {
        for (int i = 0; i < rows.size(); i++) {
            RateOverride row = rows.get(i);
            if (row.rate() == key) {
                RateChange change = change(learnable, Optional.of(key), row.kind(), Optional.of(row.there()), found);
                changes.add(change);
                if (change.after().isPresent()) {
                    Rate after = change.after().get();
                    rows.set(
                            i,
                            new RateOverride(
                                    row.kind(),
                                    key,
                                    after.value(),
                                    after.low(),
                                    after.high(),
                                    after.source(),
                                    after.date()));
                }
            }
        }
    }

    private RateChange change(
            Learnable learnable, Optional<RateKey> key, String kind, Optional<Rate> rate, List<Observation> all) {
        Optional<LearnedSource> earlier = rate.flatMap(LearnedSource::of);
        List<Observation> found = all.stream()
                .filter(one ->
                        earlier.isEmpty() || one.day().isAfter(earlier.get().untilDay()))
                .toList();
        Optional<LocalDate> lastDay = found.stream().map(Observation::day).max(LocalDate::compareTo);
        if (found.size() < settings.leastSpans()) {
            String why = Counted.of(found.size(), "span") + " reported"
                    + earlier.map(learned -> " since " + learned.untilDay()).orElse("") + ", fewer than "
                    + settings.leastSpans();
            return new RateChange(
                    learnable.key(), key, kind, rate, Optional.empty(), Optional.empty(), found.size(), lastDay, why);
        }
        double[] ratios = found.stream().mapToDouble(Observation::doneRatio).toArray();
        RatioEstimate estimate =
                Estimates.of(ratios, earlier.map(LearnedSource::spans).orElse(0), settings);
        String why = why(learnable, rate, estimate);
        Optional<Rate> after = why.isEmpty() && key.isPresent() && rate.isPresent() && lastDay.isPresent()
                ? Optional.of(after(learnable, key.get(), rate.get(), estimate, lastDay.get()))
                : Optional.empty();
        return new RateChange(
                learnable.key(), key, kind, rate, after, Optional.of(estimate), found.size(), lastDay, why);
    }

    private static String why(Learnable learnable, Optional<Rate> rate, RatioEstimate estimate) {
        if (rate.isEmpty()) {
            return "shown only: no rate follows it";
        }
        if (!(rate.get().value() > 0)) {
            return "the rate is 0, which no ratio changes";
        }
        return learnable.slowerOnly() && estimate.medianRatio() < 1
                ? "faster than planned: ventilation is not shortened by reports"
                : "";
    }

    private Rate after(Learnable learnable, RateKey key, Rate rate, RatioEstimate hours, LocalDate day) {
        RatioEstimate ratio = learnable.hours() && key.divides() ? hours.inverse() : hours;
        double exact = rate.value() * ratio.learnedRatio();
        double most = key.key().endsWith("_ratio") ? Math.max(1, rate.high()) : Double.MAX_VALUE;
        double value = Math.min(most, rounded(exact, rate.value()));
        double low = value * ratio.lowOverValueRatio(rate.low() / rate.value());
        double high = value * ratio.highOverValueRatio(rate.high() / rate.value());
        boolean ofProgram = Optional.ofNullable(shipped.standard().get(key))
                        .filter(rate::equals)
                        .isPresent()
                || shipped.byVaultKind().stream().anyMatch(row -> row.there().equals(rate))
                || shipped.byZoneKind().stream().anyMatch(row -> row.there().equals(rate));
        LearnedSource source = LearnedSource.after(rate, ofProgram, hours.spans(), day);
        return new Rate(
                value,
                Math.min(value, rounded(low, rate.low())),
                Math.min(most, Math.max(value, rounded(high, rate.high()))),
                source.text(),
                day.toString());
    }

    /** Returns a value as it is written; one that has not changed stays bit for bit. */
    static double rounded(double valueInUnit, double beforeInUnit) {
        return valueInUnit == beforeInUnit ? beforeInUnit : new BigDecimal(valueInUnit, DIGITS).doubleValue();
    }
}
