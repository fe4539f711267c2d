package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import org.spanroom.model.Counted;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.output.report.PageTexts.Figure;
import org.spanroom.output.report.PageTexts.Program;
import org.spanroom.output.report.PageTexts.Year;
import org.spanroom.output.report.PayloadTable;
import org.spanroom.output.report.ReportProgram;

/** An annual program in words: one sentence and its years. */
final class ReportProgramTexts {
    private final ReportProgram program;
    private final ReportWords words;

    ReportProgramTexts(ReportProgram program, ReportWords words) {
        this.program = program;
        this.words = words;
    }

    Program program() {
        var years = new ArrayList<Year>();
        for (int row : yearRows()) {
            years.add(year(row));
        }
        PayloadTable<?> items = program.items();
        int positions = items.place("positions");
        double gained = 0;
        for (int row = 0; row < items.rows(); row++) {
            double added = items.number(row, positions);
            gained += Double.isNaN(added) ? 0 : added;
        }
        String statement = items.rows() == 0
                ? "The program recovers no span."
                : "The program recovers " + Counted.of(items.rows(), "span") + " in "
                        + Counted.of(program.years().size(), "year") + " and adds "
                        + Counted.of(Math.round(gained), "cable position") + ".";
        return new Program(statement + connectionsWords(), years);
    }

    private String connectionsWords() {
        PayloadTable<?> connections = program.connections();
        long free = 0;
        long served = 0;
        for (int row = 0; row < connections.rows(); row++) {
            boolean isServed = !Double.isNaN(connections.number(row, connections.place("served_year")));
            served += isServed ? 1 : 0;
            free += isServed && isFree(row) ? 1 : 0;
        }
        return connections.rows() == 0
                ? ""
                : " It serves " + served + " of " + Counted.of(connections.rows(), "wanted connection") + ": " + free
                        + " from positions that are free today, " + (served - free) + " by its work.";
    }

    /** Whether a connection runs through free positions alone, which takes no work. */
    private boolean isFree(int row) {
        PayloadTable<?> connections = program.connections();
        return connections.text(row, connections.place("recover_spans")).isEmpty()
                && !(connections.number(row, connections.place("cost_share_money")) > 0);
    }

    /** Returns the big figure of the first year. */
    Figure figure() {
        List<Integer> rows = yearRows();
        if (rows.isEmpty()) {
            return new Figure("in the program", "0 spans", "");
        }
        int first = rows.get(0);
        return new Figure(
                "in year " + whole(first, "year") + " of the program",
                Counted.of(Math.round(number(first, "spans")), "span"),
                Counted.of(Math.round(number(first, "positions")), "position") + " gained for "
                        + words.money(range(first)));
    }

    /** The rows of all spans of a year, without those of groups and of all years. */
    private List<Integer> yearRows() {
        PayloadTable<?> totals = program.totals();
        int column = totals.place("column");
        var rows = new ArrayList<Integer>();
        for (int row = 0; row < totals.rows(); row++) {
            if (totals.text(row, column).isEmpty() && !Double.isNaN(number(row, "year"))) {
                rows.add(row);
            }
        }
        return rows;
    }

    private Year year(int row) {
        double year = number(row, "year");
        return new Year(
                whole(row, "year"),
                whole(row, "spans"),
                whole(row, "positions"),
                Counted.whole(served(year)),
                words.money(range(row)),
                Counted.fixed(number(row, "site_hours"), 0));
    }

    /** How many connections the work of a year makes possible. */
    private long served(double year) {
        PayloadTable<?> connections = program.connections();
        int column = connections.place("served_year");
        long served = 0;
        for (int row = 0; row < connections.rows(); row++) {
            served += connections.number(row, column) == year && !isFree(row) ? 1 : 0;
        }
        return served;
    }

    private MoneyRange range(int row) {
        return new MoneyRange(
                number(row, "cost_low_money"), number(row, "cost_likely_money"), number(row, "cost_high_money"));
    }

    private String whole(int row, String column) {
        double number = number(row, column);
        return Double.isNaN(number) ? "" : Counted.fixed(number, 0);
    }

    private double number(int row, String column) {
        return program.totals().number(row, program.totals().place(column));
    }
}
