package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.pull.EndPull;
import org.spanroom.model.pull.Friction;
import org.spanroom.model.pull.InnerductPull;
import org.spanroom.model.pull.PullForces;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** One innerduct of one span in its turn, as a row. */
public record PullRow(Span span, InnerductPull pull) {
    public static final Table<PullRow> TABLE = Table.plain(
            "pulls",
            "One row for each innerduct that is to be pulled out, in the order of pulling, span by span in the "
                    + "order of the"
                    + " ranking.",
            columns());

    /** Returns a span's pulls in their order. */
    public static List<PullRow> of(RankedSpan row) {
        return row.assessment().pull().pulls().stream()
                .map(pull -> new PullRow(row.span(), pull))
                .toList();
    }

    private static List<Column<PullRow>> columns() {
        var columns = new ArrayList<>(turn());
        columns.addAll(load());
        for (SpanEnd end : SpanEnd.values()) {
            for (Friction friction : Friction.values()) {
                columns.addAll(forces(end, friction));
            }
            columns.addAll(tightest(end));
        }
        return columns;
    }

    private static List<Column<PullRow>> turn() {
        return List.of(
                Column.text(
                        "span_id",
                        "span_id",
                        "The span that it lies in.",
                        row -> row.span().id()),
                Column.text(
                        "contents_source",
                        "cont_src",
                        "Source of the duct contents: recorded or assumed.",
                        row -> row.span().duct().contentsSource().key()),
                Column.integer(
                        "turn", "turn", "Its position in the order of pulling, from 1.", pulled(InnerductPull::turn)),
                Column.text("innerduct", "innerduct", "Name of the innerduct.", innerduct(Innerduct::id)),
                Column.text(
                        "reason",
                        "reason",
                        "Why it is pulled at this point: only_one, empty, lightest or last.",
                        pulled(pull -> pull.reason().key())));
    }

    private static List<Column<PullRow>> load() {
        return List.of(
                Column.real(
                        "outside_diameter_mm",
                        "outside_mm",
                        2,
                        "Its outside diameter.",
                        innerduct(Innerduct::outsideDiameterMm)),
                Column.real("wall_mm", "wall_mm", 2, "Its wall.", innerduct(Innerduct::wallMm)),
                Column.integer(
                        "cables",
                        "cables",
                        "How many cables lie in it.",
                        innerduct(i -> i.cables().size())),
                Column.real(
                        "neighbor_n_per_m",
                        "neighb_npm",
                        3,
                        "Weight of the duct's other contents that rests on it when it is pulled.",
                        pulled(InnerductPull::neighborNPerM)),
                Column.real(
                        "wedge_ratio",
                        "wedge",
                        3,
                        "Factor on its friction where it is wedged; 1 where it lies free.",
                        pulled(InnerductPull::wedgeRatio)));
    }

    private static List<Column<PullRow>> forces(SpanEnd end, Friction friction) {
        String name = end.key() + "_" + friction.key() + "_n";
        String shortName = end.key() + "_" + PullColumns.shortWord(friction) + "_n";
        return List.of(
                Column.real(
                        "pull_out_at_" + name,
                        "p_" + shortName,
                        1,
                        String.format(
                                Locale.ROOT,
                                "Steady pull on it when it comes out at end %s, friction %s.",
                                end.key(),
                                friction.key()),
                        force(end, friction, PullForces::pullN)),
                Column.real(
                        "hold_for_" + name,
                        "h_" + shortName,
                        1,
                        "Force that holds its cables during that pull, at end "
                                + end.opposite().key() + ".",
                        force(end, friction, PullForces::holdN)));
    }

    private static List<Column<PullRow>> tightest(SpanEnd end) {
        String name = end.key();
        return List.of(
                Column.text(
                        "tightest_limit_" + name,
                        "tight_" + name,
                        "Limit that is used most when it comes out at end " + name
                                + ", in the state of friction that spans are judged by.",
                        use(end, pull -> pull.tightest().kind().key())),
                Column.real(
                        "utilization_" + name + "_pct",
                        "util_" + name,
                        1,
                        "How far that limit is used up, breakaway included; above 100 it fails.",
                        use(end, pull -> pull.tightest().utilizationPercent())),
                Column.real(
                        "tightest_at_" + name + "_m",
                        "at_" + name + "_m",
                        2,
                        "Where, as distance along the span from vault_a.",
                        use(end, pull -> pull.tightest().atM())));
    }

    private static Function<PullRow, Object> pulled(Function<InnerductPull, Object> quantity) {
        return row -> quantity.apply(row.pull());
    }

    private static Function<PullRow, Object> innerduct(Function<Innerduct, Object> quantity) {
        return row -> quantity.apply(row.pull().innerduct());
    }

    private static Function<PullRow, Object> force(
            SpanEnd end, Friction friction, Function<PullForces, Object> quantity) {
        return row -> quantity.apply(row.pull().from(end).forces(friction));
    }

    private static Function<PullRow, Object> use(SpanEnd end, Function<EndPull, Object> quantity) {
        return row -> quantity.apply(row.pull().from(end));
    }
}
