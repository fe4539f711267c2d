package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.CriterionInfo.OwnColumn;
import org.spanroom.model.rank.Ranked;
import org.spanroom.model.rank.Score;
import org.spanroom.output.table.Column;

/** The columns that show each part of a score: its points, its value, and the quantity that it judges. */
final class ScoreColumns {
    /** How the columns with the points and the value of a criterion end. */
    static final String POINTS = "_points";

    static final String VALUE = "_value";

    private ScoreColumns() {}

    /** Returns the columns of the given criteria. */
    static List<Column<Ranked>> all(List<CriterionInfo> criteria) {
        var columns = new ArrayList<Column<Ranked>>();
        for (int place = 0; place < criteria.size(); place++) {
            CriterionInfo criterion = criteria.get(place);
            columns.addAll(points(criterion, place));
            if (criterion.ownColumn().isPresent()) {
                columns.add(quantity(criterion, criterion.ownColumn().get(), place));
            }
        }
        return columns;
    }

    private static List<Column<Ranked>> points(CriterionInfo criterion, int place) {
        return List.of(
                Column.real(
                        criterion.key() + POINTS,
                        criterion.stem() + "_pts",
                        2,
                        "Part of the score that the criterion " + criterion.key() + " gives.",
                        row -> part(row, criterion, place, Score.Part::points)),
                Column.real(
                        criterion.key() + VALUE,
                        criterion.stem() + "_val",
                        4,
                        "How good " + criterion.quantityColumn()
                                + " is by the criterion's curve, 0 to 1, before weighting.",
                        row -> part(row, criterion, place, Score.Part::valueRatio)));
    }

    private static Column<Ranked> quantity(CriterionInfo criterion, OwnColumn own, int place) {
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
            Ranked row, CriterionInfo criterion, int place, ToDoubleFunction<Score.Part> number) {
        Score score = row.score();
        boolean here = place < score.size() && score.criterion(place).equals(criterion);
        int found = here ? place : score.placeOf(criterion);
        return found < 0 ? OptionalDouble.empty() : OptionalDouble.of(number.applyAsDouble(score.part(found)));
    }
}
