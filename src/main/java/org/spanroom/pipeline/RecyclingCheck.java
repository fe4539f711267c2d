package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.Locale;
import org.spanroom.finding.InputException;
import org.spanroom.model.effort.CostItem;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.MoneyRanges;
import org.spanroom.model.network.Span;

/**
 * Refuses rates by which a recycler would pay for the work. What a recycler pays is the only amount that lowers the cost of a recovery; where a
 * recovery costs less than its own set-ups, the rate has a misplaced decimal point or another unit.
 */
final class RecyclingCheck {
    private RecyclingCheck() {}

    /**
     * Checks the cost with all rates at their values.
     *
     * @throws InputException if the recovery costs less than the set-ups at its two vaults, which a neighbor may share
     */
    static void demand(Span span, Effort effort) {
        double setUpMoney = (effort.time().sharedAtAHours() + effort.time().sharedAtBHours()) * effort.siteHourMoney();
        if (effort.costMoney().of(CostItem.RECYCLING) < 0 && effort.recoveryMoney() < setUpMoney) {
            throw tooHigh(String.format(
                    Locale.ROOT,
                    "the recovery of span '%s' costs %.2f with what the recycler pays, less than its set-ups at two vaults (%.2f)",
                    span.id(),
                    effort.recoveryMoney(),
                    setUpMoney));
        }
    }

    /**
     * Checks the cost in draws of the rates.
     *
     * @throws InputException if low costs of the recovery are below 0
     */
    static void demand(Span span, MoneyRanges drawn) {
        if (drawn.recovery().lowMoney() < 0) {
            throw tooHigh(String.format(
                    Locale.ROOT,
                    "the recovery of span '%s' costs %.2f at the low end of the drawn rates",
                    span.id(),
                    drawn.recovery().lowMoney()));
        }
    }

    private static InputException tooHigh(String problem) {
        return new InputException(
                Path.of("rates"),
                problem,
                "Check recycling_money_per_kg: its value and its low and high are money per kilogram of innerduct.");
    }
}
