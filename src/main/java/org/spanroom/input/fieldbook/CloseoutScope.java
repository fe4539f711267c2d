package org.spanroom.input.fieldbook;

import java.time.LocalDate;
import java.util.Map;
import java.util.Set;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.model.fieldwork.FieldBook;

/**
 * What the rows of a close-out file may be about.
 *
 * @param runCode code of the run whose sheets were worked from
 * @param spans of that run, by their ids as the results have them
 * @param vaults ids of the vaults of that run
 * @param book all that is entered already
 * @param firstNumber of the entries to come
 * @param today no fact can be found later
 */
public record CloseoutScope(
        String runCode,
        Map<String, Ends> spans,
        Set<String> vaults,
        FieldBook book,
        int firstNumber,
        LocalDate today,
        PlausibleRanges plausible) {
    public CloseoutScope {
        spans = Map.copyOf(spans);
        vaults = Set.copyOf(vaults);
    }

    /** The ends of a span. */
    public record Ends(String vaultA, String vaultB, double lengthM) {}
}
