package org.spanroom.model.program;

/**
 * The work of a year, of all spans or of those with one value in a column.
 *
 * @param year number of the year, from 0; -1 for all years
 * @param column name of the column; empty for all spans
 * @param group the value in it
 * @param spans how many spans are recovered
 * @param positions positions that they add
 * @param expectedPositions the same, each span weighted by the chance that its recovery works
 * @param costs what they and new ducts cost; new ducts only in the rows of all spans
 * @param siteHours hours on site, set-ups shared as in the calendar
 * @param innerductKg mass of the innerduct that comes out
 * @param co2eKg emissions of new-build materials avoided, surface and encasement once for all spans of a section
 * @param trenchM open trench avoided, one for all spans of a section
 * @param boreM boring avoided, the same way
 */
public record ProgramTotals(
        int year,
        String column,
        String group,
        int spans,
        int positions,
        double expectedPositions,
        Costs costs,
        double siteHours,
        double innerductKg,
        double co2eKg,
        double trenchM,
        double boreM) {}
