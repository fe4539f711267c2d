package org.spanroom.output.columns;

import static java.util.stream.Collectors.joining;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.RejectedValue;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;

/** The columns of what is recorded of a span in addition, and of where its values come from. */
final class ProvenanceColumns {
    private ProvenanceColumns() {}

    /** @param hasFieldBook whether the run has a field book */
    static List<Column<RankedSpan>> all(boolean hasFieldBook) {
        var columns = new ArrayList<>(recorded());
        if (hasFieldBook) {
            columns.addAll(FieldRecordColumns.all());
        }
        columns.addAll(CircumstanceColumns.all());
        columns.addAll(EndFactColumns.all());
        columns.addAll(SizeColumns.all());
        return columns;
    }

    private static List<Column<RankedSpan>> recorded() {
        return List.of(
                SpanColumns.CONTENTS_SOURCE,
                Column.text(
                        "section_id",
                        "section_id",
                        "The section that the span is in: the spans of its bank between the same two vaults.",
                        span(s -> SectionKey.of(s).id())),
                SpanColumns.DRAWN_LENGTH,
                Column.text(
                        "position_quality",
                        "pos_qual",
                        "How well the position is known, as recorded.",
                        span(Span::positionQuality)),
                SpanColumns.ASSUMED,
                Column.text(
                        "rejected",
                        "rejected",
                        "What was recorded and could not be used, as terms joined by ;. The findings say why.",
                        duct(d -> d.rejected().stream()
                                .map(RejectedValue::name)
                                .distinct()
                                .collect(joining(";")))));
    }

    private static Function<RankedSpan, Object> span(Function<Span, Object> cell) {
        return row -> cell.apply(row.span());
    }

    private static Function<RankedSpan, Object> duct(Function<Duct, Object> cell) {
        return row -> cell.apply(row.span().duct());
    }
}
