package org.spanroom.model.fieldwork;

import java.util.Locale;
import java.util.Optional;

/** How far the work on a span is, as reported. The lower-case name is its word in columns. */
public enum WorkStatus {
    PLANNED,
    PERMITTED,
    IN_WORK,
    DONE,
    /** Begun or planned, and given up; the reason is a fact of its own. */
    STOPPED;

    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Finds a status by its word. */
    public static Optional<WorkStatus> find(String word) {
        for (WorkStatus status : values()) {
            if (status.key().equals(word)) {
                return Optional.of(status);
            }
        }
        return Optional.empty();
    }
}
