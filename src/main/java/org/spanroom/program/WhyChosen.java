package org.spanroom.program;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.spanroom.model.Counted;
import org.spanroom.model.program.Connection;
import org.spanroom.model.program.EligibleSpan;

/** Why a span is in a program, in words. */
final class WhyChosen {
    private WhyChosen() {}

    /**
     * Returns the reasons, the decisive one first.
     *
     * @param needing the connections that need it
     * @param shares the span before it, whose set-up it shares
     * @param budgetMoney its cost against the budget, what it shares deducted
     */
    static String words(EligibleSpan span, List<Connection> needing, Optional<String> shares, double budgetMoney) {
        var reasons = new ArrayList<String>();
        if (span.isMust()) {
            reasons.add("it is on the list of musts");
        }
        if (!needing.isEmpty()) {
            reasons.add("needed by "
                    + String.join(", ", needing.stream().map(Connection::name).toList()));
        }
        int positions = span.facts().positionsGained();
        if (span.worthMoney() > 0 && positions > 0) {
            reasons.add(String.format(
                    Locale.ROOT, "adds %s at %,.0f each", Counted.of(positions, "position"), budgetMoney / positions));
        }
        shares.ifPresent(other -> reasons.add("shares a set-up with " + other));
        return String.join("; ", reasons);
    }
}
