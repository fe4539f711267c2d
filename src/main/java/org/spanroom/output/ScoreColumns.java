package org.spanroom.output;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.spanroom.model.Ranked;
import org.spanroom.model.Score;

/** The columns that show each part of a score: its points, its value, and the quantity that it judges. */
final class ScoreColumns {
    /** How the columns with the points and the value of a criterion end. */
    static final String POINTS = "_points";

    static final String VALUE = "_value";

    /**
     * How a criterion is shown.
     *
     * @param stem beginning of the short names
     * @param quantity name of the column that shows the quantity
     * @param own the quantity's column where no other part of the table has it; empty where one has
     */
    private record Shown(String key, String stem, String quantity, Optional<Own> own) {}

    /** A column of its own for a quantity. */
    private record Own(String shortName, int decimals, String meaning) {}

    private static final List<Shown> KNOWN = List.of(
            elsewhere("room_gained", "room", "cables_gained"),
            elsewhere("shortage", "short", "positions_before"),
            own(
                    "ease_pull",
                    "epull",
                    "ease_pull_pct",
                    "epull_pct",
                    2,
                    "How far the tightest limit of the pull is used up from the end that is worked from; above 100 it fails."),
            elsewhere("ease_bends", "ebend", "bend_total_deg"),
            own(
                    "ease_water",
                    "ewat",
                    "ease_water_places",
                    "ewat_n",
                    0,
                    "Where water must be dealt with, of duct and two vaults."),
            own(
                    "ease_access",
                    "eacc",
                    "ease_access_drawbacks",
                    "eacc_n",
                    0,
                    "What makes work at the vaults hard: a hard kind and a hard surface, at each end."),
            elsewhere("saving", "save", "saving_ratio"),
            elsewhere("permits_avoided", "pavo", "permits_avoided_count"),
            own(
                    "knowledge",
                    "know",
                    "knowledge_pct",
                    "know_pct",
                    2,
                    "Weighted share of what matters that is recorded rather than assumed."),
            elsewhere("length", "len", "length_m"));

    private ScoreColumns() {}

    /** Returns the criteria that the data dictionary knows. */
    static List<String> knownCriteria() {
        return KNOWN.stream().map(Shown::key).toList();
    }

    /** Finds the column that holds the quantity of a criterion. */
    static Optional<String> quantityColumn(String criterion) {
        return KNOWN.stream()
                .filter(shown -> shown.key().equals(criterion))
                .map(Shown::quantity)
                .findFirst();
    }

    /** Returns the columns of the given criteria. */
    static List<Column<Ranked>> all(List<String> criteria) {
        var columns = new ArrayList<Column<Ranked>>();
        for (int place = 0; place < criteria.size(); place++) {
            Shown shown = shown(criteria.get(place), place);
            columns.addAll(points(shown, place));
            if (shown.own().isPresent()) {
                columns.add(quantity(shown, shown.own().get(), place));
            }
        }
        return columns;
    }

    private static List<Column<Ranked>> points(Shown shown, int place) {
        return List.of(
                Column.real(
                        shown.key() + POINTS,
                        shown.stem() + "_pts",
                        2,
                        "Part of the score that the criterion " + shown.key() + " gives.",
                        row -> part(row, shown, place, Score.Part::points)),
                Column.real(
                        shown.key() + VALUE,
                        shown.stem() + "_val",
                        4,
                        "How good " + shown.quantity() + " is by the criterion's curve, 0 to 1, before weighting.",
                        row -> part(row, shown, place, Score.Part::valueRatio)));
    }

    private static Column<Ranked> quantity(Shown shown, Own own, int place) {
        return own.decimals() == 0
                ? Column.integer(
                        shown.quantity(),
                        own.shortName(),
                        own.meaning(),
                        row -> part(row, shown, place, Score.Part::quantityInUnit))
                : Column.real(
                        shown.quantity(),
                        own.shortName(),
                        own.decimals(),
                        own.meaning(),
                        row -> part(row, shown, place, Score.Part::quantityInUnit));
    }

    /** Scores of one ranking have their parts at the same places; one from elsewhere may have none. */
    private static OptionalDouble part(Ranked row, Shown shown, int place, ToDoubleFunction<Score.Part> number) {
        Score score = row.score();
        boolean here = place < score.size() && score.criterion(place).equals(shown.key());
        int found = here ? place : score.placeOf(shown.key());
        return found < 0 ? OptionalDouble.empty() : OptionalDouble.of(number.applyAsDouble(score.part(found)));
    }

    private static Shown shown(String key, int place) {
        for (Shown shown : KNOWN) {
            if (shown.key().equals(key)) {
                return shown;
            }
        }
        String meaning = "The quantity that the criterion " + key + " judges, in its unit.";
        return own(key, "part" + place, key + "_in_unit", "part" + place + "_q", 3, meaning);
    }

    private static Shown elsewhere(String key, String stem, String quantity) {
        return new Shown(key, stem, quantity, Optional.empty());
    }

    private static Shown own(String key, String stem, String quantity, String shortName, int decimals, String meaning) {
        return new Shown(key, stem, quantity, Optional.of(new Own(shortName, decimals, meaning)));
    }
}
