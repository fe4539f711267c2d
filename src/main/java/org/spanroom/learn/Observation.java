package org.spanroom.learn;

import java.time.LocalDate;

/**
 * One span's ratio of actual to planned.
 *
 * @param entry number of the report
 * @param day of it
 */
record Observation(String spanId, int entry, LocalDate day, double doneRatio) {}
