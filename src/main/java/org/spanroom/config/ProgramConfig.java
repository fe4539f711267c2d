package org.spanroom.config;

import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.spanroom.model.CalendarDay;
import org.spanroom.model.Check;
import org.spanroom.model.Counted;
import org.spanroom.model.program.CrewTeam;
import org.spanroom.model.program.WorkWeek;
import org.spanroom.model.program.YearlyDays;

/**
 * What an annual program is given from outside the data. {@code config/program.yaml} explains each key.
 *
 * @param firstDay the first day of year 1; empty for the day after the run date
 * @param years the limits of each year
 * @param workDays working days of a week, by their names, such as monday
 * @param holidays days without work: a month and day for each year, or a date for once
 * @param noticeDays days of notice before work
 * @param checkDays days that a field check comes before work
 * @param district column of the spans that names a district; empty for none
 * @param mostInWork by district, how many spans may be in work in one week
 * @param laterYearRatio what something is worth a year later
 * @param previous the folder of an earlier program
 * @param changeMoney what a change of the year of a span in it costs, as worth
 */
public record ProgramConfig(
        String firstDay,
        List<YearLimits> years,
        BudgetCost budgetCost,
        List<CrewTeam> crews,
        List<String> workDays,
        List<String> holidays,
        List<StopWindow> stopWindows,
        List<String> closedZoneKinds,
        List<ChangeFreeze> changeFreezes,
        int noticeDays,
        int checkDays,
        String district,
        Map<String, Integer> mostInWork,
        Objective objective,
        double laterYearRatio,
        Optional<Path> connections,
        List<String> must,
        List<String> mustNot,
        List<String> totalsBy,
        Optional<Path> previous,
        double changeMoney) {
    private static final int MOST_YEARS = 20;

    public ProgramConfig {
        firstDay = firstDay.strip();
        years = List.copyOf(years);
        crews = List.copyOf(crews);
        workDays = List.copyOf(workDays);
        holidays = List.copyOf(holidays);
        stopWindows = List.copyOf(stopWindows);
        closedZoneKinds = List.copyOf(closedZoneKinds);
        changeFreezes = List.copyOf(changeFreezes);
        mostInWork = Map.copyOf(mostInWork);
        must = List.copyOf(must);
        mustNot = List.copyOf(mustNot);
        totalsBy = List.copyOf(totalsBy);
        CalendarDay.demandIfAny("firstDay", firstDay);
        if (years.isEmpty() || years.size() > MOST_YEARS) {
            throw new IllegalArgumentException(
                    "years must have from 1 to " + MOST_YEARS + " rows, has " + years.size());
        }
        if (crews.isEmpty()) {
            throw new IllegalArgumentException("crews must name at least one crew");
        }
        if (crews.stream().map(CrewTeam::name).distinct().count() < crews.size()) {
            throw new IllegalArgumentException("crews gives two crews the same name");
        }
        demandWorkDays(crews, workDays, holidays);
        var both = new HashSet<>(must);
        both.retainAll(mustNot);
        if (!both.isEmpty()) {
            throw new IllegalArgumentException(
                    "must and must_not both name " + both.iterator().next());
        }
        if (mostInWork.values().stream().anyMatch(most -> most < 0)) {
            throw new IllegalArgumentException("mostInWork must not be below 0");
        }
        if (!mostInWork.isEmpty() && district.isBlank()) {
            throw new IllegalArgumentException(
                    "most_in_work needs district, the column of the spans that names districts");
        }
        if (noticeDays < 0 || checkDays < 0) {
            throw new IllegalArgumentException("noticeDays and check_days must not be below 0");
        }
        Check.within("laterYearRatio", laterYearRatio, 0, 1);
        Check.notNegative("changeMoney", changeMoney);
    }

    /**
     * The limits of a year.
     *
     * @param money its budget; empty for no limit
     * @param crewHours hours on site of all crews together; empty for what they have
     */
    public record YearLimits(OptionalDouble money, OptionalDouble crewHours) {
        public YearLimits {
            money.ifPresent(limit -> Check.notNegative("money", limit));
            crewHours.ifPresent(limit -> Check.notNegative("crewHours", limit));
        }
    }

    /** The cost of a span that counts against the budget. */
    public enum BudgetCost {
        RATES,
        LIKELY,
        HIGH
    }

    /**
     * Days without work.
     *
     * @param zoneKinds only for spans that touch a zone of these kinds; empty for all
     */
    public record StopWindow(String name, String from, String until, List<String> zoneKinds) {
        public StopWindow {
            zoneKinds = List.copyOf(zoneKinds);
            checked(name, from, until);
        }

        public YearlyDays days() {
            return new YearlyDays(name, from, until);
        }
    }

    /**
     * Days without work on spans with many circuits.
     *
     * @param leastCircuits how many circuits at risk a span has at least
     */
    public record ChangeFreeze(String name, String from, String until, int leastCircuits) {
        public ChangeFreeze {
            checked(name, from, until);
        }

        public YearlyDays days() {
            return new YearlyDays(name, from, until);
        }
    }

    /**
     * What the program is worth, in money.
     *
     * @param positionMoney a position that recovery adds
     * @param servedRatio times the value of a connection that is served in time
     * @param savingRatio times what recovery saves over new build for the positions that are needed
     * @param lengthMoneyPerM a meter of duct with new positions
     * @param chanceWeighted whether the worth of a span is multiplied by the chance that its recovery works
     */
    public record Objective(
            double positionMoney,
            double servedRatio,
            double savingRatio,
            double lengthMoneyPerM,
            boolean chanceWeighted) {
        public Objective {
            Check.notNegative("positionMoney", positionMoney);
            Check.notNegative("servedRatio", servedRatio);
            Check.notNegative("savingRatio", savingRatio);
            Check.notNegative("lengthMoneyPerM", lengthMoneyPerM);
        }
    }

    /** Returns this with another list of musts. */
    public ProgramConfig withMust(List<String> other) {
        return FiledSections.replaced(this, "must", other);
    }

    /** Returns this with another list of what must not be in the program. */
    public ProgramConfig withMustNot(List<String> other) {
        return FiledSections.replaced(this, "must_not", other);
    }

    /** Returns this with other stop windows. */
    public ProgramConfig withStopWindows(List<StopWindow> other) {
        return FiledSections.replaced(this, "stop_windows", other);
    }

    /** Returns this with other change freezes. */
    public ProgramConfig withChangeFreezes(List<ChangeFreeze> other) {
        return FiledSections.replaced(this, "change_freezes", other);
    }

    /** Returns this with other crews; the hours of the years follow them. */
    public ProgramConfig withCrews(List<CrewTeam> other) {
        List<YearLimits> limits = years.stream()
                .map(year -> new YearLimits(year.money(), OptionalDouble.empty()))
                .toList();
        return FiledSections.replaced(FiledSections.replaced(this, "crews", other), "years", limits);
    }

    /** Returns this with another table of connections. */
    public ProgramConfig withConnections(Path table) {
        return FiledSections.replaced(this, "connections", Optional.of(table));
    }

    /** Returns the working days of a range of days. */
    public WorkWeek workWeek(LocalDate first, LocalDate last) {
        var closed = new HashSet<LocalDate>();
        for (String holiday : holidays) {
            new YearlyDays("holiday", holiday, holiday).within(first, last).forEach(day -> closed.add(day.from()));
        }
        return new WorkWeek(workDays.stream().map(ProgramConfig::weekday).toList(), closed);
    }

    private static DayOfWeek weekday(String name) {
        return DayOfWeek.valueOf(name.strip().toUpperCase(Locale.ROOT));
    }

    private static void demandWorkDays(List<CrewTeam> crews, List<String> workDays, List<String> holidays) {
        List<String> names = Stream.of(DayOfWeek.values())
                .map(day -> day.name().toLowerCase(Locale.ROOT))
                .toList();
        for (String day : workDays) {
            if (!names.contains(day.strip().toLowerCase(Locale.ROOT))) {
                throw new IllegalArgumentException(
                        "workDays must be of " + String.join(", ", names) + "; was '" + day + "'");
            }
        }
        long count = workDays.stream().map(ProgramConfig::weekday).distinct().count();
        if (count == 0) {
            throw new IllegalArgumentException("workDays must name at least one day of the week");
        }
        for (CrewTeam crew : crews) {
            if (crew.shiftsPerWeek() > count) {
                throw new IllegalArgumentException("crews has '" + crew.name() + "' with " + crew.shiftsPerWeek()
                        + " shifts_per_week, and work_days has " + Counted.of(count, "day")
                        + "; add days, or lower the shifts");
            }
        }
        for (String holiday : holidays) {
            if (!YearlyDays.isDay(holiday)) {
                throw new IllegalArgumentException("holidays must be days such as 12-25, or dates " + CalendarDay.YEARS
                        + "; was '" + holiday + "'");
            }
        }
    }

    /** Returns the first day of year 1, if it is given. */
    public Optional<LocalDate> findFirstDay() {
        return CalendarDay.find(firstDay);
    }

    private static void checked(String name, String from, String until) {
        Check.notBlank("name", name);
        if (!YearlyDays.isDay(from)) {
            throw new IllegalArgumentException("from must be a month and day such as 12-15, or a date "
                    + CalendarDay.YEARS + ", was '" + from + "'");
        }
        if (!YearlyDays.isDay(until) || YearlyDays.isDate(from) != YearlyDays.isDate(until)) {
            throw new IllegalArgumentException("until must be a month and day such as 01-31, or a date "
                    + CalendarDay.YEARS + ", like from; was '" + until + "'");
        }
        if (YearlyDays.isDate(from) && until.compareTo(from) < 0) {
            throw new IllegalArgumentException("until must not be before from, was '" + until + "'");
        }
    }
}
