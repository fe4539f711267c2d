package org.spanroom.config;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * The field book: what crews reported, as {@code spanroom closeout} keeps it.
 *
 * @param file the CSV file; a config names it relative to itself
 * @param asOf the last day whose entries count, e.g. 2027-03-31; empty for all
 */
public record FieldBookConfig(Optional<Path> file, String asOf) {
    public static final FieldBookConfig NONE = new FieldBookConfig(Optional.empty(), "");

    public FieldBookConfig {
        asOf = asOf.strip();
        if (!asOf.isEmpty() && day(asOf).isEmpty()) {
            throw new IllegalArgumentException("asOf must be a date in the form 2027-03-31, was '" + asOf + "'");
        }
    }

    /** Returns the last day whose entries count; empty where all do. */
    public Optional<LocalDate> findAsOf() {
        return day(asOf);
    }

    FieldBookConfig withFiles(UnaryOperator<Path> other) {
        return new FieldBookConfig(file.map(other), asOf);
    }

    public FieldBookConfig withFile(Path otherFile) {
        return new FieldBookConfig(Optional.of(otherFile), asOf);
    }

    public FieldBookConfig withAsOf(LocalDate day) {
        return new FieldBookConfig(file, day.toString());
    }

    private static Optional<LocalDate> day(String text) {
        try {
            return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException notADay) {
            return Optional.empty();
        }
    }
}
