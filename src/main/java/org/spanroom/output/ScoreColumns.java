package org.spanroom.output;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.CriterionInfo;
import org.spanroom.model.CriterionInfo.OwnColumn;
import org.spanroom.model.RankedSpan;
import org.spanroom.model.Score;

/** The columns that show each part of a score: its points, its value, and the quantity that it judges. */
final class ScoreColumns {
    private ScoreColumns() {}

    /** Returns the columns of the given criteria. */
    static List<Column<RankedSpan>> all(List<CriterionInfo> criteria) {
        var columns = new ArrayList<Column<RankedSpan>>();
        for (int place = 0; place < criteria.size(); place++) {
            CriterionInfo criterion = criteria.get(place);
            columns.addAll(points(criterion, place));
            if (criterion.ownColumn().isPresent()) {
                columns.add(quantity(criterion, criterion.ownColumn().get(), place));
            }
        }
        return columns;
    }

    private static List<Column<RankedSpan>> points(CriterionInfo criterion, int place) {
        return List.of(
                Column.real(
                        criterion.key() + "_points",
                        criterion.stem() + "_pts",
                        2,
                        "Part of the score that the criterion " + criterion.key() + " gives.",
                        row -> part(row, criterion, place, Score.Part::points)),
                Column.real(
                        criterion.key() + "_value",
                        criterion.stem() + "_val",
                        4,
                        "How good " + criterion.quantityColumn()
                                + " is by the criterion's curve, 0 to 1, before weighting.",
                        row -> part(row, criterion, place, Score.Part::valueRatio)));
    }

    private static Column<RankedSpan> quantity(CriterionInfo criterion, OwnColumn own, int place) {
        return criterion.decimals() == 0
                ? Column.integer(
                        criterion.quantityColumn(),
                        own.shortName(),
                        own.meaning(),
                        row -> part(row, criterion, place, Score.Part::quantityInUnit))
                : Column.real(
                        criterion.quantityColumn(),
                        own.shortName(),
                        criterion.decimals(),
                        own.meaning(),
                        row -> part(row, criterion, place, Score.Part::quantityInUnit));
    }

    /** Scores of one ranking have their parts at the same places; one from elsewhere may have none. */
    private static OptionalDouble part(
            RankedSpan row, CriterionInfo criterion, int place, ToDoubleFunction<Score.Part> number) {
        Score score = row.score();
        boolean here = place < score.size() && score.criterion(place).equals(criterion);
        int found = here ? place : score.placeOf(criterion);
        return found < 0 ? OptionalDouble.empty() : OptionalDouble.of(number.applyAsDouble(score.part(found)));
    }
}
