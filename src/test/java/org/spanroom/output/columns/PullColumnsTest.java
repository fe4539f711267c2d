package org.spanroom.output.columns;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.spanroom.output.SpanExplanationSample.LBF_N;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.model.rank.SpanExplanation;
import org.spanroom.output.OutputSettings;
import org.spanroom.output.ResultWriter;
import org.spanroom.output.SampleResults;
import org.spanroom.output.SpanExplanationSample;
import org.spanroom.testing.ExternalTool;

class PullColumnsTest {
    @TempDir
    Path parent;

    /** The example's forces in lbf, derived by hand and by stepping the coupled equations; columns have one decimal. */
    @ParameterizedTest
    @CsvSource({
        "pull_lubricated_n, 58.5",
        "hold_lubricated_n, 8.1",
        "pull_dry_n, 125.69",
        "hold_dry_n, 18.65",
        "pull_bad_n, 210.9",
        "hold_bad_n, 27.3",
        "pull_out_at_a_n, 125.69",
        "hold_for_a_n, 18.65",
        "pull_out_at_b_n, 128.83",
        "hold_for_b_n, 17.93"
    })
    void forcesAreThoseOfTheWorkedExample(String column, double expectedLbf) throws IOException {
        Map<String, String> row = span(SpanExplanationSample.workedExample());

        assertThat(Double.parseDouble(row.get(column)) / LBF_N).isCloseTo(expectedLbf, within(0.06));
    }

    /**
     * 125.69 of 653 lbf are 19.2 % of the innerduct, 18.65 of 180 lbf are 10.4 % of the cable; the radius of 36 in against 18 in
     * for 1-1/4 is 50 %, the length of 600 of 1200 ft too; the vault's 0.75 m against 18 in is the tightest: 61 %.
     */
    @Test
    void theAnswerNamesEndVaultAndTightestLimit() throws IOException {
        assertThat(span(SpanExplanationSample.workedExample()))
                .containsEntry("pull_outcome", "both")
                .containsEntry("pull_better_end", "a")
                .containsEntry("pull_better_vault", "V-1")
                .containsEntry("pull_utilization_pct", "50.0")
                .containsEntry("pull_tightest_limit", "innerduct_bend_radius")
                .containsEntry("pull_count", "1")
                .containsEntry("pull_failing_limit", "")
                .containsEntry("pull_failing_end", "")
                .containsEntry("pull_failing_at_m", "")
                .containsEntry("pull_friction", "dry")
                .containsEntry("pull_warnings", "")
                .containsEntry(
                        "pull_assumptions",
                        "friction;breakaway;innerduct_stress;machine_and_vault;bend_radius;level;duct_diameter;cable_mass");
    }

    /** Six bends of 60 degrees: 360 in all warn above 180 and fail nothing, but the pull does. */
    @Test
    void aFailureSaysWhichLimitWhereAndByHowMuch() throws IOException {
        SpanExplanation explained = SpanExplanationSample.failing();
        var outcome = explained.ranked().assessment().pull().outcome();
        var failing = outcome.findFailing().orElseThrow();

        Map<String, String> row = span(explained);

        assertThat(row)
                .containsEntry("pull_outcome", "neither")
                .containsEntry("pull_failing_limit", failing.kind().key())
                .containsEntry(
                        "pull_failing_end",
                        outcome.findBetterEnd().orElseThrow().key())
                .containsEntry("pull_warnings", "total_bends;section_length");
        double found = Double.parseDouble(row.get("pull_failing_found_in_unit"));
        double allowed = Double.parseDouble(row.get("pull_failing_allowed_in_unit"));
        assertThat(100 * found / allowed)
                .isCloseTo(Double.parseDouble(row.get("pull_utilization_pct")), within(0.06))
                .isGreaterThan(100);
        assertThat(row).containsEntry("pull_failing_unit", failing.kind().unit());
        assertThat(Double.parseDouble(row.get("pull_failing_at_m"))).isCloseTo(failing.atM(), within(0.0051));
    }

    @Test
    void whereNothingIsToPullTheCellsAreEmpty() throws IOException {
        Map<String, String> row = span(SpanExplanationSample.nothingToPull());

        assertThat(row).containsEntry("pull_outcome", "none").containsEntry("pull_count", "0");
        assertThat(row.entrySet())
                .filteredOn(cell ->
                        cell.getKey().startsWith("pull_") || cell.getKey().startsWith("hold_"))
                .filteredOn(cell ->
                        !List.of("pull_outcome", "pull_count", "pull_choice").contains(cell.getKey()))
                .hasSizeGreaterThan(20)
                .allSatisfy(cell -> assertThat(cell.getValue()).isEmpty());
    }

    /** First the one that moves no cable, then the lighter cable, last the heavier. */
    @Test
    void innerductsAreListedInTheOrderOfPulling() throws IOException {
        write(
                SpanExplanationSample.workedExample().ranked(),
                SpanExplanationSample.failing().ranked());

        List<CSVRecord> rows = csv("pulls.csv");

        assertThat(rows).extracting(row -> row.get("span_id")).containsExactly("S-7", "S-8", "S-8", "S-8");
        assertThat(rows).extracting(row -> row.get("turn")).containsExactly("1", "1", "2", "3");
        assertThat(rows).extracting(row -> row.get("innerduct")).containsExactly("i1", "i2", "i3", "i1");
        assertThat(rows).extracting(row -> row.get("reason")).containsExactly("only_one", "empty", "lightest", "last");
        assertThat(rows).extracting(row -> row.get("cables")).containsExactly("1", "0", "1", "1");
        assertThat(rows.get(0).get("outside_diameter_mm")).isEqualTo("42.16");
        assertThat(rows.get(0).get("wall_mm")).isEqualTo("3.12");
        assertThat(rows.get(0).get("tightest_limit_b")).isEqualTo("innerduct_bend_radius");
        assertThat(rows.get(0).get("utilization_b_pct")).isEqualTo("50.0");
        assertThat(rows.get(1).get("hold_for_a_bad_n")).isEqualTo("0.0");
        assertThat(Double.parseDouble(rows.get(0).get("pull_out_at_b_dry_n")) / LBF_N)
                .isCloseTo(128.83, within(0.02));
        assertThat(Double.parseDouble(rows.get(0).get("hold_for_b_bad_n")) / LBF_N)
                .isCloseTo(25.9, within(0.06));
    }

    /** 0.343 lb/ft of a loaded neighbor are 5.006 N/m; then 0.080 lb/ft of the freed cable are 1.168 N/m. */
    @Test
    void theWeightOfNeighborsIsListed() throws IOException {
        write(SpanExplanationSample.workedExample(
                        SpanExplanationSample.innerduct("i1", 0.5, 0.080),
                        SpanExplanationSample.innerduct("i2", 0.5, 0.080))
                .ranked());

        assertThat(csv("pulls.csv"))
                .extracting(row -> row.get("neighbor_n_per_m"))
                .containsExactly("5.006", "1.168");
    }

    /** An attributes table: registered in gpkg_contents alone (OGC 12-128r18 clause 2.4, number from memory). */
    @Test
    void gdalReadsThePullsAsATableWithoutShapes() {
        write(SpanExplanationSample.failing().ranked());

        String told =
                ExternalTool.named("ogrinfo").run("-so", parent.resolve("run").resolve("spanroom.gpkg"), "pulls");

        assertThat(told).contains("Geometry: None", "Feature Count: 3", "pull_out_at_a_dry_n: Real");
    }

    private Map<String, String> span(SpanExplanation explained) throws IOException {
        write(explained.ranked());
        return csv("spans.csv").get(0).toMap();
    }

    private void write(RankedSpan... rows) {
        ResultWriter.write(
                SampleResults.of(List.of(rows)),
                new OutputSettings(parent.resolve("run"), false, ReferenceSystem.crs84(), 2));
    }

    private List<CSVRecord> csv(String name) throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(parent.resolve("run").resolve(name)))) {
            return parser.getRecords();
        }
    }
}
