package org.spanroom.output.columns;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns that say which span a row is, and what is recorded of its duct. */
final class IdentityColumns {
    private IdentityColumns() {}

    static List<Column<RankedSpan>> all() {
        return List.of(
                SpanColumns.DUCT,
                SpanColumns.BANK,
                Column.integer(
                        "bank_place",
                        "bank_place",
                        CellRange.WHOLE,
                        "Place beside the other ducts of its section by the names of the ducts, for drawing them side by "
                                + "side: 0 in the middle, positive to the right of the line as drawn. No surveyed position.",
                        RankedSpan::bankPlace),
                Column.text(
                        "routes",
                        "routes",
                        "The drawn routes that the span is made of, in order, joined by ;.",
                        span(s -> String.join(";", s.routeIds()))),
                SpanColumns.VAULT_A,
                SpanColumns.VAULT_B,
                SpanColumns.LENGTH,
                Column.text("owner", "owner", "The owner, as recorded.", duct(Duct::owner)),
                Column.text(
                        "condition",
                        "condition",
                        CellRange.oneOf(Stream.of(Condition.values()).map(IdentityColumns::word)),
                        "Recorded state of the bore: sound, oval, collapsed, blocked or unknown.",
                        duct(d -> word(d.condition()))),
                Column.flag("flooded", "flooded", "Whether the duct is recorded as flooded.", duct(Duct::flooded)),
                Column.text("surface", "surface", "Surface above the duct, as recorded.", duct(Duct::surface)),
                Column.integer(
                        "year_installed",
                        "year_inst",
                        CellRange.WHOLE,
                        "Year in which the duct was laid, as recorded.",
                        duct(Duct::installedYear)));
    }

    private static Function<RankedSpan, Object> span(Function<Span, Object> cell) {
        return row -> cell.apply(row.span());
    }

    private static Function<RankedSpan, Object> duct(Function<Duct, Object> cell) {
        return row -> cell.apply(row.span().duct());
    }

    private static String word(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
