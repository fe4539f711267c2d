package org.spanroom.output.report;

import java.util.List;
import java.util.Optional;

/**
 * The texts of the page that its template has places for. All of them are plain text; the template escapes them.
 *
 * @param runFolder the results that the page is made of, as the user named them
 * @param madeAt when the run was started
 * @param version of the program that made the run
 * @param statements sentences to be read aloud
 * @param first what to do first
 * @param firstNote what their order and their cost are
 * @param uncertain what is most uncertain, and what to measure first
 * @param program the annual program, where one is given
 */
public record PageTexts(
        String title,
        String runFolder,
        String madeAt,
        String version,
        List<Figure> headline,
        List<String> statements,
        List<Caution> cautions,
        List<First> first,
        String firstNote,
        List<String> uncertain,
        Optional<Program> program,
        List<Entry> record,
        List<Input> inputs,
        List<RateLine> rates,
        List<Assumption> assumptions,
        List<Problem> findings,
        List<String> safety) {
    public PageTexts {
        headline = List.copyOf(headline);
        statements = List.copyOf(statements);
        cautions = List.copyOf(cautions);
        first = List.copyOf(first);
        uncertain = List.copyOf(uncertain);
        record = List.copyOf(record);
        inputs = List.copyOf(inputs);
        rates = List.copyOf(rates);
        assumptions = List.copyOf(assumptions);
        findings = List.copyOf(findings);
        safety = List.copyOf(safety);
    }

    /** A big figure. */
    public record Figure(String label, String value, String note) {}

    /** What a reader must keep in mind; the kind is a key for its looks. */
    public record Caution(String kind, String text) {}

    /**
     * A section to do first.
     *
     * @param where its vaults
     * @param why what speaks for it
     * @param sure how certain that is
     * @param program how many of its spans the annual program takes; empty without one
     * @param row row of its best span
     */
    public record First(
            int order,
            String section,
            String spans,
            String where,
            String why,
            String cost,
            String sure,
            String program,
            int row) {}

    /** The annual program. */
    public record Program(String statement, List<Year> years) {
        public Program {
            years = List.copyOf(years);
        }
    }

    /** One year of it. */
    public record Year(String year, String spans, String positions, String connections, String cost, String hours) {}

    /** One line of the record of the run. */
    public record Entry(String label, String text) {}

    /** A file that the run read. */
    public record Input(
            String role,
            String file,
            String layer,
            String crs,
            String read,
            String used,
            String rejected,
            String sha256) {}

    /**
     * One rate.
     *
     * @param illustrative {@code illustrative} or ""
     */
    public record RateLine(String name, String value, String unit, String source, String illustrative) {}

    /** A value that is used where none is recorded. */
    public record Assumption(String term, String value, String counted) {}

    /** Findings of one kind. */
    public record Problem(String meaning, String severity, String count, String todo) {}
}
