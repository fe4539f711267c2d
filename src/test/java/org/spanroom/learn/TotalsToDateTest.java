package org.spanroom.learn;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.learn.Reported;
import org.spanroom.model.learn.TotalsRow;

/** Sums by year: done spans only, and what was not reported is counted, not guessed. */
class TotalsToDateTest {
    private static final PlannedFigures FIGURES = new PlannedFigures() {
        @Override
        public OptionalDouble find(String spanId, FieldFact fact, String item) {
            return fact == FieldFact.COST ? OptionalDouble.of(8000) : OptionalDouble.empty();
        }

        @Override
        public Optional<PlannedWork> work(String spanId) {
            return spanId.equals("elsewhere")
                    ? Optional.empty()
                    : Optional.of(new PlannedWork(
                            "section of " + spanId.charAt(0), 100, 3, 6, 8000, 90, spanId.length(), 400, 250, 0.8));
        }
    };

    private static void assertReported(double sum, int missing, Reported reported) {
        assertEquals(sum, reported.sumInUnit().orElseThrow(), 1e-9);
        assertEquals(missing, reported.missing());
    }

    @Test
    void yearsAndAllTogether() {
        var work = new ReportedWork()
                .done("A")
                .number("A", FieldFact.INNERDUCT_MASS, "", FactUnit.LB, FactUnit.LB.of(300))
                .number("A", FieldFact.RECYCLED_MASS, "", FactUnit.KG, 200)
                .number("A", FieldFact.SLEEVE_CELLS, "S1", FactUnit.NONE, 3)
                .number("A", FieldFact.SLEEVE_CELLS, "S2", FactUnit.NONE, 3)
                .number("A", FieldFact.COST, "", FactUnit.MONEY, 9000)
                .hours("A", "pulling", 2, 3)
                .hours("A", "sealing", 0.5, 0.25)
                .done("elsewhere")
                .word("C", FieldFact.STATUS, "", "in_work")
                .number("C", FieldFact.BAGS, "", FactUnit.NONE, 7)
                .on(LocalDate.of(2028, 1, 5))
                .done("B")
                .number("B", FieldFact.BAGS, "", FactUnit.NONE, 0);
        List<TotalsRow> rows = TotalsToDate.of(work.book(), FIGURES);

        assertEquals(
                List.of("2027", "2028", "all"),
                rows.stream().map(TotalsRow::year).toList());
        TotalsRow first = rows.get(0);
        assertEquals(2, first.spans());
        assertReported(100, 1, first.lengthM());
        assertReported(3, 1, first.positionsPlanned());
        assertReported(6, 1, first.cellsPlaced());
        assertReported(300, 1, first.innerductKg());
        assertReported(160, 1, first.co2eWarmKg());
        assertReported(3.25, 1, first.hours());
        assertReported(2.5, 1, first.hoursPlanned());
        assertReported(9000, 1, first.costMoney());
        assertReported(8000, 1, first.costPlannedMoney());
        assertEquals(new Reported(OptionalDouble.empty(), 2), first.bags());
        assertReported(0, 2, rows.get(2).bags());
        assertEquals(3, rows.get(2).spans());
        assertReported(200, 1, rows.get(2).lengthM());
    }

    /** Two ducts of one section lie in one trench: of "B1" and "B22" the longer way counts, and no bore of the other. */
    @Test
    void spansOfASectionShareTheirTrench() {
        var work = new ReportedWork().done("A").done("B1").done("B22").done("elsewhere");

        TotalsRow all = TotalsToDate.of(work.book(), FIGURES).get(1);

        assertReported(2 * 90, 1, all.trenchAvoidedM());
        assertReported(1 + 3, 1, all.boreAvoidedM());
        assertReported(3 * (400 - 250) + 2 * 250, 1, all.co2eIceKg());
    }

    @Test
    void nothingDoneHasNoRows() {
        assertEquals(
                List.of(),
                TotalsToDate.of(
                        new ReportedWork()
                                .word("A", FieldFact.STATUS, "", "planned")
                                .book(),
                        FIGURES));
    }
}
