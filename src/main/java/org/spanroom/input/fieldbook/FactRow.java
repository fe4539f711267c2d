package org.spanroom.input.fieldbook;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.spanroom.input.layer.Blanks;
import org.spanroom.input.layer.SurplusCells;
import org.spanroom.model.Counted;
import org.spanroom.model.SpreadsheetText;
import org.spanroom.model.fieldwork.RowProblem;

/** One row of a table of facts. */
final class FactRow {
    /** The one column that may hold a text of several lines. */
    private static final String NOTE = "note";

    private static final Set<String> NAMES = Set.of("code", "span", "vault", "item");

    private static final int MOST_NOTE_LINES = 20;

    /** A line of a note with so many separators is a row that an unclosed quote has swallowed. */
    private static final int ROW_SEPARATORS = 5;

    private static final Pattern UNPLAIN = Pattern.compile("[\\p{Cntrl}\\s]{2,}|[\\p{Cntrl}&&[^ ]]");

    private final long lastLine;
    private final List<String> cells;
    private final Map<String, Integer> places;
    private final int width;

    /**
     * @param lastLine the line of the file on which the row ends
     * @param places of our columns that the table has
     * @param width how many columns the table has
     */
    FactRow(long lastLine, List<String> cells, Map<String, Integer> places, int width) {
        this.lastLine = lastLine;
        this.cells = cells;
        this.places = places;
        this.width = width;
    }

    /** Returns the line of the file on which the row begins. */
    long line() {
        return Math.max(1, lastLine - breaks());
    }

    boolean isBlank() {
        return cells.stream().allMatch(String::isBlank);
    }

    /** Returns a cell's text; "" where the cell or the column is missing. Names stay as they are, other texts come in one line. */
    String cell(String column) {
        int place = places.getOrDefault(column, Integer.MAX_VALUE);
        if (place >= cells.size()) {
            return "";
        }
        String cell = cells.get(place);
        return SpreadsheetText.restored(NAMES.contains(column) ? Blanks.strip(cell) : plain(cell));
    }

    /** Line breaks and other control characters become blanks, of which one is as good as several. */
    private static String plain(String text) {
        return UNPLAIN.matcher(text).find() ? Blanks.strip(UNPLAIN.matcher(text).replaceAll(" ")) : Blanks.strip(text);
    }

    /** Of a quote that goes on to the end of the file, the last line break ends the file. */
    private long breaks() {
        long all = cells.stream().mapToLong(FactRow::breaks).sum();
        return cells.get(cells.size() - 1).endsWith("\n") ? all - 1 : all;
    }

    private static long breaks(String text) {
        return text.chars().filter(c -> c == '\n').count();
    }

    /** Says what is wrong with a row that goes on over further lines because a quote is not closed, or that has too many cells. */
    Optional<RowProblem> malformed() {
        int note = places.getOrDefault(NOTE, -1);
        for (int place = 0; place < cells.size(); place++) {
            String cell = cells.get(place);
            boolean mayBreak = place == note && breaks(cell) <= MOST_NOTE_LINES && !holdsRows(cell);
            if (breaks(cell) > 0 && !mayBreak) {
                boolean isOpen = holdsRows(cell) || (place == cells.size() - 1 && cell.endsWith("\n"));
                return Optional.of(isOpen ? openQuote() : lineBreak(place));
            }
        }
        return SurplusCells.problem(cells.size(), width)
                .map(problem -> new RowProblem(line(), "", problem, SurplusCells.REMEDY));
    }

    private RowProblem openQuote() {
        String problem = breaks() == 0
                ? "a quote (\") is not closed"
                : "it and the " + Counted.of(breaks(), "line") + " after it are one row";
        return new RowProblem(line(), "", problem, "Close the quote (\") that begins in line " + line() + ".");
    }

    private RowProblem lineBreak(int place) {
        String column = places.entrySet().stream()
                .filter(entry -> entry.getValue() == place)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse("");
        return new RowProblem(
                line(),
                column,
                "the cell has a line break, which only a note may have",
                "Write it in one line; if it has none, look for a quote (\") that is not closed.");
    }

    private static boolean holdsRows(String cell) {
        return cell.lines()
                .skip(1)
                .anyMatch(line ->
                        line.chars().filter(c -> ",;\t|".indexOf(c) >= 0).count() >= ROW_SEPARATORS);
    }
}
