package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.program.Connection;
import org.spanroom.program.ProgramInputs;
import org.spanroom.program.WhyImpossible;
import org.spanroom.program.annual.Shortage;
import org.spanroom.program.annual.Task;
import org.spanroom.program.annual.YearProblem;

/** Why musts cannot be kept, in words. */
final class YearWords {
    private final ProgramInputs inputs;
    private final YearProblem problem;
    private final String currency;

    /**
     * Prepares.
     *
     * @param problem that of the inputs
     */
    YearWords(ProgramInputs inputs, YearProblem problem, String currency) {
        this.inputs = inputs;
        this.problem = problem;
        this.currency = currency;
    }

    /** Returns one sentence that says by how much. */
    String of(Shortage shortage) {
        if (shortage instanceof Shortage.NoYear none) {
            return ofSpan(none.task());
        }
        if (shortage instanceof Shortage.MustsExceed musts) {
            return String.format(
                    Locale.ROOT,
                    "the musts take at least %s in %s, %s more than the %s there",
                    amount(musts.resource(), musts.least()),
                    years(musts.firstYear(), musts.lastYear()),
                    amount(musts.resource(), musts.least() - musts.limit()),
                    amount(musts.resource(), musts.limit()));
        }
        if (shortage instanceof Shortage.NotFound nearest) {
            return String.format(
                    Locale.ROOT,
                    "%s; the nearest plan takes %s in year %d, %s more than the %s there",
                    nearest.isProven()
                            ? "no plan keeps the musts within the limits"
                            : "no plan was found that keeps the musts within the limits",
                    amount(nearest.resource(), nearest.used()),
                    nearest.year() + 1,
                    amount(nearest.resource(), nearest.used() - nearest.limit()),
                    amount(nearest.resource(), nearest.limit()));
        }
        return ofConnection(shortage);
    }

    private String ofSpan(int task) {
        String who = "span " + inputs.eligibleSpans().get(task).facts().spanId() + " of must fits no year: ";
        return who
                + WhyImpossible.words(inputs, problem, task)
                        .orElseGet(() -> tooLarge(problem.tasks().get(task)));
    }

    /** Where its years have days for it, it takes more than each of them has. */
    private String tooLarge(Task task) {
        var parts = new ArrayList<String>();
        for (int resource = 0; resource < problem.resources(); resource++) {
            double most = 0;
            for (int year = task.firstYear(); year <= task.lastYear(); year++) {
                most = Math.max(most, problem.limits().get(year).get(resource));
            }
            double takes = task.uses().get(resource);
            if (takes > most) {
                parts.add("it alone takes " + amount(resource, takes) + ", " + amount(resource, takes - most)
                        + " more than the " + amount(resource, most) + " there at most");
            }
        }
        return parts.isEmpty()
                ? "years with enough money have too few crew-hours for it, and the other way round"
                : String.join("; ", parts);
    }

    private String ofConnection(Shortage shortage) {
        if (shortage instanceof Shortage.NoWay none) {
            Connection connection = inputs.connectPlan().usable().get(none.demand());
            return "connection " + connection.name() + ", a must, cannot be served"
                    + connection.neededBy().map(day -> " by " + day).orElse("") + ", whatever is done";
        }
        Shortage.NotServed missed = (Shortage.NotServed) shortage;
        return "connection "
                + inputs.connectPlan().usable().get(missed.demand()).name()
                + ", a must, is not served: on its way of least price " + shortBy(missed.shortBy());
    }

    private String shortBy(List<Double> amounts) {
        var parts = new ArrayList<String>();
        for (int resource = 0; resource < amounts.size(); resource++) {
            if (amounts.get(resource) > 0) {
                parts.add(amount(resource, amounts.get(resource)));
            }
        }
        return parts.isEmpty() ? "other work is in its place" : String.join(" and ", parts) + " are short";
    }

    private String amount(int resource, double value) {
        return resource == YearProblem.MONEY
                ? String.format(Locale.ROOT, "%,.0f %s", value, currency)
                : String.format(Locale.ROOT, "%,.1f crew-hours", value);
    }

    private static String years(int first, int last) {
        return first == last ? "year " + (first + 1) : "years " + (first + 1) + " to " + (last + 1);
    }
}
