package org.spanroom.model.learn;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.effort.RateSettings;

/**
 * All that a field book says of the numbers of a run. Proposals; nothing is applied.
 *
 * @param entries how many entries count
 * @param spans of how many spans
 * @param spansOfRun how many of them the run has
 * @param opened how many ducts of the run were opened
 * @param lastDay day of the latest entry; empty where there is none
 * @param rates the proposed rates, all of them
 */
public record LearnResults(
        int entries,
        int spans,
        int spansOfRun,
        int opened,
        Optional<LocalDate> lastDay,
        RateSettings rates,
        List<RateChange> rateChanges,
        List<FrictionChange> frictionChanges,
        List<ChanceChange> chanceChanges,
        List<TotalsRow> totals,
        List<LeftOut> leftOut) {
    public LearnResults {
        rateChanges = List.copyOf(rateChanges);
        frictionChanges = List.copyOf(frictionChanges);
        chanceChanges = List.copyOf(chanceChanges);
        totals = List.copyOf(totals);
        leftOut = List.copyOf(leftOut);
    }
}
