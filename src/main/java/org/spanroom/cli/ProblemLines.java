package org.spanroom.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.RowProblem;

/** What is wrong with rows, a line for each kind of problem: rows with the same problem are counted, and the first of them named. */
final class ProblemLines {
    private static final int MOST_ROWS_NAMED = 5;

    /** What differs between rows of one kind: quoted texts, and numbers and dates. */
    private static final Pattern VALUE = Pattern.compile("'[^']*'|[0-9][0-9.,:-]*");

    private ProblemLines() {}

    /** Rows of one kind have the column, the remedy, and the problem but for its values in common. */
    private record Kind(String column, String problem, String remedy) {
        static Kind of(RowProblem one) {
            return new Kind(one.column(), VALUE.matcher(one.problem()).replaceAll("#"), one.remedy());
        }
    }

    /** Returns a line for each kind, in the order of their first rows. */
    static List<String> of(List<RowProblem> problems) {
        Map<Kind, List<RowProblem>> kinds = new LinkedHashMap<>();
        problems.forEach(one ->
                kinds.computeIfAbsent(Kind.of(one), none -> new ArrayList<>()).add(one));
        return kinds.values().stream().map(ProblemLines::words).toList();
    }

    private static String words(List<RowProblem> same) {
        RowProblem first = same.get(0);
        if (same.size() == 1) {
            return first.words();
        }
        String named = same.stream()
                .limit(MOST_ROWS_NAMED)
                .map(one -> Long.toString(one.line()))
                .collect(Collectors.joining(", "));
        int rest = same.size() - MOST_ROWS_NAMED;
        boolean equal = same.stream().map(RowProblem::problem).distinct().count() == 1;
        return Counted.of(same.size(), "row") + " (lines " + named
                + (rest > 0 ? " and " + Counted.whole(rest) + " more" : "") + ")"
                + (first.column().isEmpty() ? "" : ", " + first.column()) + ": " + first.problem()
                + (equal ? "" : "; the other rows are similar") + ". " + first.remedy();
    }
}
