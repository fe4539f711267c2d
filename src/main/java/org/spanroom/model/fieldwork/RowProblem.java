package org.spanroom.model.fieldwork;

/**
 * What is wrong with a row of a close-out file or of the field book.
 *
 * @param line of the file, from 1; where a row goes over several lines, the first
 * @param column that is wrong, or empty where the whole row is
 * @param problem what was found, and what was expected
 * @param remedy what to do about it, as a sentence
 */
public record RowProblem(long line, String column, String problem, String remedy) {
    /** Returns all of it in one line, for people. */
    public String words() {
        return "line " + line + (column.isEmpty() ? "" : ", " + column) + ": " + problem + ". " + remedy;
    }
}
