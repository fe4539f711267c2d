package org.spanroom.output.columns;

import java.util.List;
import org.spanroom.output.table.RowRule;
import org.spanroom.output.table.RowRule.Kind;

/** Which cells of a span belong together, for those who read spans back; the range of each by itself is in its column. */
public final class SpanRules {
    /** All of them. */
    public static final List<RowRule> ALL = List.of(
            rule(Kind.FILLED, "span_id", "vault_a", "vault_b", "length_m"),
            rule(Kind.EITHER, "rank", "exclusion"),
            rule(Kind.TOGETHER, "exclusion", "reasons"),
            rule(Kind.TOGETHER, "positions_now", "positions_after", "positions_gained"),
            rule(Kind.DIFFERENCE, "positions_gained", "positions_after", "positions_now"),
            rule(
                    Kind.TOGETHER,
                    "site_hours",
                    "shifts",
                    "nights",
                    "shared_a_hours",
                    "shared_b_hours",
                    "site_hour_money",
                    "recovery_money",
                    "build_money",
                    "saving_money",
                    "recovery_lead_days",
                    "innerduct_out_kg",
                    "build_ducts",
                    "trench_avoided_m",
                    "bore_avoided_m",
                    "co2e_ice_kg",
                    "co2e_dig_kg"),
            rule(Kind.PARTS, "shared_a_hours", "shared_b_hours", "site_hours"),
            rule(Kind.PRICED_PARTS, "shared_a_hours", "shared_b_hours", "site_hour_money", "recovery_money"),
            rule(Kind.ASCENDING, "nights", "shifts"),
            rule(Kind.DIFFERENCE, "saving_money", "build_money", "recovery_money"),
            rule(
                    Kind.TOGETHER,
                    MoneyColumns.DRAWN.stream().map(column -> column.name()).toArray(String[]::new)),
            rule(Kind.ASCENDING, "recovery_low_money", "recovery_likely_money", "recovery_high_money"),
            rule(Kind.ASCENDING, "build_low_money", "build_likely_money", "build_high_money"),
            rule(Kind.ASCENDING, "saving_low_money", "saving_likely_money", "saving_high_money"),
            rule(Kind.TOGETHER, "score_low_points", "score_high_points"),
            rule(Kind.ASCENDING, "score_low_points", "score_high_points"),
            rule(Kind.TOGETHER, "new_duct_positions", "new_duct_money", "further_duct_money"));

    private SpanRules() {}

    private static RowRule rule(Kind kind, String... columns) {
        return new RowRule(kind, List.of(columns));
    }
}
