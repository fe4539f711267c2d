package org.spanroom.config;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.spanroom.model.CalendarDay;

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
        CalendarDay.demandIfAny("asOf", asOf);
    }

    /** Returns the last day whose entries count; empty where all do. */
    public Optional<LocalDate> findAsOf() {
        return CalendarDay.find(asOf);
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
}
