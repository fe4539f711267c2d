package org.spanroom.output.table;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ColumnAliasesTest {
    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "length_m                  | REAL    | length, m",
                "length_ft                 | REAL    | length, ft",
                "inside_diameter_mm        | REAL    | inside diameter, mm",
                "inside_diameter_in        | REAL    | inside diameter, in",
                "bore_area_mm2             | REAL    | bore area, mm²",
                "recoverable_in2           | REAL    | recoverable, in²",
                "water_m3                  | REAL    | water, m³",
                "water_ft3                 | REAL    | water, ft³",
                "lubricant_l               | REAL    | lubricant, l",
                "lubricant_gal             | REAL    | lubricant, gal",
                "recycled_kg               | REAL    | recycled, kg",
                "hold_for_a_bad_n          | REAL    | hold for A bad, N",
                "hold_for_b_lbf            | REAL    | hold for B, lbf",
                "neighbor_n_per_m          | REAL    | neighbor, N/m",
                "neighbor_lbf_per_ft       | REAL    | neighbor, lbf/ft",
                "density_kg_per_m3         | REAL    | density, kg/m³",
                "stress_mpa                | REAL    | stress, MPa",
                "largest_bend_deg          | REAL    | largest bend, degrees",
                "lat_deg                   | REAL    | latitude, degrees",
                "fill_now_pct              | REAL    | fill now, %",
                "chosen_chance_pct         | INTEGER | chosen chance, %",
                "quantity_in_unit          | REAL    | quantity, in its unit",
                "quantity_in_us_unit       | REAL    | quantity, in its US unit",
                "labor_hours               | REAL    | labor hours",
                "recovery_lead_days        | INTEGER | recovery lead days",
                "score_points              | REAL    | score points",
                "recovery_money            | REAL    | recovery money",
                "build_money_per_cable     | REAL    | build money per cable",
                "build_money_per_cable_m   | REAL    | build money per cable m",
                "build_money_per_cable_ft  | REAL    | build money per cable ft",
                "marginal_money_per_position | REAL  | marginal money per position",
                "co2e_ice_kg               | REAL    | CO2e ice, kg",
                "jam_ratio                 | REAL    | jam ratio",
                "span_id                   | TEXT    | span ID",
                "vault_a                   | TEXT    | vault A",
                "quantity_us_unit          | TEXT    | quantity US unit",
                "zones_in                  | TEXT    | zones in",
                "in_roadway                | FLAG    | in roadway",
                "innerducts_out            | INTEGER | innerducts out",
                "rank                      | INTEGER | rank",
                "m                         | REAL    | m",
                "src_length_m              | TEXT    | source length m",
                "src_depth_m               | REAL    | source depth m"
            })
    void anAliasIsTheNameInWordsWithItsUnit(String name, Column.Type type, String alias) {
        assertThat(ColumnAliases.of(name, type)).isEqualTo(alias);
    }

    @Test
    void noAliasOccursTwiceInATable() {
        Table<String> table = Table.plain(
                "list",
                "A list.",
                List.of(
                        Column.real("lat_deg", "lat_deg", 1, "One.", row -> 1),
                        Column.real("latitude_deg", "latitud", 1, "Another.", row -> 2),
                        Column.text("shape", "shape", "A third.", row -> "x")));

        assertThat(ColumnAliases.of(table, Set.of("shape")))
                .containsExactly("latitude, degrees", "latitude, degrees (latitude_deg)", "shape (shape)");
    }
}
