package org.spanroom.output.columns;

import java.util.List;
import org.spanroom.model.rank.FieldCheck;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.GeometryKind;
import org.spanroom.output.table.Shape;
import org.spanroom.output.table.Table;

/** The columns of what to go and look at first. */
public final class FieldCheckColumns {
    public static final Table<FieldCheck> TABLE = Table.layer(
            "field_checks",
            "One row for each measurement that may change the top of the ranking, the largest expected change first.",
            GeometryKind.POINT,
            row -> Shape.point(row.vault().lonDeg(), row.vault().latDeg()),
            List.of(
                    Column.text(
                            "span_id",
                            "span_id",
                            "Name of the span.",
                            row -> row.span().span().id()),
                    Column.integer(
                            "rank",
                            "rank",
                            "Rank of the span, by what is known today.",
                            row -> row.span().rank()),
                    Column.text(
                            "unknown",
                            "unknown",
                            "What has not been measured: friction, sizes, contents or condition.",
                            row -> row.unknown().key()),
                    Column.real(
                            "expected_change_pct",
                            "change_pct",
                            1,
                            "How much the chance of a wrong decision for or against the span decreases once "
                                    + "this is known.",
                            row -> 100 * row.changeRatio()),
                    Column.real(
                            "top_chance_pct",
                            "top_pct",
                            1,
                            "Chance that the span belongs to the top, by what is known today.",
                            row -> 100 * row.topRatio()),
                    Column.text(
                            "vault",
                            "vault",
                            "The vault to open.",
                            row -> row.vault().id()),
                    Column.text(
                            "duct",
                            "duct",
                            "The duct to look at there.",
                            row -> row.span().span().duct().id()),
                    Column.text(
                            "contents_source",
                            "cont_src",
                            "Source of the duct contents: recorded or assumed.",
                            row -> row.span().span().duct().contentsSource().key()),
                    Column.text(
                            "look_at",
                            "look_at",
                            "What to do there.",
                            row -> row.unknown().whatToLookAt()),
                    Column.text(
                            "cautions",
                            "cautions",
                            "Cautions for the crew at this vault, joined by ;.",
                            row -> String.join("; ", row.cautions()))));

    private FieldCheckColumns() {}
}
