package org.spanroom.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.spanroom.model.fieldwork.RowProblem;

class ProblemLinesTest {
    private static RowProblem dated(long line, String day) {
        return new RowProblem(line, "date", day + " is in the future", "Write the day on which it was found.");
    }

    @Test
    void rowsOfOneKindAreOneLineWithTheirCount() {
        List<RowProblem> all = LongStream.rangeClosed(2, 549)
                .mapToObj(line -> dated(line, "2027-01-" + (10 + line % 20)))
                .toList();

        assertEquals(
                List.of(
                        "548 rows (lines 2, 3, 4, 5, 6 and 543 more), date: 2027-01-12 is in the future; the other rows are similar."
                                + " Write the day on which it was found."),
                ProblemLines.of(all));
    }

    @Test
    void otherKindsKeepLinesOfTheirOwnInTheOrderOfTheirFirstRows() {
        var all = new ArrayList<RowProblem>();
        all.add(new RowProblem(2, "span", "the run has no span 'A'", "Is it the right run?"));
        all.add(dated(2, "2027-01-18"));
        all.add(new RowProblem(4, "by", "no name is given", "Write who found it."));
        all.add(dated(5, "2027-01-18"));
        all.add(new RowProblem(6, "", "no name is given", "Write who found it."));
        all.add(new RowProblem(7, "span", "the run has no span 'B'", "Is it the right run?"));

        assertEquals(
                List.of(
                        "2 rows (lines 2, 7), span: the run has no span 'A'; the other rows are similar. Is it the right run?",
                        "2 rows (lines 2, 5), date: 2027-01-18 is in the future. Write the day on which it was found.",
                        "line 4, by: no name is given. Write who found it.",
                        "line 6: no name is given. Write who found it."),
                ProblemLines.of(all));
    }
}
