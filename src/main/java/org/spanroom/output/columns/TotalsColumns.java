package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.spanroom.model.learn.Reported;
import org.spanroom.model.learn.TotalsRow;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of what was done to date. Each sum is followed by the number of spans that it does not have. */
public final class TotalsColumns {
    private static final String OF_RUN = "How many of the spans the run does not have.";
    private static final String NOT_REPORTED = "How many of the spans did not report it.";

    public static final Table<TotalsRow> TABLE = Table.plain(
            "totals_to_date",
            "One row for each year in which spans were reported as done, and one for all years. What was not reported is counted, not guessed.",
            columns());

    private TotalsColumns() {}

    private static List<Column<TotalsRow>> columns() {
        var all = new ArrayList<Column<TotalsRow>>();
        all.add(Column.text(
                "year",
                "year",
                "Year of the day on which the status done was reported; all: all years.",
                TotalsRow::year));
        all.add(Column.integer("spans", "spans", "How many spans are done.", TotalsRow::spans));
        real(all, "length_m", 1, "Their length, as the run has it.", TotalsRow::lengthM, OF_RUN);
        count(all, "positions_planned", "Positions that the run has them gain.", TotalsRow::positionsPlanned, OF_RUN);
        count(all, "cells_placed", "Cells of the sleeves that were placed.", TotalsRow::cellsPlaced, NOT_REPORTED);
        real(
                all,
                "innerduct_out_kg",
                1,
                "Innerduct that was weighed as it came out.",
                TotalsRow::innerductKg,
                NOT_REPORTED);
        real(all, "recycled_kg", 1, "Of it, what a recycler took.", TotalsRow::recycledKg, NOT_REPORTED);
        count(all, "bags", "Bags of it.", TotalsRow::bags, NOT_REPORTED);
        count(all, "loads", "Truckloads of it.", TotalsRow::loads, NOT_REPORTED);
        real(
                all,
                "trench_avoided_m",
                1,
                "Trench of the new build that was avoided, as the run has it; one trench serves all spans of a section in this row.",
                TotalsRow::trenchAvoidedM,
                OF_RUN);
        real(all, "bore_avoided_m", 1, "Bored length of the new build, the same way.", TotalsRow::boreAvoidedM, OF_RUN);
        real(
                all,
                "co2e_ice_kg",
                1,
                "Emissions of its materials less those of the sleeves, by ICE, as the run has it; surface and encasement once for all spans of a section in this row. Not to be added to those by WARM.",
                TotalsRow::co2eIceKg,
                OF_RUN);
        addWork(all);
        return all;
    }

    private static void addWork(List<Column<TotalsRow>> all) {
        real(
                all,
                "co2e_warm_kg",
                1,
                "Emissions avoided by what was recycled, by EPA WARM.",
                TotalsRow::co2eWarmKg,
                NOT_REPORTED);
        real(all, "cost_money", 2, "What the spans cost that report their cost.", TotalsRow::costMoney, NOT_REPORTED);
        real(
                all,
                "cost_planned_money",
                2,
                "What was planned for the same spans.",
                TotalsRow::costPlannedMoney,
                NOT_REPORTED);
        real(all, "site_hours", 2, "Hours of the steps that are reported.", TotalsRow::hours, NOT_REPORTED);
        real(
                all,
                "site_planned_hours",
                2,
                "What was planned for the same steps.",
                TotalsRow::hoursPlanned,
                NOT_REPORTED);
    }

    private static void real(
            List<Column<TotalsRow>> all,
            String name,
            int decimals,
            String meaning,
            Function<TotalsRow, Reported> sum,
            String without) {
        all.add(Column.real(
                name, shortName(all), decimals, meaning, row -> sum.apply(row).sumInUnit()));
        missing(all, name, sum, without);
    }

    private static void count(
            List<Column<TotalsRow>> all,
            String name,
            String meaning,
            Function<TotalsRow, Reported> sum,
            String without) {
        all.add(Column.integer(name, shortName(all), meaning, row -> {
            var found = sum.apply(row).sumInUnit();
            return found.isPresent() ? (Object) Math.round(found.getAsDouble()) : found;
        }));
        missing(all, name, sum, without);
    }

    private static void missing(
            List<Column<TotalsRow>> all, String name, Function<TotalsRow, Reported> sum, String without) {
        all.add(Column.integer(
                name + "_missing",
                shortName(all),
                without,
                row -> sum.apply(row).missing()));
    }

    /** No Shapefile holds this table; a name must be there all the same. */
    private static String shortName(List<Column<TotalsRow>> all) {
        return "total" + all.size();
    }
}
