package org.spanroom.program;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.model.program.EligibleSpan;
import org.spanroom.model.program.SpanFacts;

/**
 * What the money of a program buys where spans are taken by rank alone, for comparison.
 *
 * <p>Of the set-ups at one vault only the largest counts, as in (16.3), and over all years: that is more than a calendar can share, so the
 * comparison never makes the program look better than it is.
 */
public final class TakenByRank {
    private final Map<String, Double> paidMoney = new HashMap<>();

    private TakenByRank() {}

    /** Returns the positions that the spans add which come first by rank, up to the first one that the rest of the money does not cover. */
    public static int positions(Collection<EligibleSpan> spans, double money) {
        List<EligibleSpan> byRank = spans.stream()
                .filter(span -> span.facts().rank().isPresent())
                .sorted(Comparator.comparingInt(span -> span.facts().rank().getAsInt()))
                .toList();
        var taken = new TakenByRank();
        double leftMoney = money;
        int positions = 0;
        for (EligibleSpan span : byRank) {
            leftMoney -= taken.addMoney(span);
            if (leftMoney < 0) {
                break;
            }
            positions += span.facts().positionsGained();
        }
        return positions;
    }

    /** Returns what a span costs in addition to those before it. */
    private double addMoney(EligibleSpan span) {
        SpanFacts facts = span.facts();
        return span.budgetMoney()
                - sharedMoney(facts.vaultA(), facts.sharedAHours(), span)
                - sharedMoney(facts.vaultB(), facts.sharedBHours(), span);
    }

    private double sharedMoney(String vault, double hours, EligibleSpan span) {
        String place = vault + (span.facts().isNight() ? " by night" : "");
        double setUpMoney = hours * span.facts().siteHourMoney() * span.budgetRatio();
        double knownMoney = paidMoney.getOrDefault(place, 0.0);
        paidMoney.put(place, Math.max(knownMoney, setUpMoney));
        return Math.min(knownMoney, setUpMoney);
    }
}
