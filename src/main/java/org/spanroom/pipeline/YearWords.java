package org.spanroom.pipeline;

import java.util.List;
import java.util.Locale;
import org.spanroom.model.program.Candidate;
import org.spanroom.program.annual.Shortage;
import org.spanroom.program.annual.YearProblem;

/** Why musts cannot be kept, in words. */
final class YearWords {
    private final List<Candidate> candidates;
    private final String currency;

    YearWords(List<Candidate> candidates, String currency) {
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
        Shortage.NotFound nearest = (Shortage.NotFound) shortage;
        return String.format(
                Locale.ROOT,
                "%s; the nearest plan takes %s in year %d, %s more than the %s there",
                nearest.isProven() ? "no plan keeps the musts within the limits" : "no plan was found that keeps the musts within the limits",
                amount(nearest.resource(), nearest.used()),
                nearest.year() + 1,
                amount(nearest.resource(), nearest.used() - nearest.limit()),
                amount(nearest.resource(), nearest.limit()));
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
