package org.spanroom.pipeline;

import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.model.effort.Effort;
import org.spanroom.model.effort.Rates;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.UncertaintySettings;

/** Drawings of all rates, which all spans of a run share: wages and prices move together. Safe for use by several threads. */
final class RateDrawings {
    /** Each costs two accounts a span; a simulation of more samples uses them in turn. */
    private static final int MOST = 64;

    private final List<Rates> drawings;

    /** @param rates at their values */
    RateDrawings(UncertaintySettings settings, Rates rates) {
        drawings = IntStream.range(0, Math.min(MOST, settings.samples()))
                .mapToObj(sample -> rates.sampled(settings.seed(), sample))
                .toList();
    }

    int count() {
        return drawings.size();
    }

    /** Returns what a span costs in each drawing; nothing drawn if no innerduct comes out. */
    MoneyDraws of(Assessment assessed) {
        return assessed.effort()
                .map(Effort::quantities)
                .map(quantities -> MoneyDraws.of(quantities, drawings))
                .orElse(MoneyDraws.NONE);
    }
}
