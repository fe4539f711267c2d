package org.spanroom.pipeline;

import java.util.Optional;
import java.util.Set;
import org.spanroom.config.RunConfig;
import org.spanroom.model.ColumnGroup;
import org.spanroom.model.network.SpanList;
import org.spanroom.output.PackedResult;
import org.spanroom.output.PackedSpans;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.rank.Rescoring;

/** Where the rows of a run's spans are kept, packed, from their assessment until they are written. */
final class RowStore {
    private RowStore() {}

    /** Returns what the tables of spans depend on, before anything is read: every column that a run may have. */
    static SpanLayout layoutOfAll(RunConfig config) {
        return layout(config, false, ColumnGroup.all());
    }

    private static SpanLayout layout(RunConfig config, boolean hasElevations, Set<ColumnGroup> groups) {
        return new SpanLayout(
                new Rescoring(config.scoring(), config.room()).criteria(),
                hasElevations,
                config.inputs().routes().keep(),
                groups,
                config.inputs().fieldBook().file().isPresent());
    }

    /** Returns the store for rows; nothing where groups of columns are asked for, which take a second assessment. */
    static Optional<PackedSpans> of(RunConfig config, SpanList spans) {
        return ColumnGroup.named(config.output().columns()).isEmpty()
                ? Optional.of(
                        new PackedSpans(layout(config, spans.hasElevations(), Set.of()), config.units(), spans.size()))
                : Optional.empty();
    }

    /** Returns the rows with where each span stands; nothing where the store could not hold all rows. */
    static Optional<PackedResult> result(PackedSpans rows, AssessedSpans ranked, BankPlaces bankPlaces) {
        return rows.isComplete()
                ? Optional.of(
                        new PackedResult(rows, ranked.figures(), place -> ranked.placed(place, bankPlaces.at(place))))
                : Optional.empty();
    }
}
