package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.spanroom.model.program.Candidate;
import org.spanroom.model.program.Connection;
import org.spanroom.program.annual.Shortage;
import org.spanroom.program.annual.YearProblem;

/** Why musts cannot be kept, in words. */
final class YearWords {
    private final List<Candidate> candidates;
    private final List<Connection> connections;
    private final String currency;

    YearWords(List<Candidate> candidates, List<Connection> connections, String currency) {
        this.connections = connections;
        this.candidates = candidates;
        this.currency = currency;
    }

    /** Returns one sentence that says by how much. */
    String of(Shortage shortage) {
        if (shortage instanceof Shortage.NoYear none) {
            Candidate candidate = candidates.get(none.task());
            return "span " + candidate.facts().spanId() + " of must has no possible year: it cannot begin before "
                    + candidate.notBefore() + ", or it alone exceeds each year's budget or hours";
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

    private String ofConnection(Shortage shortage) {
        if (shortage instanceof Shortage.NoWay none) {
            Connection connection = connections.get(none.demand());
            return "connection " + connection.name() + ", a must, cannot be served"
                    + connection.neededBy().map(day -> " by " + day).orElse("") + ", whatever is done";
        }
        Shortage.NotServed missed = (Shortage.NotServed) shortage;
        return "connection " + connections.get(missed.demand()).name() + ", a must, is not served: on its way of least price "
                + shortBy(missed.shortBy());
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
