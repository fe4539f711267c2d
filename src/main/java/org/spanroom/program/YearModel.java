package org.spanroom.program;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.YearBudget;
import org.spanroom.program.annual.Connections;
import org.spanroom.program.annual.SetUp;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.Wish;
import org.spanroom.program.annual.YearProblem;

/** The eligible spans and connections of a program as a year problem. Eligible span {@code i} is task {@code i}. */
public final class YearModel {
    private final ProgramInputs inputs;
    private final WorkDays workDays;
    private final YearProblem problem;

    /** Puts the problem together. */
    public YearModel(ProgramInputs inputs) {
        this.inputs = inputs;
        this.workDays = new WorkDays(inputs.rules());
        var tasks = new ArrayList<Task>();
        for (EligibleSpan span : inputs.eligibleSpans()) {
            tasks.add(task(span));
        }
        problem = new YearProblem(limits(), tasks, 2 * inputs.network().vaults().size(), connections());
    }

    public YearProblem problem() {
        return problem;
    }

    private List<List<Double>> limits() {
        return inputs.budgets().stream()
                .map(budget -> List.of(budget.money(), budget.crewHours()))
                .toList();
    }

    private Task task(EligibleSpan span) {
        OptionalInt first =
                possible(span) ? workDays.firstYear(span.notBefore(), span.closures()) : OptionalInt.empty();
        OptionalInt last = workDays.lastYear(span.notBefore(), span.closures());
        Integer planned = inputs.previous().get(span.facts().spanId());
        var values = new ArrayList<Double>();
        for (int year = 0; year < inputs.budgets().size(); year++) {
            boolean isChange = planned != null && planned != year;
            values.add(span.worthMoney() * inputs.laterRatio(year) - (isChange ? inputs.changeMoney() : 0));
        }
        return new Task(
                values,
                planned == null ? 0 : -inputs.changeMoney(),
                List.of(span.budgetMoney(), span.recovery().siteHours()),
                first.orElse(0),
                first.isPresent() ? last.orElse(-1) : -1,
                span.isMust(),
                setUps(span));
    }

    /** Work by night needs a crew that works nights. */
    private boolean possible(EligibleSpan span) {
        return inputs.rules().crews().stream().anyMatch(crew -> works(crew, span));
    }

    private static boolean works(CrewTeam crew, EligibleSpan span) {
        return crew.works(span.facts().isNight());
    }

    private List<SetUp> setUps(EligibleSpan span) {
        SpanFacts facts = span.facts();
        double hours = facts.sharedAHours() + facts.sharedBHours();
        double money = hours * facts.siteHourMoney() * span.budgetRatio();
        var within = List.of(
                within(span.budgetMoney(), money), within(span.recovery().siteHours(), hours));
        return List.of(
                setUp(place(span, facts.vaultA()), facts.sharedAHours(), span, within),
                setUp(place(span, facts.vaultB()), facts.sharedBHours(), span, within));
    }

    /** Hours and amounts are read rounded: where a span is hardly more than its set-ups, these could be more than all of it. */
    private static double within(double all, double parts) {
        return parts > all ? all / parts : 1;
    }

    private static SetUp setUp(int place, double hours, EligibleSpan span, List<Double> within) {
        double money = hours * span.facts().siteHourMoney() * span.budgetRatio();
        return new SetUp(place, List.of(money * within.get(0), hours * within.get(1)));
    }

    /** Work by day and work by night at one vault do not share its set-up. */
    private int place(EligibleSpan span, String vault) {
        int number = inputs.network().find(vault).orElseThrow();
        return 2 * number + (span.facts().isNight() ? 1 : 0);
    }

    private Optional<Connections> connections() {
        if (inputs.connections().isEmpty()) {
            return Optional.empty();
        }
        Map<Long, Integer> taskOf = new HashMap<>();
        for (int task = 0; task < inputs.eligibleSpans().size(); task++) {
            EligibleSpan span = inputs.eligibleSpans().get(task);
            taskOf.put(key(span.section(), span.bin()), task);
        }
        DuctNetwork network = inputs.network();
        var tasks = new ArrayList<List<Integer>>();
        var firstBuild = new ArrayList<Integer>();
        var buildUses = new ArrayList<List<Double>>();
        for (int number = 0; number < network.sections().size(); number++) {
            SectionOffer section = network.sections().get(number);
            var ofBins = new ArrayList<Integer>();
            for (int bin = 0; bin < section.ducts().size(); bin++) {
                ofBins.add(taskOf.getOrDefault(key(number, bin), -1));
            }
            tasks.add(ofBins);
            LocalDate built =
                    inputs.rules().readyOn().plusDays(section.newDuct().leadDays());
            firstBuild.add(
                    workDays.firstYear(built, List.of()).orElse(inputs.budgets().size()));
            buildUses.add(
                    List.of(inputs.budgetCost().applyAsDouble(section.newDuct().first()), 0.0));
        }
        return Optional.of(new Connections(
                inputs.connectPlan().problem(),
                tasks,
                firstBuild,
                buildUses,
                inputs.connectPlan().usable().stream().map(this::wish).toList()));
    }

    private static long key(int section, int bin) {
        return (long) section << 32 | bin;
    }

    private Wish wish(Connection connection) {
        int years = inputs.budgets().size();
        int last = connection.neededBy().map(this::yearOf).orElse(years - 1);
        var values = new ArrayList<>(Collections.nCopies(years, 0.0));
        for (int year = 0; year <= last; year++) {
            values.set(year, inputs.servedRatio() * connection.value().orElse(0) * inputs.laterRatio(year));
        }
        return new Wish(values, connection.must(), last);
    }

    /** Returns the year that a day is in; -1 where it is before all, the last one where it is after all. */
    private int yearOf(LocalDate day) {
        List<CalendarRules.ProgramYear> years = inputs.rules().years();
        int year = -1;
        while (year + 1 < years.size() && !day.isBefore(years.get(year + 1).from())) {
            year++;
        }
        return year;
    }

    /** Returns the hours on site that all crews have, by year. */
    public static List<Double> crewHours(CalendarRules rules) {
        var days = new WorkDays(rules);
        var hours = new ArrayList<Double>();
        for (int year = 0; year < rules.years().size(); year++) {
            hours.add(days.crewHours(year));
        }
        return hours;
    }

    /** Returns the budgets with every limit of money multiplied. */
    public static List<YearBudget> scaled(List<YearBudget> budgets, double ratio) {
        return budgets.stream()
                .map(budget -> new YearBudget(budget.money() * ratio, budget.crewHours()))
                .toList();
    }
}
