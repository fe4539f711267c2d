package org.spanroom.program;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.spanroom.model.effort.MoneyRange;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.CurvePoint;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.PriceItem;
import org.spanroom.model.program.ProgramDucts;
import org.spanroom.model.program.ProgramItem;
import org.spanroom.model.program.ProgramResults;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.WorkCalendar;
import org.spanroom.program.annual.Connections;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;

/** Puts together what is reported of a program. */
public final class ProgramAssembler {
    private final ProgramInputs inputs;
    private final YearProblem problem;
    private final ProgramPlanner.Planned planned;
    private final Optional<ServedWorks> works;
    private final Map<Integer, Double> chosen;

    /**
     * Prepares.
     *
     * @param chosen by task, in what share of the draws it is in the program; empty where that was not calculated
     */
    public ProgramAssembler(
            ProgramInputs inputs, YearProblem problem, ProgramPlanner.Planned planned, Map<Integer, Double> chosen) {
        this.inputs = inputs;
        this.problem = problem;
        this.planned = planned;
        this.works = problem.connections().map(all -> new ServedWorks(all, planned.plan()));
        this.chosen = Map.copyOf(chosen);
    }

    /**
     * Returns all of it.
     *
     * @param takes by name of a connection that is not served, what it would take to serve it
     */
    public ProgramResults results(Map<String, String> takes, List<CurvePoint> curve, List<PriceItem> prices) {
        List<ProgramItem> items = items();
        List<ProgramDucts> ducts = ducts();
        return new ProgramResults(
                inputs.rules(),
                inputs.budgets(),
                items,
                ducts,
                new ConnectionOutcomes(inputs, problem, planned).list(takes),
                new ReserveOrder(inputs, problem, chosen, items).list(),
                ProgramSums.totals(inputs.budgets().size(), items, ducts),
                ProgramSums.spreads(inputs.budgets().size(), inputs.network().samples(), items),
                curve,
                prices);
    }

    private List<ProgramItem> items() {
        Map<String, Integer> taskBySpan = new HashMap<>();
        planned.orders().forEach((task, order) -> taskBySpan.put(order.spanId(), task));
        Map<Integer, List<Integer>> demands =
                works.map(ServedWorks::demandsByTask).orElse(Map.of());
        var items = new ArrayList<ProgramItem>();
        WorkCalendar.Entry before = null;
        for (WorkCalendar.Entry entry : inOrder(planned.calendar().entries())) {
            int task = taskBySpan.getOrDefault(entry.order().spanId(), -1);
            List<Connection> needing = demands.getOrDefault(task, List.of()).stream()
                    .map(demand -> inputs.connectPlan().usable().get(demand))
                    .toList();
            Optional<String> shares = before != null && entry.sharedHours() > 0
                    ? Optional.of(before.order().spanId())
                    : Optional.empty();
            items.add(item(task, entry, needing, shares));
            before = entry;
        }
        return items;
    }

    /** Work of one crew stays together within its week, so that what shares set-ups stands together. */
    private static List<WorkCalendar.Entry> inOrder(List<WorkCalendar.Entry> entries) {
        var ordered = new ArrayList<>(entries);
        ordered.sort(Comparator.comparing(WorkCalendar.Entry::week)
                .thenComparing(WorkCalendar.Entry::crew)
                .thenComparing(WorkCalendar.Entry::place));
        return ordered;
    }

    private ProgramItem item(int task, WorkCalendar.Entry entry, List<Connection> needing, Optional<String> shares) {
        EligibleSpan span = inputs.eligibleSpans().get(task);
        DuctOffer.Recovery recovery = span.recovery();
        Double often = chosen.get(task);
        double budgetMoney = CalendarUses.money(span, entry.sharedHours());
        return new ProgramItem(
                span,
                entry.order().sectionId(),
                entry,
                less(recovery.costs(), entry.sharedHours() * span.facts().siteHourMoney()),
                budgetMoney,
                needing.stream().map(Connection::name).toList(),
                chance(recovery),
                often == null ? OptionalDouble.empty() : OptionalDouble.of(often),
                WhyChosen.words(span, needing, shares, budgetMoney));
    }

    /** Returns a cost less what sharing saves; its range moves by the same share. */
    private static Costs less(Costs costs, double savedMoney) {
        return costs.money() > 0 ? costs.times(Math.max(0, costs.money() - savedMoney) / costs.money()) : costs;
    }

    private OptionalDouble chance(DuctOffer.Recovery recovery) {
        int samples = inputs.network().samples();
        return samples == 0 || recovery.feasibleDraws().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(Long.bitCount(recovery.feasibleDraws().getAsLong()) / (double) samples);
    }

    private List<ProgramDucts> ducts() {
        var rows = new ArrayList<ProgramDucts>();
        planned.plan().built().forEach((piece, years) -> {
            var byYear = new TreeMap<Integer, List<Integer>>();
            for (int duct = 0; duct < years.size(); duct++) {
                byYear.computeIfAbsent(years.get(duct), none -> new ArrayList<>())
                        .add(duct);
            }
            byYear.forEach((year, numbers) -> rows.add(ducts(piece, year, numbers)));
        });
        rows.sort(Comparator.comparingInt(ProgramDucts::year)
                .thenComparing(row -> row.section().id()));
        return rows;
    }

    private ProgramDucts ducts(int piece, int year, List<Integer> numbers) {
        SectionOffer section = inputs.network().sections().get(piece);
        Costs costs = new Costs(0, new MoneyRange(0, 0, 0));
        for (int number : numbers) {
            costs = costs.plus(
                    number == 0 ? section.newDuct().first() : section.newDuct().further());
        }
        List<Connection> through = through(piece, section.ducts().size(), numbers);
        LocalDate builtBy = NewDuctDays.builtBy(inputs, year, section.newDuct(), through);
        return new ProgramDucts(
                section,
                year,
                numbers.size(),
                costs,
                inputs.budgetCost().applyAsDouble(costs),
                inputs.rules().deadline(builtBy, section.newDuct().leadDays()),
                through.stream().map(Connection::name).toList());
    }

    private List<Connection> through(int piece, int existing, List<Integer> numbers) {
        Connections all = problem.connections().orElseThrow();
        var connections = new ArrayList<Connection>();
        for (int demand = 0; demand < all.wishes().size(); demand++) {
            Optional<YearPlan.Served> served = planned.plan().served().get(demand);
            int place = served.map(way -> way.way().indexOf(piece)).orElse(-1);
            if (place >= 0 && numbers.contains(served.get().bins().get(place) - existing)) {
                connections.add(inputs.connectPlan().usable().get(demand));
            }
        }
        return connections;
    }
}
