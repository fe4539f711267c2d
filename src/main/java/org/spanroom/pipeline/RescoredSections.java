package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RescoredSpan;
import org.spanroom.output.RescoredCells;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.table.Column;
import org.spanroom.rank.SectionGroups;

/** The sections that the spans of an earlier run form under another scoring, from what that run wrote of its spans. */
final class RescoredSections {
    private static final List<Column<?>> NEEDED = List.of(
            SpanColumns.BANK,
            SpanColumns.DUCT,
            SpanColumns.VAULT_A,
            SpanColumns.VAULT_B,
            SpanColumns.SPARE,
            SpanColumns.LENGTH,
            SpanColumns.POSITIONS_NOW,
            SpanColumns.POSITIONS_AFTER,
            SpanColumns.POSITIONS_GAINED);

    private final RescoredCells cells;
    private final List<RescoredSpan> spans;
    private final Set<String> keptIds;

    private RescoredSections(RescoredCells cells, List<RescoredSpan> spans, Set<String> keptIds) {
        this.cells = cells;
        this.spans = spans;
        this.keptIds = keptIds;
    }

    /**
     * Finds the sections.
     *
     * @param columns the names of the columns that the earlier run wrote of its spans
     * @param spans the best first
     * @param keptIds the names of the spans that are written; a section is found where one of its spans is
     * @return the best first; nothing where the earlier run did not write what they are made of
     */
    static Optional<List<RankedSection>> find(List<String> columns, List<RescoredSpan> spans, Set<String> keptIds) {
        var cells = new RescoredCells(columns);
        boolean written = cells.has(NEEDED.stream().map(Column::name).toList());
        return written ? Optional.of(new RescoredSections(cells, spans, keptIds).sections()) : Optional.empty();
    }

    private List<RankedSection> sections() {
        int ranked = (int) spans.stream().filter(RescoredSections::isRanked).count();
        var groups = SectionGroups.of(spans.size(), ranked, place -> RescoredSums.section(spans.get(place), cells));
        var sections = new ArrayList<RankedSection>(groups.size());
        for (int section = 0; section < groups.size(); section++) {
            if (isKept(groups.members(section))) {
                sections.add(section(section, groups));
            }
        }
        return sections;
    }

    private boolean isKept(int[] members) {
        return Arrays.stream(members)
                .anyMatch(place -> keptIds.contains(spans.get(place).spanId()));
    }

    private RankedSection section(int section, SectionGroups groups) {
        var counts = RankedSection.Counts.NONE;
        for (int place : groups.members(section)) {
            RescoredSpan span = spans.get(place);
            counts = counts.plus(
                            isRanked(span),
                            Boolean.TRUE.equals(cells.value(span, SpanColumns.SPARE.name())),
                            (int) cells.number(span, SpanColumns.POSITIONS_NOW),
                            (int) cells.number(span, SpanColumns.POSITIONS_AFTER),
                            (int) cells.number(span, SpanColumns.POSITIONS_GAINED))
                    .plusAssumed(isRanked(span) && isAssumed(span) ? 1 : 0);
        }
        RescoredSpan first = spans.get(groups.first(section));
        var rank = section < groups.countRanked() ? OptionalInt.of(section + 1) : OptionalInt.empty();
        return new RankedSection(RescoredSums.section(first, cells), rank, counts, first(first));
    }

    private RankedSection.First first(RescoredSpan span) {
        return new RankedSection.First(
                span.spanId(),
                cells.text(span, SpanColumns.VAULT_A),
                cells.text(span, SpanColumns.VAULT_B),
                span.rank(),
                span.score().totalPoints(),
                cells.number(span, SpanColumns.LENGTH),
                span.verdict().cautionCount(),
                span.lonLat());
    }

    private static boolean isRanked(RescoredSpan span) {
        return span.rank().isPresent();
    }

    private boolean isAssumed(RescoredSpan span) {
        return cells.text(span, SpanColumns.CONTENTS_SOURCE).equals(ContentsSource.ASSUMED.key());
    }
}
