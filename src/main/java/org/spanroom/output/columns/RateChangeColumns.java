package org.spanroom.output.columns;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.effort.Rate;
import org.spanroom.model.effort.RateKey;
import org.spanroom.model.learn.RateChange;
import org.spanroom.model.learn.RatioEstimate;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of what reports say of rates. */
public final class RateChangeColumns {
    private static final int UNIT_DECIMALS = 6;
    private static final int RATIO_DECIMALS = 4;

    /** Longest first, so that a unit is not taken for a part of another. */
    private static final List<String> UNITS =
            List.of("liters_per_m", "m3_per_hour", "kg_per_hour", "m_per_hour", "persons", "hours", "ratio", "kg", "m");

    public static final Table<RateChange> TABLE = Table.plain(
            "rate_changes",
            "One row for each rate that follows reported production, and for each quantity that no rate follows, in the order of the work.",
            List.of(
                    Column.text(
                            "learned",
                            "learned",
                            "What was reported: a step of the work, as in `step_hours`, or a quantity.",
                            RateChange::learned),
                    Column.text(
                            "rate",
                            "rate",
                            "The rate that follows; empty: shown only.",
                            row -> row.rate().map(RateKey::key)),
                    Column.text(
                            "kind",
                            "kind",
                            "Kind of vaults or zones whose row of the rate it is; empty: the standard row.",
                            RateChange::kind),
                    Column.text(
                            "unit",
                            "unit",
                            "Unit of the values of the rate.",
                            row -> row.rate().map(RateChangeColumns::unit)),
                    rate("value_before_unit", "val_bef", "Value in the run.", RateChange::before, Rate::value),
                    rate("low_before_unit", "low_bef", "Low limit in the run.", RateChange::before, Rate::low),
                    rate("high_before_unit", "high_bef", "High limit in the run.", RateChange::before, Rate::high),
                    rate(
                            "value_after_unit",
                            "val_aft",
                            "Proposed value; empty: nothing is proposed.",
                            RateChange::after,
                            Rate::value),
                    rate("low_after_unit", "low_aft", "Proposed low limit.", RateChange::after, Rate::low),
                    rate("high_after_unit", "high_aft", "Proposed high limit.", RateChange::after, Rate::high),
                    Column.integer(
                            "spans",
                            "spans",
                            "How many spans reported it, each once; those left out are not counted.",
                            RateChange::reported),
                    estimate(
                            "median_ratio",
                            "med_ratio",
                            "Median of actual over planned; of hours, above 1 is slower than planned.",
                            RatioEstimate::medianRatio),
                    estimate(
                            "median_low_ratio",
                            "med_low",
                            "Lower end of the 90 % bootstrap interval of the median.",
                            RatioEstimate::lowRatio),
                    estimate("median_high_ratio", "med_high", "Upper end of it.", RatioEstimate::highRatio),
                    estimate(
                            "weight_ratio",
                            "weight",
                            "How far the median is followed, n over n plus the spans that the rate counts as.",
                            RatioEstimate::weightRatio),
                    Column.text(
                            "last_day",
                            "last_day",
                            "Day of the latest report.",
                            row -> row.lastDay().map(LocalDate::toString)),
                    Column.text(
                            "why_not", "why_not", "Why nothing is proposed; empty: something is.", RateChange::why)));

    private RateChangeColumns() {}

    /** Returns the unit of a rate, as the end of its name has it. */
    public static String unit(RateKey key) {
        return UNITS.stream()
                .filter(unit -> key.key().endsWith("_" + unit))
                .findFirst()
                .orElse("");
    }

    private static Column<RateChange> rate(
            String name,
            String shortName,
            String meaning,
            Function<RateChange, Optional<Rate>> row,
            ToDoubleFunction<Rate> value) {
        return Column.real(
                name,
                shortName,
                UNIT_DECIMALS,
                meaning,
                change -> row.apply(change).map(value::applyAsDouble));
    }

    private static Column<RateChange> estimate(
            String name, String shortName, String meaning, ToDoubleFunction<RatioEstimate> value) {
        return Column.real(
                name,
                shortName,
                RATIO_DECIMALS,
                meaning,
                change -> change.estimate()
                        .map(found -> OptionalDouble.of(value.applyAsDouble(found)))
                        .orElse(OptionalDouble.empty()));
    }
}
