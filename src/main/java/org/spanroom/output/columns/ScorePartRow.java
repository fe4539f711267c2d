package org.spanroom.output.columns;

import java.util.List;
import java.util.stream.IntStream;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.Ranked;
import org.spanroom.model.rank.Score;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** What one criterion gives to the score of one span, as a row. */
public record ScorePartRow(String spanId, CriterionInfo criterion, Score.Part part) {
    /** Enough for every quantity: criteria round their own. */
    private static final int QUANTITY_DECIMALS = 3;

    public static final Table<ScorePartRow> TABLE = Table.plain(
            "score_parts",
            "One row for each criterion of a span's score, span by span in the order of the ranking.",
            List.of(
                    Column.text("span_id", "span_id", "The span.", ScorePartRow::spanId),
                    Column.text(
                            "criterion",
                            "criterion",
                            "The criterion, a key of scoring.criteria.",
                            row -> row.criterion().key()),
                    Column.real(
                            "quantity_in_unit",
                            "quantity",
                            QUANTITY_DECIMALS,
                            "The quantity that the criterion judges.",
                            row -> row.part().quantityInUnit()),
                    Column.text(
                            "quantity_unit",
                            "quant_unit",
                            "Unit of the quantity.",
                            row -> row.criterion().unit()),
                    Column.real(
                            "value_ratio",
                            "value",
                            4,
                            "How good the quantity is by the criterion's curve, 0 to 1, before weighting.",
                            row -> row.part().valueRatio()),
                    Column.real(
                            "score_part_points",
                            "points",
                            2,
                            "Points that the criterion adds to the score.",
                            row -> row.part().points())));

    /** Returns a span's rows in the order of the criteria. */
    public static List<ScorePartRow> of(Ranked span) {
        Score score = span.score();
        return IntStream.range(0, score.size())
                .mapToObj(place -> new ScorePartRow(span.spanId(), score.criterion(place), score.part(place)))
                .toList();
    }
}
