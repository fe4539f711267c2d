package org.spanroom.model.program;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a program does for a connection.
 *
 * @param connection the connection
 * @param way its way, with what it uses in each section; empty where it is not served
 * @param year number of the year in which it is served first, from 0; empty where it is not served
 * @param servedOn the first day on which all of its way is there; new ducts are there by the day it is needed, where their permits can be, or else on the last day of their year
 * @param whyNot why it is not served, in one phrase; empty where it is
 * @param takes what it would take to serve it by the day it is needed, in one phrase; empty where that was not calculated
 */
public record ProgramConnection(
        Connection connection,
        List<ConnectionStep> way,
        OptionalInt year,
        Optional<LocalDate> servedOn,
        String whyNot,
        String takes) {
    public ProgramConnection {
        way = List.copyOf(way);
    }

    public boolean isServed() {
        return year.isPresent();
    }
}
