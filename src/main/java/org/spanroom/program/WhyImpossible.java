package org.spanroom.program;

import java.time.LocalDate;
import java.util.Optional;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.YearProblem;

/** Why no day of a program takes the work on a span, in words. */
public final class WhyImpossible {
    private WhyImpossible() {}

    /** Returns the reason in one phrase; empty where a year of the program has a day for the task of a span. */
    public static Optional<String> words(ProgramInputs inputs, YearProblem problem, int task) {
        Task of = problem.tasks().get(task);
        return of.firstYear() <= of.lastYear()
                ? Optional.empty()
                : Optional.of(words(inputs, inputs.eligibleSpans().get(task)));
    }

    private static String words(ProgramInputs inputs, EligibleSpan span) {
        boolean night = span.facts().isNight();
        if (inputs.rules().crews().stream().noneMatch(crew -> crew.works(night))) {
            return night ? "no crew works nights" : "no crew works days";
        }
        LocalDate last =
                inputs.rules().years().get(inputs.rules().years().size() - 1).until();
        return span.notBefore().isAfter(last)
                ? "it cannot begin before " + span.notBefore() + "; the program ends on " + last
                : "no day of the program is open for it: stop windows, zone dates, change freezes";
    }
}
