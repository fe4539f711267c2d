package org.spanroom.program;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.spanroom.model.Counted;
import org.spanroom.model.program.CalendarRules;
import org.spanroom.model.program.Closure;
import org.spanroom.program.annual.YearProblem;

/** Why years of a program can have no work at all, whatever the spans: years that are over, and years without an open day. */
public final class IdleYears {
    private IdleYears() {}

    /**
     * Returns a sentence for each cause, with how to fix it; none where every year has an open day on or after the run date.
     *
     * @param rules the calendar
     */
    public static List<String> words(CalendarRules rules) {
        var past = new ArrayList<Integer>();
        var closed = new ArrayList<Integer>();
        var days = new WorkDays(rules);
        for (int year = 0; year < rules.years().size(); year++) {
            LocalDate until = rules.years().get(year).until();
            if (until.isBefore(rules.readyOn())) {
                past.add(year);
            } else if (!days.hasDay(year, rules.readyOn(), List.of())) {
                closed.add(year);
            }
        }
        var words = new ArrayList<String>();
        if (!past.isEmpty()) {
            words.add(
                    named(rules, past) + (past.size() == 1 ? " ends" : " end") + " before the run date "
                            + rules.readyOn()
                            + ", so no work is planned there; set first_day of the program's config to a later day, or leave it empty");
        }
        if (!closed.isEmpty()) {
            String stops = rules.stops().stream().map(Closure::name).distinct().collect(Collectors.joining(", "));
            words.add("no working day of " + named(rules, closed) + " is open: "
                    + (stops.isEmpty() ? "its days have no shift" : "stop windows close it (" + stops + ")")
                    + "; change from and until of stop_windows, or shifts_per_week of crews, in the program's config");
        }
        return words;
    }

    /**
     * Returns why a program is empty because no eligible span has a day, with the first of them as the example.
     *
     * @param problem that of the inputs
     */
    public static Optional<String> noEligibleSpan(ProgramInputs inputs, YearProblem problem) {
        int count = inputs.eligibleSpans().size();
        if (count == 0) {
            return Optional.of("no span is eligible: none that the gates let through has a worth by the program's"
                    + " objective; check the exclusions of the run, and objective in the program's config");
        }
        boolean none = IntStream.range(0, count)
                .allMatch(task -> WhyImpossible.words(inputs, problem, task).isPresent());
        return none
                ? WhyImpossible.words(inputs, problem, 0)
                        .map(why -> "none of " + Counted.of(count, "eligible span") + " has a day in the program; "
                                + inputs.eligibleSpans().get(0).facts().spanId() + ": " + why)
                : Optional.empty();
    }

    private static String named(CalendarRules rules, List<Integer> years) {
        CalendarRules.ProgramYear first = rules.years().get(years.get(0));
        CalendarRules.ProgramYear last = rules.years().get(years.get(years.size() - 1));
        String numbers = years.stream().map(year -> String.valueOf(year + 1)).collect(Collectors.joining(", "));
        return (years.size() == 1 ? "year " : "years ") + numbers + " (" + first.from() + " to " + last.until() + ")";
    }
}
