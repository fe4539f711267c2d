package org.spanroom.program.calendar;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.CalendarRules.ProgramYear;
import org.spanroom.model.program.Closure;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.CrewTeam.Shifts;
import org.spanroom.model.program.WorkOrder;

/**
 * Builds work orders for tests, and the rules for them. An order is by day, takes 4 hours between vaults of its own, shares 1 hour at
 * each, has priority 1 and can be done at any time of year 1, unless changed.
 */
final class Orders {
    /** A Monday; year 1 begins on it. */
    static final LocalDate START = LocalDate.of(2027, 2, 1);

    private final String spanId;
    private int year;
    private double priority = 1;
    private double siteHours = 4;
    private boolean night;
    private String vaultA;
    private String vaultB;
    private double sharedAHours = 1;
    private double sharedBHours = 1;
    private String district = "";
    private int leadDays;
    private int checkDays;
    private LocalDate notBefore = LocalDate.MIN;
    private LocalDate notAfter = LocalDate.MAX;
    private List<Closure> closures = List.of();

    private Orders(String spanId) {
        this.spanId = spanId;
        vaultA = spanId + "-a";
        vaultB = spanId + "-b";
    }

    static Orders of(String spanId) {
        return new Orders(spanId);
    }

    WorkOrder order() {
        return new WorkOrder(
                spanId,
                spanId,
                year,
                priority,
                siteHours,
                night,
                vaultA,
                vaultB,
                sharedAHours,
                sharedBHours,
                district,
                leadDays,
                checkDays,
                notBefore,
                notAfter,
                closures);
    }

    Orders between(String vaultA, String vaultB) {
        this.vaultA = vaultA;
        this.vaultB = vaultB;
        return this;
    }

    /** Sets the hours that can be shared at vault A and at vault B. */
    Orders shares(double aHours, double bHours) {
        sharedAHours = aHours;
        sharedBHours = bHours;
        return this;
    }

    Orders hours(double siteHours) {
        this.siteHours = siteHours;
        return this;
    }

    Orders priority(double priority) {
        this.priority = priority;
        return this;
    }

    /** Sets the year, from 0. */
    Orders year(int year) {
        this.year = year;
        return this;
    }

    Orders byNight() {
        night = true;
        return this;
    }

    Orders district(String district) {
        this.district = district;
        return this;
    }

    /** Sets the days from application to work, and from field check to work. */
    Orders waits(int leadDays, int checkDays) {
        this.leadDays = leadDays;
        this.checkDays = checkDays;
        return this;
    }

    Orders dates(LocalDate notBefore, LocalDate notAfter) {
        this.notBefore = notBefore;
        this.notAfter = notAfter;
        return this;
    }

    Orders closed(Closure... closures) {
        this.closures = List.of(closures);
        return this;
    }

    static List<WorkOrder> list(Orders... orders) {
        return Arrays.stream(orders).map(Orders::order).toList();
    }

    /** A closure on days of the year's first weeks, counted from its first Monday as 0. */
    static Closure closure(String name, int fromDay, int untilDay) {
        return new Closure(name, START.plusDays(fromDay), START.plusDays(untilDay));
    }

    /** A crew of five shifts of eight hours a week. */
    static CrewTeam crew(String name, Shifts shifts) {
        return new CrewTeam(name, 5, 8, shifts);
    }

    /** Rules for some years of so many weeks, plan day = first day, with crews that work days only unless given. */
    static CalendarRules rules(int years, int weeksPerYear, CrewTeam... crews) {
        var all = new ArrayList<ProgramYear>();
        for (int year = 0; year < years; year++) {
            LocalDate from = START.plusWeeks((long) year * weeksPerYear);
            all.add(new ProgramYear(from, from.plusWeeks(weeksPerYear).minusDays(1)));
        }
        return new CalendarRules(START, all, List.of(crews), List.of(), Map.of());
    }

    static CalendarRules with(CalendarRules rules, Closure... stops) {
        return new CalendarRules(rules.readyOn(), rules.years(), rules.crews(), List.of(stops), rules.mostInWork());
    }

    static CalendarRules with(CalendarRules rules, Map<String, Integer> mostInWork) {
        return new CalendarRules(rules.readyOn(), rules.years(), rules.crews(), rules.stops(), mostInWork);
    }
}
