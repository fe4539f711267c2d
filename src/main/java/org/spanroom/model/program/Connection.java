package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A connection that is asked for, as the table of connections has it.
 *
 * @param line of the table, from 1
 * @param name by which people know it
 * @param from name of a vault
 * @param to name of another
 * @param cables how many go together; 1 or more
 * @param value what serving it is worth, in the currency of the rates
 * @param neededBy the day by which it is needed
 * @param must whether it is served whatever it costs
 * @param problem why the row cannot be used, in one phrase
 */
public record Connection(
        long line,
        String name,
        String from,
        String to,
        int cables,
        OptionalDouble value,
        Optional<LocalDate> neededBy,
        boolean must,
        Optional<String> problem) {
    /** Returns the same row, which cannot be used for a reason that the network shows. */
    public Connection withProblem(String reason) {
        return new Connection(line, name, from, to, cables, value, neededBy, must, Optional.of(reason));
    }
}
