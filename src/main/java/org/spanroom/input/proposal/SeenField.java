package org.spanroom.input.proposal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.Unit;

/** What the features looked at have in one field. */
final class SeenField {
    private static final int MOST_SAMPLES = 3;
    private static final int LONGEST_SAMPLE = 24;
    private static final double MOSTLY_SHARE = 0.8;
    private static final double NUMERIC_SHARE = 0.5;
    private static final double LONGEST_ID = 64;

    private final FieldName name;
    private final Map<String, Integer> counts = new LinkedHashMap<>();
    private final List<Double> numbers = new ArrayList<>();
    private final Map<Unit, Integer> writtenUnits = new EnumMap<>(Unit.class);
    private int filled;
    private int decimals;

    SeenField(FieldName name) {
        this.name = name;
    }

    FieldName name() {
        return name;
    }

    /** Notes a next value, and returns it as the text that the program compares; "" where there is none. */
    String add(@Nullable Object value, Predicate<String> saysMissing) {
        String text = value == null ? "" : SourceNumber.text(value);
        if (text.isEmpty() || saysMissing.test(text)) {
            return "";
        }
        filled++;
        counts.merge(text, 1, Integer::sum);
        SourceNumber.parse(text).ifPresent(number -> {
            numbers.add(number.inUnit());
            decimals += number.inUnit() == Math.rint(number.inUnit()) ? 0 : 1;
            number.unit().ifPresent(unit -> writtenUnits.merge(unit, 1, Integer::sum));
        });
        return text;
    }

    int filled() {
        return filled;
    }

    boolean isEmpty() {
        return filled == 0;
    }

    /** Returns the first values that differ, shortened. */
    List<String> samples() {
        return counts.keySet().stream()
                .limit(MOST_SAMPLES)
                .map(text -> text.replaceAll("[\\s\\p{Cntrl}\\u0085\\u2028\\u2029]+", " "))
                .map(text -> text.length() > LONGEST_SAMPLE ? text.substring(0, LONGEST_SAMPLE) + "..." : text)
                .toList();
    }

    Set<String> texts() {
        return Collections.unmodifiableSet(counts.keySet());
    }

    /** Returns whether at least half of the values are numbers. */
    boolean isNumeric() {
        return filled > 0 && numbers.size() >= NUMERIC_SHARE * filled;
    }

    /** Returns whether nearly all values are whole numbers, as codes and ids are. */
    boolean isWhole() {
        return filled > 0 && numbers.size() - decimals >= MOSTLY_SHARE * filled;
    }

    boolean hasDecimals() {
        return filled > 0 && decimals > (1 - MOSTLY_SHARE) / 2 * filled;
    }

    /** Returns whether the values may name things: no decimals, no long texts. */
    boolean mayNameThings() {
        return filled > 0
                && !hasDecimals()
                && counts.keySet().stream().mapToInt(String::length).average().orElse(0) <= LONGEST_ID;
    }

    boolean isUnique() {
        return filled > 0 && counts.size() == filled;
    }

    double distinctShare() {
        return filled == 0 ? 0 : (double) counts.size() / filled;
    }

    /** Returns the numbers above 0; what means no size, as -1 and 0, is left out. */
    double[] sizes() {
        return numbers.stream()
                .mapToDouble(Double::doubleValue)
                .filter(number -> number > 0)
                .sorted()
                .toArray();
    }

    Optional<Double> medianSize() {
        double[] sizes = sizes();
        return sizes.length == 0 ? Optional.empty() : Optional.of(sizes[sizes.length / 2]);
    }

    /** Returns the unit in the name, else the one after nearly every number. */
    Optional<Unit> unit() {
        return name.unit()
                .or(() -> writtenUnits.entrySet().stream()
                        .filter(entry -> entry.getValue() >= MOSTLY_SHARE * filled)
                        .map(Map.Entry::getKey)
                        .findFirst());
    }

    /** Returns the share of the numbers that pass a test. */
    double numberShare(Predicate<Double> test) {
        return numbers.isEmpty() ? 0 : (double) numbers.stream().filter(test).count() / numbers.size();
    }

    /** Returns the share of the values whose text passes a test. */
    double textShare(Predicate<String> test) {
        long passed = counts.entrySet().stream()
                .filter(entry -> test.test(entry.getKey()))
                .mapToLong(Map.Entry::getValue)
                .sum();
        return filled == 0 ? 0 : (double) passed / filled;
    }

    /** Returns the share of positive numbers that pass a test. */
    double sizeShare(Predicate<Double> test) {
        double[] sizes = sizes();
        return sizes.length == 0
                ? 0
                : (double) Arrays.stream(sizes).filter(test::test).count() / sizes.length;
    }
}
