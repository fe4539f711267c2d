package org.spanroom.input.fields;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.config.AssumedValues;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;
import org.spanroom.model.network.BoreShape;

/** The rule of what counts for a term, by itself: recorded, else the catalog's, else the default; and what is a finding. */
class TermValuesTest {
    private static final AssumedValues DEFAULTS = ShippedConfig.get().assumed();

    /** Values of a map, in inches where they are sizes. */
    private static final class Fake extends TermValues {
        private final Map<Term, Object> recorded = new EnumMap<>(Term.class);
        private final List<String> findings = new ArrayList<>();
        private final List<Term> mapped = List.of(
                Term.INSIDE_DIAMETER, Term.CABLE_OUTSIDE_DIAMETER, Term.INNERDUCT_COUNT, Term.BORE_SHAPE, Term.FLOODED);

        Fake() {
            super(ShippedConfig.get());
        }

        @Override
        Optional<LayerFields.Column> find(Term term) {
            Optional<Unit> unit = term.kind() == Term.Kind.DIAMETER ? Optional.of(Unit.IN) : Optional.empty();
            return mapped.contains(term)
                    ? Optional.of(new LayerFields.Column(mapped.indexOf(term), "F", unit))
                    : Optional.empty();
        }

        @Override
        @Nullable
        Object value(LayerFields.Column column) {
            return recorded.get(mapped.get(column.index()));
        }

        @Override
        public void add(FindingCode code, String field, Supplier<String> detail) {
            findings.add(code + " " + field + ": " + detail.get());
        }
    }

    private final Fake values = new Fake();

    /** A catalog row offers 100 mm; the default is 4 in, 101.6 mm; 20 to 500 mm is plausible. */
    @ParameterizedTest(name = "recorded {0}, row {1}: {2} mm")
    @CsvSource(
            nullValues = "-",
            delimiter = '|',
            value = {
                // recorded | the row is named by | value | assumed | rows taken | finding
                "4      | -       | 101.6 | false | 0 | -",
                "100 mm | data    | 100   | false | 0 | -",
                "3.9    | data    | 99.06 | false | 0 | -",
                "4.1    | data    | 104.14| false | 0 | CATALOG_DISAGREES F: inside_diameter is recorded as 104.14 mm,"
                        + " the catalog's 'row' has 100 mm",
                "4.1    | default | 104.14| false | 0 | -",
                "-      | data    | 100   | false | 1 | -",
                "n/a    | data    | 100   | false | 1 | -",
                "-      | default | 100   | true  | 1 | MISSING_VALUE F: no inside_diameter is recorded; assumed the"
                        + " catalog's 'row'",
                "-      | -       | 101.6 | true  | 0 | MISSING_VALUE F: no inside_diameter is recorded; assumed 101.6 mm",
                "four   | -       | 101.6 | true  | 0 | UNUSABLE_VALUE F: 'four' is not a valid number for inside_diameter",
                "4 kg/m | -       | 101.6 | true  | 0 | UNUSABLE_VALUE F: '4 kg/m' is not a valid number for inside_diameter",
                "100    | -       | 101.6 | true  | 0 | IMPLAUSIBLE_VALUE F: 100 in is outside the plausible range of"
                        + " inside_diameter (20 to 500 mm); it would be plausible in mm; assumed 101.6 mm",
                "100    | data    | 100   | false | 1 | IMPLAUSIBLE_VALUE F: 100 in is outside the plausible range of"
                        + " inside_diameter (20 to 500 mm); it would be plausible in mm; taken from the catalog's 'row'",
            })
    void theFirstUsableNumberCounts(
            @Nullable String recorded,
            @Nullable String row,
            double expectedMm,
            boolean assumed,
            int rows,
            @Nullable String finding) {
        record(Term.INSIDE_DIAMETER, recorded);
        if (row != null) {
            values.offers().offer(Term.INSIDE_DIAMETER, "row", 100, row.equals("default"));
        }

        assertThat(values.numberOrAssumed(Term.INSIDE_DIAMETER)).isCloseTo(expectedMm, within(1e-9));
        assertThat(values.assumed().contains(Term.INSIDE_DIAMETER)).isEqualTo(assumed);
        assertThat(values.offers().use().rows()).hasSize(rows);
        assertThat(values.offers().use().terms()).hasSize(rows == 1 && !assumed ? 1 : 0);
        assertFinding(finding);
    }

    /** A catalog row offers a square bore; the default is a round one. */
    @ParameterizedTest(name = "recorded {0}, row {1}: {2}")
    @CsvSource(
            nullValues = "-",
            delimiter = '|',
            value = {
                "round  | -       | ROUND  | false | -",
                "square | data    | SQUARE | false | -",
                "round  | data    | ROUND  | false | CATALOG_DISAGREES F: the bore is recorded as round, the catalog's"
                        + " 'row' is square",
                "round  | default | ROUND  | false | -",
                "-      | data    | SQUARE | false | -",
                "-      | default | SQUARE | true  | MISSING_VALUE F: no bore_shape is recorded; assumed the catalog's"
                        + " 'row'",
                "-      | -       | ROUND  | true  | MISSING_VALUE F: no bore_shape is recorded; assumed round",
                "oval   | data    | SQUARE | false | UNUSABLE_VALUE F: 'oval' is not in any word list for bore_shape",
                "oval   | -       | ROUND  | true  | UNUSABLE_VALUE F: 'oval' is not in any word list for bore_shape",
            })
    void theFirstUsableWordCounts(
            @Nullable String recorded,
            @Nullable String row,
            BoreShape expected,
            boolean assumed,
            @Nullable String finding) {
        record(Term.BORE_SHAPE, recorded);
        if (row != null) {
            values.offers().offerShape("row", BoreShape.SQUARE, row.equals("default"));
        }

        assertThat(values.meaning(Term.BORE_SHAPE, values.words().shape(), WordMeanings.OUR_SHAPE, BoreShape.ROUND))
                .isEqualTo(expected);
        assertThat(values.assumed().contains(Term.BORE_SHAPE)).isEqualTo(assumed);
        assertFinding(finding);
    }

    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "3, 3, -",
                "2.5, NaN, UNUSABLE_VALUE F: 2.5 is not a valid value for innerduct_count",
                "41, NaN, IMPLAUSIBLE_VALUE F: 41 is outside the plausible range of innerduct_count (0 to 40)",
                "-, NaN, MISSING_VALUE F: no innerduct_count is recorded",
            })
    void aCountIsWholeAndNeverGuessed(@Nullable Double recorded, double expected, @Nullable String finding) {
        record(Term.INNERDUCT_COUNT, recorded);

        assertThat(values.numberOrAssumed(Term.INNERDUCT_COUNT)).isEqualTo(Double.valueOf(expected));
        assertThat(values.assumed()).isEmpty();
        assertFinding(finding);
    }

    @Test
    void whatStandsNowhereIsAssumedWithoutAFinding() {
        assertThat(values.numberOrAssumed(Term.CABLE_MASS))
                .isEqualTo(DEFAULTS.findNumber(Term.CABLE_MASS).orElseThrow());
        assertThat(values.assumed()).containsExactly(Term.CABLE_MASS);
        assertFinding(null);
    }

    @Test
    void aWordForUnknownIsMissingRatherThanWrong() {
        record(Term.FLOODED, "unknown");

        assertThat(values.meaning(Term.FLOODED, values.words().flooded(), WordMeanings.OUR_FLOODED, true))
                .isFalse();
        assertFinding("MISSING_VALUE F: no flooded is recorded; assumed no");
    }

    @Test
    void clearingForgetsOffersAndWhatWasAssumed() {
        values.offers().offer(Term.INSIDE_DIAMETER, "row", 100, true);
        values.numberOrAssumed(Term.INSIDE_DIAMETER);

        values.clear();

        assertThat(values.assumed()).isEmpty();
        assertThat(values.offers().use().rows()).isEmpty();
        assertThat(values.numberOrOffered(Term.INSIDE_DIAMETER)).isNaN();
    }

    private void record(Term term, @Nullable Object value) {
        if (value != null) {
            values.recorded.put(term, value);
        }
    }

    private void assertFinding(@Nullable String finding) {
        assertThat(values.findings).isEqualTo(finding == null ? List.of() : List.of(finding));
    }

    /** Whatever is wrong with a recorded value, it was recorded: the value and the reason stay with the feature. */
    @ParameterizedTest(name = "{0} {1}")
    @CsvSource({
        "INSIDE_DIAMETER, 4000, 4000 in",
        "INSIDE_DIAMETER, about four, about four",
        "INNERDUCT_COUNT, 99, 99",
        "INNERDUCT_COUNT, 2.5, 2.5",
        "BORE_SHAPE, hexagonal, hexagonal",
        "FLOODED, perhaps, perhaps"
    })
    void aValueThatCannotBeUsedIsKeptAsRejected(Term term, String recorded, String shown) {
        values.recorded.put(term, recorded);

        read(term);

        assertThat(values.rejected()).singleElement().satisfies(value -> {
            assertThat(value.name()).isEqualTo(term.key());
            assertThat(value.recorded()).isEqualTo(shown);
            assertThat(value.why()).isNotBlank();
        });
        values.clear();
        assertThat(values.rejected()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"INSIDE_DIAMETER, 4", "INNERDUCT_COUNT, 3", "BORE_SHAPE, square", "FLOODED, yes", "FLOODED, n/a"})
    void whatCanBeUsedOrIsMissingIsNotRejected(Term term, String recorded) {
        values.recorded.put(term, recorded);

        read(term);

        assertThat(values.rejected()).isEmpty();
    }

    private void read(Term term) {
        switch (term) {
            case BORE_SHAPE -> values.meaning(term, values.words().shape(), WordMeanings.OUR_SHAPE, BoreShape.ROUND);
            case FLOODED -> values.meaning(term, values.words().flooded(), WordMeanings.OUR_FLOODED, false);
            default -> values.number(term);
        }
    }
}
