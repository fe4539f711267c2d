package org.spanroom.pipeline;

import org.spanroom.effort.DrawnCosts;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.RateDraws;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.UncertaintySettings;

/** Drawings of all rates, which all spans of a run share: wages and prices move together. Safe for use by several threads. */
final class RateDrawings {
    /** Each costs two accounts a span; a simulation of more samples uses them in turn. */
    private static final int MOST = 64;

    private final RateDraws drawings;

    /** @param rates at their values */
    RateDrawings(UncertaintySettings settings, Rates rates) {
        drawings = RateDraws.sampled(rates, settings.seed(), Math.min(MOST, settings.samples()));
    }

    int count() {
        return drawings.count();
    }

    /** Returns what a thread calculates costs in, one span after another. */
    DrawnCosts begin() {
        return new DrawnCosts(drawings);
    }

    /** Returns what a span costs in each drawing; nothing drawn if no innerduct comes out. */
    MoneyDraws of(Assessment assessed) {
        return of(assessed, begin());
    }

    /** Returns the same, calculated in what {@link #begin} gave to the thread. */
    MoneyDraws of(Assessment assessed, DrawnCosts costs) {
        return assessed.effort()
                .map(Effort::quantities)
                .map(quantities -> MoneyDraws.of(quantities, costs))
                .orElse(MoneyDraws.NONE);
    }
}
