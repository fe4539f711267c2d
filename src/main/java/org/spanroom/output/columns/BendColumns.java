package org.spanroom.output.columns;

import java.util.List;
import java.util.Locale;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Table;

/** The columns of the bends. */
public final class BendColumns {
    public static final Table<BendRow> TABLE = Table.layer(
            "bends",
            "One row for each bend, at its middle, span by span in the order of the ranking.",
            GeometryKind.POINT,
            BendRow::place,
            List.of(
                    Column.text(
                            "span_id",
                            "span_id",
                            "The span that bends.",
                            row -> row.span().id()),
                    Column.integer("bend_number", "number", "Place along the span, from 1.", BendRow::number),
                    Column.real(
                            "deflection_deg",
                            "deflection",
                            2,
                            "Size of the turn.",
                            row -> row.bend().deflection().deg()),
                    Column.text(
                            "turn",
                            "turn",
                            "Side to which it turns, seen from vault_a: left or right.",
                            row -> row.bend().turn().name().toLowerCase(Locale.ROOT)),
                    Column.real(
                            "start_m",
                            "start_m",
                            2,
                            "Distance along the drawn line where the turn begins.",
                            row -> row.bend().startM()),
                    Column.real(
                            "arc_length_m",
                            "arc_m",
                            2,
                            "Length over which it turns.",
                            row -> row.bend().arcLengthM()),
                    Column.real(
                            "radius_m",
                            "radius_m",
                            2,
                            "Radius of the center line.",
                            row -> row.bend().radiusM()),
                    Column.flag(
                            "radius_assumed",
                            "rad_assume",
                            "Whether the radius is the configured sweep radius, because no arc is drawn.",
                            row -> row.bend().radiusAssumed())));

    private BendColumns() {}
}
