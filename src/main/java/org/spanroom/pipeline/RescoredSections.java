package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.rank.RankedSection;
import org.spanroom.model.rank.RescoredSpan;
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

    private final List<String> columns;
    private final List<RescoredSpan> spans;
    private final Set<String> keptIds;

    private RescoredSections(List<String> columns, List<RescoredSpan> spans, Set<String> keptIds) {
        this.columns = columns;
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
        boolean written = NEEDED.stream().map(Column::name).allMatch(columns::contains);
        return written ? Optional.of(new RescoredSections(columns, spans, keptIds).sections()) : Optional.empty();
    }

    private List<RankedSection> sections() {
        int ranked = (int) spans.stream().filter(RescoredSections::isRanked).count();
        var groups = SectionGroups.of(spans.size(), ranked, place -> key(spans.get(place)));
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
                            Boolean.TRUE.equals(value(span, SpanColumns.SPARE)),
                            (int) number(span, SpanColumns.POSITIONS_NOW),
                            (int) number(span, SpanColumns.POSITIONS_AFTER),
                            (int) number(span, SpanColumns.POSITIONS_GAINED))
                    .plusAssumed(isRanked(span) && isAssumed(span) ? 1 : 0);
        }
        RescoredSpan first = spans.get(groups.first(section));
        var rank = section < groups.countRanked() ? OptionalInt.of(section + 1) : OptionalInt.empty();
        return new RankedSection(key(first), rank, counts, first(first));
    }

    private RankedSection.First first(RescoredSpan span) {
        return new RankedSection.First(
                span.spanId(),
                text(span, SpanColumns.VAULT_A),
                text(span, SpanColumns.VAULT_B),
                span.rank(),
                span.score().totalPoints(),
                number(span, SpanColumns.LENGTH),
                span.verdict().cautionCount(),
                span.lonLat());
    }

    private SectionKey key(RescoredSpan span) {
        return SectionKey.of(
                text(span, SpanColumns.BANK),
                text(span, SpanColumns.DUCT),
                text(span, SpanColumns.VAULT_A),
                text(span, SpanColumns.VAULT_B));
    }

    private static boolean isRanked(RescoredSpan span) {
        return span.rank().isPresent();
    }

    private boolean isAssumed(RescoredSpan span) {
        return columns.contains(SpanColumns.CONTENTS_SOURCE.name())
                && text(span, SpanColumns.CONTENTS_SOURCE).equals(ContentsSource.ASSUMED.key());
    }

    private Object value(RescoredSpan span, Column<?> column) {
        Object value = span.recorded().get(columns.indexOf(column.name()));
        return value == null ? "" : value;
    }

    private String text(RescoredSpan span, Column<?> column) {
        return value(span, column).toString();
    }

    private double number(RescoredSpan span, Column<?> column) {
        return value(span, column) instanceof Number number ? number.doubleValue() : 0;
    }
}
