package org.spanroom.program;

import static org.spanroom.program.NetworkBuilder.ON_DATE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.Costs;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.SpanFacts;
import org.spanroom.model.program.YearBudget;

/**
 * Puts the inputs of small programs together for tests: each duct with a recovery is an eligible span. Work takes 2 hours, of which half an hour at each
 * vault can be shared, an hour on site costs 100, and a position is worth 1,000. The first year begins on February 1, 2027, a Monday.
 */
final class ProgramCase {
    static final LocalDate FIRST_DAY = LocalDate.of(2027, 2, 1);
    static final double SHARED_HOURS = 0.5;
    static final double SITE_HOUR_MONEY = 100;
    static final double POSITION_MONEY = 1_000;

    private final DuctNetwork network;
    private final List<Connection> connections = new ArrayList<>();
    private final Set<String> nights = new HashSet<>();
    private final Set<String> musts = new HashSet<>();
    private final Map<String, List<String>> reasons = new HashMap<>();
    private final Map<String, List<Closure>> closures = new HashMap<>();
    private final Map<String, Map<String, String>> groups = new HashMap<>();
    private final Map<String, Integer> previous = new HashMap<>();
    private final Map<String, Integer> ranks = new HashMap<>();
    private List<CrewTeam> crews = List.of(new CrewTeam("North", 5, 8, CrewTeam.Shifts.DAYS));
    private List<Closure> stops = List.of();
    private List<Double> moneyOfYears = List.of(1e6, 1e6);
    private double mostHours = Double.POSITIVE_INFINITY;
    private double budgetRatio = 1;
    private double laterYearRatio = 0.9;
    private double servedRatio = 1;
    private double changeMoney;

    ProgramCase(DuctNetwork network) {
        this.network = network;
    }

    /** Sets the budget of each year, and thereby how many years there are. */
    ProgramCase budgets(Double... money) {
        moneyOfYears = List.of(money);
        return this;
    }

    ProgramCase crews(CrewTeam... all) {
        crews = List.of(all);
        return this;
    }

    ProgramCase stops(Closure... all) {
        stops = List.of(all);
        return this;
    }

    ProgramCase nights(String... spans) {
        nights.addAll(List.of(spans));
        return this;
    }

    ProgramCase musts(String... spans) {
        musts.addAll(List.of(spans));
        return this;
    }

    /** Excludes a span: by itself it is worth nothing. */
    ProgramCase excluded(String span, String... gates) {
        reasons.put(span, List.of(gates));
        return this;
    }

    ProgramCase closed(String span, LocalDate from, LocalDate until) {
        closures.computeIfAbsent(span, none -> new ArrayList<>()).add(new Closure("closed", from, until));
        return this;
    }

    ProgramCase group(String span, String column, String value) {
        groups.computeIfAbsent(span, none -> new HashMap<>()).put(column, value);
        return this;
    }

    ProgramCase previous(String span, int year, double money) {
        previous.put(span, year);
        changeMoney = money;
        return this;
    }

    ProgramCase rank(String span, int rank) {
        ranks.put(span, rank);
        return this;
    }

    /** Limits the hours on site of each year. */
    ProgramCase mostHours(double hours) {
        mostHours = hours;
        return this;
    }

    /** Sets what of a cost counts against the budget. */
    ProgramCase budgetRatio(double ratio) {
        budgetRatio = ratio;
        return this;
    }

    ProgramCase ratios(double later, double served) {
        laterYearRatio = later;
        servedRatio = served;
        return this;
    }

    ProgramCase connect(String name, int from, int to, int cables, double value, String neededBy, boolean isMust) {
        connections.add(new Connection(
                connections.size() + 2L,
                name,
                "V" + from,
                "V" + to,
                cables,
                OptionalDouble.of(value),
                neededBy.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(neededBy)),
                isMust,
                Optional.empty()));
        return this;
    }

    ProgramInputs inputs() {
        var plan = new ConnectPlan(network, connections, false);
        CalendarRules rules = rules();
        List<Double> hours = YearModel.crewHours(rules);
        var budgets = new ArrayList<YearBudget>();
        for (int year = 0; year < moneyOfYears.size(); year++) {
            budgets.add(new YearBudget(moneyOfYears.get(year), Math.min(mostHours, hours.get(year))));
        }
        return new ProgramInputs(
                network,
                eligibleSpans(),
                plan.connections(),
                plan,
                rules,
                budgets,
                (Costs costs) -> budgetRatio * costs.money(),
                servedRatio,
                laterYearRatio,
                previous,
                changeMoney);
    }

    private CalendarRules rules() {
        var years = new ArrayList<CalendarRules.ProgramYear>();
        for (int year = 0; year < moneyOfYears.size(); year++) {
            years.add(new CalendarRules.ProgramYear(
                    FIRST_DAY.plusYears(year), FIRST_DAY.plusYears(year + 1L).minusDays(1)));
        }
        return new CalendarRules(ON_DATE, years, crews, stops, Map.of());
    }

    private List<EligibleSpan> eligibleSpans() {
        var eligibleSpans = new ArrayList<EligibleSpan>();
        for (int number = 0; number < network.sections().size(); number++) {
            SectionOffer section = network.sections().get(number);
            for (int bin = 0; bin < section.ducts().size(); bin++) {
                if (section.ducts().get(bin).recovery().isPresent()) {
                    eligibleSpans.add(span(section, number, bin));
                }
            }
        }
        return eligibleSpans;
    }

    private EligibleSpan span(SectionOffer section, int number, int bin) {
        DuctOffer duct = section.ducts().get(bin);
        DuctOffer.Recovery recovery = duct.recovery().orElseThrow();
        SpanFacts facts = facts(section, duct);
        LocalDate ready = ON_DATE.plusDays(recovery.leadDays());
        return new EligibleSpan(
                facts,
                duct,
                number,
                bin,
                budgetRatio * recovery.costs().money(),
                facts.isWorthBySelf() ? POSITION_MONEY * facts.positionsGained() : 0,
                recovery.leadDays(),
                0,
                recovery.notBefore().filter(ready::isBefore).orElse(ready),
                closures.getOrDefault(duct.spanId(), List.of()),
                musts.contains(duct.spanId()));
    }

    private SpanFacts facts(SectionOffer section, DuctOffer duct) {
        return new SpanFacts(
                duct.spanId(),
                ranks.containsKey(duct.spanId()) ? OptionalInt.of(ranks.get(duct.spanId())) : OptionalInt.empty(),
                reasons.getOrDefault(duct.spanId(), List.of()),
                network.vaultId(section.from()),
                network.vaultId(section.to()),
                section.lengthM(),
                duct.positionsAfter() - duct.positionsNow(),
                nights.contains(duct.spanId()),
                SHARED_HOURS,
                SHARED_HOURS,
                SITE_HOUR_MONEY,
                0,
                50,
                10,
                20,
                5,
                2,
                OptionalInt.empty(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                groups.getOrDefault(duct.spanId(), Map.of()),
                "",
                "",
                Optional.empty());
    }
}
