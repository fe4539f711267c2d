package org.spanroom.model.fieldwork;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class FieldBookTest {
    private static final LocalDate MONDAY = LocalDate.of(2027, 3, 1);

    private static FieldEntry status(int number, WorkStatus status, LocalDate day, int supersedes) {
        return new FieldEntry(
                number,
                FieldFact.STATUS,
                "D1:V1:V2",
                "",
                FactValue.ofText(status.key()),
                Optional.empty(),
                "crew 1",
                day,
                supersedes > 0 ? OptionalInt.of(supersedes) : OptionalInt.empty(),
                "00c0ffee",
                "");
    }

    @Test
    void theLatestDayCountsWhateverTheOrderOfEntering() {
        var book = new FieldBook(
                List.of(status(1, WorkStatus.DONE, MONDAY.plusDays(9), 0), status(2, WorkStatus.PLANNED, MONDAY, 0)));
        assertEquals(Optional.of(WorkStatus.DONE), book.statusOf("D1:V1:V2"));
    }

    @Test
    void ofOneDayTheLastEnteredCounts() {
        var book = new FieldBook(
                List.of(status(2, WorkStatus.STOPPED, MONDAY, 0), status(1, WorkStatus.IN_WORK, MONDAY, 0)));
        assertEquals(Optional.of(WorkStatus.STOPPED), book.statusOf("D1:V1:V2"));
    }

    @Test
    void aCorrectedEntryDoesNotCountButIsKept() {
        var book = new FieldBook(
                List.of(status(1, WorkStatus.DONE, MONDAY.plusDays(3), 0), status(2, WorkStatus.IN_WORK, MONDAY, 1)));
        assertEquals(Optional.of(WorkStatus.IN_WORK), book.statusOf("D1:V1:V2"));
        assertEquals(2, book.all().size());
        assertEquals(1, book.ofSpan("D1:V1:V2").size());
    }

    @Test
    void aDayBeforeACorrectionShowsWhatWasBelievedThen() {
        var book = new FieldBook(
                List.of(status(1, WorkStatus.DONE, MONDAY, 0), status(2, WorkStatus.STOPPED, MONDAY.plusDays(5), 1)));
        assertEquals(Optional.of(WorkStatus.DONE), book.asOf(MONDAY.plusDays(4)).statusOf("D1:V1:V2"));
        assertEquals(
                Optional.of(WorkStatus.STOPPED), book.asOf(MONDAY.plusDays(5)).statusOf("D1:V1:V2"));
        assertTrue(book.asOf(MONDAY.minusDays(1)).isEmpty());
    }

    @Test
    void codesOfPagesAreReadBack() {
        var code = new SheetCode("00c0ffee", "B|2: V1 V2", "D%1:V1:V2", 3);
        assertEquals(Optional.of(code), SheetCode.parse(code.text()));
        assertEquals(Optional.empty(), SheetCode.parse("SR1|run|section|span|0"));
        assertEquals(Optional.empty(), SheetCode.parse("https://example.org"));
    }

    @Test
    void unitsConvertByTheirDefinitions() {
        // NIST SP 811, Appendix B: pound-force 4.4482216152605 N, foot 0.3048 m, US gallon 3.785411784 L.
        assertEquals(4.4482216152605, FactUnit.LBF.kept(1));
        assertEquals(182.88, FactUnit.FT.kept(600), 1e-12);
        assertEquals(3.785411784, FactUnit.GAL.kept(1));
        for (FactKind kind : FactKind.values()) {
            assertEquals(1, kind.units().get(0).kept(1), kind + " keeps its first unit");
        }
    }
}
