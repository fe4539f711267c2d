package org.spanroom.config;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.spanroom.model.Term;

/**
 * The values that are used where the data has none; each span says which it rests on.
 *
 * @param numbers by term, in the unit that is kept: mm, m, kg/m, or a bare number
 * @param words by term, in our own words
 */
public record AssumedValues(Map<Term, Double> numbers, Map<Term, String> words) {
    /** The terms that must be recorded to count, so that no value may be assumed. */
    public static final Set<Term> NEVER_ASSUMED = Set.of(
            Term.ROUTE,
            Term.DUCT,
            Term.DUCT_BANK,
            Term.YEAR,
            Term.RECORDED_LENGTH,
            Term.VAULT_A,
            Term.VAULT_B,
            Term.HOLE_A,
            Term.HOLE_B,
            Term.SLACK_A,
            Term.SLACK_B,
            Term.CONTINUOUS_AT_A,
            Term.CONTINUOUS_AT_B,
            Term.EMBARGO_UNTIL,
            Term.JOINT_OWNERS,
            Term.BESIDE_ALLOWED,
            Term.POSITIONS_RESERVED,
            Term.SLEEVE_CELLS,
            Term.CELLS_RESERVED,
            Term.VAULT,
            Term.VAULT_ELEVATION,
            Term.CABLE_SLACK,
            Term.VAULT_DEPTH,
            Term.VAULT_LENGTH,
            Term.VAULT_WIDTH,
            Term.VAULT_HEIGHT,
            Term.COVER_SIZE,
            Term.GAS_FOUND,
            Term.JOINT_POWER,
            Term.VAULT_INSPECTED,
            Term.ZONE,
            Term.ZONE_NAME,
            Term.ZONE_FROM,
            Term.ZONE_UNTIL);

    public AssumedValues {
        numbers = sorted(numbers);
        words = sorted(words);
        if (!numbers.containsKey(Term.INSIDE_DIAMETER)) {
            throw new IllegalArgumentException(
                    "inside_diameter needs an assumed value: a duct without a bore cannot be assessed");
        }
    }

    public OptionalDouble findNumber(Term term) {
        Double number = numbers.get(term);
        return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
    }

    public Optional<String> findWord(Term term) {
        return Optional.ofNullable(words.get(term));
    }

    private static <T> Map<Term, T> sorted(Map<Term, T> byTerm) {
        var sorted = new EnumMap<Term, T>(Term.class);
        sorted.putAll(byTerm);
        return Collections.unmodifiableMap(sorted);
    }
}
