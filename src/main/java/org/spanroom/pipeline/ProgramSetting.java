package org.spanroom.pipeline;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.spanroom.config.ProgramConfig;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.YearBudget;
import org.spanroom.program.ConnectPlan;
import org.spanroom.program.NetworkEdits;
import org.spanroom.program.ProgramInputs;
import org.spanroom.program.YearModel;

/** Turns the config of a program and the spans of a run into what a program is made of. */
final class ProgramSetting {
    private final ProgramConfig config;
    private final Map<String, SpanFacts> facts;
    private final DuctNetwork network;
    private final CalendarRules rules;
    private final ToDoubleFunction<Costs> budgetCost;

    /**
     * Prepares for a run.
     *
     * @param facts of all spans, by their names
     * @param network what the run's sections offer
     * @param done names of spans that have been recovered
     * @param failed names of spans whose recovery has failed
     */
    ProgramSetting(
            ProgramConfig config,
            Map<String, SpanFacts> facts,
            DuctNetwork network,
            Set<String> done,
            Set<String> failed) {
        var closed = new HashSet<>(failed);
        closed.addAll(config.mustNot());
        this.config = config;
        this.facts = facts;
        this.network = NetworkEdits.after(network, done, closed);
        this.rules = rules(network.onDate());
        this.budgetCost = switch (config.budgetCost()) {
            case RATES -> Costs::money;
            case LIKELY -> costs -> costs.range().likelyMoney();
            case HIGH -> costs -> costs.range().highMoney();
        };
    }

    /** Returns the years, crews and days without work. */
    CalendarRules rules() {
        return rules;
    }

    /**
     * Returns the inputs of the program.
     *
     * @param connections rows of the table of connections; empty for none
     * @param previous the year of each span of an earlier program
     */
    ProgramInputs inputs(List<Connection> connections, Map<String, Integer> previous) {
        var plan = new ConnectPlan(network, connections, false);
        return new ProgramInputs(
                network,
                eligibleSpans(!connections.isEmpty()),
                plan.connections(),
                plan,
                rules,
                budgets(),
                budgetCost,
                config.objective().servedRatio(),
                config.laterYearRatio(),
                previous,
                config.changeMoney());
    }

    private CalendarRules rules(LocalDate onDate) {
        LocalDate first = config.findFirstDay().orElse(onDate.plusDays(1));
        var years = new ArrayList<CalendarRules.ProgramYear>();
        for (int year = 0; year < config.years().size(); year++) {
            years.add(new CalendarRules.ProgramYear(
                    first.plusYears(year), first.plusYears(year + 1L).minusDays(1)));
        }
        LocalDate last = years.get(years.size() - 1).until();
        var stops = new ArrayList<Closure>();
        for (ProgramConfig.StopWindow window : config.stopWindows()) {
            if (window.zoneKinds().isEmpty()) {
                stops.addAll(window.days().within(first, last));
            }
        }
        LocalDate earliest = (onDate.isBefore(first) ? onDate : first).minusYears(1);
        return new CalendarRules(
                onDate, years, config.crews(), stops, config.mostInWork(), config.workWeek(earliest, last));
    }

    private List<YearBudget> budgets() {
        List<Double> hours = YearModel.crewHours(rules);
        var budgets = new ArrayList<YearBudget>();
        for (int year = 0; year < config.years().size(); year++) {
            ProgramConfig.YearLimits limits = config.years().get(year);
            double crews = hours.get(year);
            budgets.add(new YearBudget(
                    limits.money().orElse(Double.POSITIVE_INFINITY),
                    Math.min(crews, limits.crewHours().orElse(crews))));
        }
        return budgets;
    }

    /** Spans that are worth nothing by themselves are eligible only where connections may need them, or they are a must. */
    private List<EligibleSpan> eligibleSpans(boolean hasConnections) {
        var eligibleSpans = new ArrayList<EligibleSpan>();
        Set<String> musts = Set.copyOf(config.must());
        for (int number = 0; number < network.sections().size(); number++) {
            SectionOffer section = network.sections().get(number);
            for (int bin = 0; bin < section.ducts().size(); bin++) {
                DuctOffer duct = section.ducts().get(bin);
                if (duct.recovery().isPresent()) {
                    EligibleSpan span = span(number, bin, duct, musts.contains(duct.spanId()));
                    if (hasConnections || span.isMust() || span.worthMoney() > 0) {
                        eligibleSpans.add(span);
                    }
                }
            }
        }
        return eligibleSpans;
    }

    private EligibleSpan span(int section, int bin, DuctOffer duct, boolean isMust) {
        SpanFacts span = Objects.requireNonNull(facts.get(duct.spanId()));
        DuctOffer.Recovery recovery = duct.recovery().orElseThrow();
        int leadDays = Math.max(recovery.leadDays(), config.noticeDays());
        int checkDays = span.fieldCheck().isEmpty() ? 0 : config.checkDays();
        LocalDate ready = rules.readyOn().plusDays(Math.max(leadDays, checkDays));
        return new EligibleSpan(
                span,
                duct,
                section,
                bin,
                budgetCost.applyAsDouble(recovery.costs()),
                span.isWorthBySelf() ? worth(span, recovery) : 0,
                leadDays,
                checkDays,
                recovery.notBefore().filter(ready::isBefore).orElse(ready),
                closures(span),
                isMust);
    }

    private double worth(SpanFacts span, DuctOffer.Recovery recovery) {
        ProgramConfig.Objective objective = config.objective();
        double money = objective.positionMoney() * span.positionsGained()
                + objective.savingRatio() * Math.max(0, span.savingMoney())
                + objective.lengthMoneyPerM() * span.lengthM();
        return money * (objective.chanceWeighted() ? chance(recovery, network.samples()) : 1);
    }

    /** Returns the chance that a recovery works; 1 where it was not simulated. */
    static double chance(DuctOffer.Recovery recovery, int samples) {
        return samples == 0 || recovery.feasibleDraws().isEmpty()
                ? 1
                : Long.bitCount(recovery.feasibleDraws().getAsLong()) / (double) samples;
    }

    private List<Closure> closures(SpanFacts span) {
        LocalDate first = rules.years().get(0).from();
        LocalDate last = rules.years().get(rules.years().size() - 1).until();
        var closures = new ArrayList<Closure>();
        for (ProgramConfig.StopWindow window : config.stopWindows()) {
            if (window.zoneKinds().stream().anyMatch(span.zoneKinds()::contains)) {
                closures.addAll(window.days().within(first, last));
            }
        }
        for (SpanFacts.ZoneDays zone : span.zoneDays()) {
            if (config.closedZoneKinds().contains(zone.kind())) {
                closures.add(zone.days());
            }
        }
        for (ProgramConfig.ChangeFreeze freeze : config.changeFreezes()) {
            if (span.circuitsAtRisk().orElse(0) >= freeze.leastCircuits()) {
                closures.addAll(freeze.days().within(first, last));
            }
        }
        closures.sort(Comparator.comparing(Closure::from));
        return closures;
    }
}
