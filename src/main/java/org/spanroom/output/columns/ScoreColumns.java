package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.model.rank.CriterionInfo.OwnColumn;
import org.spanroom.model.rank.Ranked;
import org.spanroom.model.rank.Score;
import org.spanroom.output.table.CellRange;
import org.spanroom.output.table.Column;

/** The columns of the quantities that a score judges and no other part of the table shows. */
final class ScoreColumns {
    private ScoreColumns() {}

    /** Returns the columns of the quantities that no other part of the table has. */
    static List<Column<Ranked>> quantities(List<CriterionInfo> criteria) {
        var columns = new ArrayList<Column<Ranked>>();
        for (int place = 0; place < criteria.size(); place++) {
            CriterionInfo criterion = criteria.get(place);
            if (criterion.ownColumn().isPresent()) {
                columns.add(quantity(criterion, criterion.ownColumn().get(), place));
            }
        }
        return columns;
    }

    private static Column<Ranked> quantity(CriterionInfo criterion, OwnColumn own, int place) {
        return criterion.decimals() == 0
                ? Column.integer(
                        criterion.quantityColumn(),
                        own.shortName(),
                        range(own),
                        own.meaning(),
                        row -> part(row, criterion, place, Score.Part::quantityInUnit))
                : Column.real(
                        criterion.quantityColumn(),
                        own.shortName(),
                        criterion.decimals(),
                        range(own),
                        own.meaning(),
                        row -> part(row, criterion, place, Score.Part::quantityInUnit));
    }

    private static CellRange range(OwnColumn own) {
        return new CellRange.Numbers(0, own.mostInUnit());
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
