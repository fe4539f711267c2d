package org.spanroom.program;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;
import org.spanroom.model.Quantile;
import org.spanroom.model.effort.AvoidedDig;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.ProgramDucts;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ProgramTotals;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.YearSpread;

/** Totals of a program, and how certain they are. */
final class ProgramSums {
    /** In place of the number of a year: all of them. */
    static final int ALL_YEARS = -1;

    private ProgramSums() {}

    /** Returns the totals of each year and of all years: of all spans, then of each value in each column. */
    static List<ProgramTotals> totals(int years, List<ProgramItem> items, List<ProgramDucts> ducts) {
        var totals = new ArrayList<ProgramTotals>();
        for (int year = 0; year < years; year++) {
            int number = year;
            addTotals(
                    number,
                    items.stream().filter(item -> item.year() == number).toList(),
                    ducts.stream().filter(built -> built.year() == number).toList(),
                    totals);
        }
        addTotals(ALL_YEARS, items, ducts, totals);
        return totals;
    }

    private static void addTotals(
            int year, List<ProgramItem> items, List<ProgramDucts> ducts, List<ProgramTotals> totals) {
        Costs built = ducts.stream().map(ProgramDucts::costs).reduce(Costs.NONE, Costs::plus);
        totals.add(sum(year, "", "", items, built));
        var columns = new TreeSet<String>();
        items.forEach(item -> columns.addAll(item.span().facts().groups().keySet()));
        for (String column : columns) {
            var byGroup = new TreeMap<String, List<ProgramItem>>();
            for (ProgramItem item : items) {
                String group = item.span().facts().groups().getOrDefault(column, "");
                byGroup.computeIfAbsent(group, none -> new ArrayList<>()).add(item);
            }
            byGroup.forEach((group, of) -> totals.add(sum(year, column, group, of, Costs.NONE)));
        }
    }

    private static ProgramTotals sum(int year, String column, String group, List<ProgramItem> items, Costs built) {
        int positions = 0;
        double expected = 0;
        double hours = 0;
        double innerductKg = 0;
        var dig = new AvoidedDig();
        Costs costs = built;
        for (ProgramItem item : items) {
            SpanFacts facts = item.span().facts();
            positions += facts.positionsGained();
            expected += facts.positionsGained() * item.chanceRatio().orElse(1);
            hours += item.entry().siteHours();
            innerductKg += facts.innerductKg();
            dig.add(item.sectionId(), facts.trenchAvoidedM(), facts.boreAvoidedM(), facts.co2eKg(), facts.co2eDigKg());
            costs = costs.plus(item.costs());
        }
        return new ProgramTotals(
                year,
                column,
                group,
                items.size(),
                positions,
                expected,
                costs,
                hours,
                innerductKg,
                dig.co2eKg(),
                dig.trenchM(),
                dig.boreM());
    }

    /** Returns how many positions each year adds over the draws; nothing where no draws were made. */
    static List<YearSpread> spreads(int years, int samples, List<ProgramItem> items) {
        var spreads = new ArrayList<YearSpread>();
        for (int year = 0; year < years && samples > 0; year++) {
            double[] positions = new double[samples];
            for (ProgramItem item : items) {
                if (item.year() == year) {
                    addDraws(item.span(), positions);
                }
            }
            Arrays.sort(positions);
            spreads.add(new YearSpread(year, at(positions, 0.1), at(positions, 0.5), at(positions, 0.9)));
        }
        return spreads;
    }

    private static void addDraws(EligibleSpan span, double[] positions) {
        long draws = span.recovery().feasibleDraws().orElse(-1L);
        for (int draw = 0; draw < positions.length; draw++) {
            positions[draw] += (draws >>> draw & 1) * span.facts().positionsGained();
        }
    }

    private static double at(double[] sorted, double ratio) {
        return Quantile.inUnit(sorted, ratio);
    }
}
