package org.spanroom.input.fieldbook;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.CalendarDay;
import org.spanroom.model.fieldwork.FactKind;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.RowProblem;

/** Reads the cells that a close-out file and the field book have in common: fact, planned, value and unit, and days. */
final class FactReader {
    private static final int LONGEST_TEXT = 500;
    private static final LocalDate FIRST_DAY = LocalDate.of(1950, 1, 1);
    private static final List<String> YES = List.of("yes", "y", "true", "1", "x");
    private static final List<String> NO = List.of("no", "n", "false", "0");

    private final FactRanges ranges;

    FactReader(PlausibleRanges plausible) {
        this.ranges = new FactRanges(plausible);
    }

    /** One row with what is wrong with it; a cell that cannot be read is empty and has a problem. */
    static final class Row {
        private final FactRow cells;
        private final List<RowProblem> problems = new ArrayList<>();

        Row(FactRow cells) {
            this.cells = cells;
            cells.malformed().ifPresent(problems::add);
        }

        String cell(String column) {
            return cells.cell(column);
        }

        long line() {
            return cells.line();
        }

        void reject(String column, String problem, String remedy) {
            problems.add(new RowProblem(line(), column, problem, remedy));
        }

        List<RowProblem> problems() {
            return List.copyOf(problems);
        }

        boolean isGood() {
            return problems.isEmpty();
        }
    }

    Optional<FieldFact> fact(Row row) {
        String word = FactWords.word(row.cell("fact"));
        Optional<FieldFact> fact = FieldFact.find(word);
        if (fact.isEmpty()) {
            List<String> facts =
                    Arrays.stream(FieldFact.values()).map(FieldFact::key).toList();
            row.reject(
                    "fact",
                    word.isEmpty() ? "no fact is named" : "'" + row.cell("fact") + "' is not a fact",
                    word.isEmpty()
                            ? "Name one, such as status or cables_found; the data dictionary lists them."
                            : FactWords.meant(word, facts) + " The data dictionary lists them.");
        }
        return fact;
    }

    /** Returns the value; empty where it cannot be read, and the row then has a problem. */
    Optional<FactValue> value(Row row, FieldFact fact) {
        return value(row, fact, "value", Optional.empty());
    }

    /**
     * Returns what the sheet said; empty where it said nothing.
     *
     * @param value what was found, whose unit is that of both
     */
    Optional<FactValue> planned(Row row, FieldFact fact, Optional<FactValue> value) {
        return row.cell("planned").isEmpty() ? Optional.empty() : value(row, fact, "planned", value);
    }

    private Optional<FactValue> value(Row row, FieldFact fact, String column, Optional<FactValue> found) {
        String text = row.cell(column);
        if (!fact.kind().isNumber() && !row.cell("unit").isEmpty()) {
            row.reject("unit", fact.key() + " has no unit, and '" + row.cell("unit") + "' is given", "Leave it empty.");
            return Optional.empty();
        }
        return switch (fact.kind()) {
            case WORD -> column.equals("planned") ? text(row, column, text) : oneOf(row, fact, column, text);
            case ANSWER -> answer(row, column, text);
            case DAY -> day(row, column, text).map(day -> FactValue.ofText(day.toString()));
            case TEXT -> text(row, column, text);
            default -> number(row, fact, column, text, found);
        };
    }

    private static Optional<FactValue> text(Row row, String column, String text) {
        if (text.length() > LONGEST_TEXT) {
            row.reject(column, "it has " + text.length() + " characters", "At most " + LONGEST_TEXT + " are kept.");
            return Optional.empty();
        }
        return Optional.of(FactValue.ofText(text));
    }

    private static Optional<FactValue> oneOf(Row row, FieldFact fact, String column, String text) {
        String word = FactWords.word(text);
        if (!fact.words().contains(word)) {
            row.reject(column, "'" + text + "' is not a value of " + fact.key(), FactWords.meant(word, fact.words()));
            return Optional.empty();
        }
        return Optional.of(FactValue.ofText(word));
    }

    private static Optional<FactValue> answer(Row row, String column, String text) {
        String word = FactWords.word(text);
        if (YES.contains(word) || NO.contains(word)) {
            return Optional.of(FactValue.ofText(YES.contains(word) ? "yes" : "no"));
        }
        row.reject(column, "'" + text + "' is neither yes nor no", "Write yes or no.");
        return Optional.empty();
    }

    /** Returns the day of a cell; empty where it cannot be read, and the row then has a problem. */
    static Optional<LocalDate> day(Row row, String column, String text) {
        Optional<LocalDate> day = CalendarDay.find(text).filter(found -> !found.isBefore(FIRST_DAY));
        if (day.isPresent()) {
            return day;
        }
        row.reject(
                column,
                text.isEmpty() ? "the day is missing" : "'" + text + "' is not a day",
                "Write year, month and day, such as 2027-03-31.");
        return Optional.empty();
    }

    private Optional<FactValue> number(Row row, FieldFact fact, String column, String text, Optional<FactValue> found) {
        Optional<FactNumber> number = FactNumber.parse(text);
        if (number.isEmpty()) {
            boolean ambiguous = text.matches("[-+]?\\d{1,3}(,\\d{3})+\\D*");
            row.reject(
                    column,
                    "'" + text + "' is not a number" + (ambiguous ? " that can mean only one thing" : ""),
                    ambiguous ? "Write it without a mark of thousands, and decimals behind a point." : expected(fact));
            return Optional.empty();
        }
        Optional<FactUnit> unit = unit(row, fact, column, number.get().orIn(found.map(FactValue::unit)));
        if (unit.isEmpty()) {
            return Optional.empty();
        }
        double inUnit = number.get().inUnit();
        if (FactRanges.isWhole(fact.kind()) && inUnit != Math.rint(inUnit)) {
            row.reject(column, text + " is not a whole number", expected(fact));
            return Optional.empty();
        }
        FactRanges.Range range = ranges.of(fact);
        if (found.isEmpty()
                && column.equals("value")
                && !range.contains(unit.get().kept(inUnit))) {
            row.reject(
                    column,
                    text
                            + (number.get().unit().isPresent() || unit.get() == FactUnit.NONE
                                    ? ""
                                    : " " + unit.get().symbol())
                            + " is outside the plausible range of " + fact.key() + ", " + range.words(unit.get()),
                    otherUnit(fact, inUnit, unit.get(), range));
            return Optional.empty();
        }
        return Optional.of(FactValue.ofNumber(SourceNumber.canonical(inUnit), unit.get(), inUnit));
    }

    private static String otherUnit(FieldFact fact, double inUnit, FactUnit unit, FactRanges.Range range) {
        return fact.kind().units().stream()
                .filter(other -> other != unit && range.contains(other.kept(inUnit)))
                .findFirst()
                .map(other -> SourceNumber.canonical(inUnit) + " " + other.symbol() + " would be plausible.")
                .orElse("Check the number and its unit; the config's section plausible has ranges of your own.");
    }

    /** Returns the unit of a number: the one beside it, or that of the column, which must agree. */
    private static Optional<FactUnit> unit(Row row, FieldFact fact, String column, FactNumber number) {
        List<FactUnit> units = fact.kind().units();
        String given = row.cell("unit");
        Optional<FactUnit> ofColumn = given.isEmpty() ? Optional.empty() : FactNumber.findUnit(given);
        if (!given.isEmpty() && (ofColumn.isEmpty() || !units.contains(ofColumn.get()))) {
            row.reject("unit", "'" + given + "' is not a unit of " + fact.key(), possible(units));
            return Optional.empty();
        }
        Optional<FactUnit> unit = number.unit().or(() -> ofColumn);
        if (ofColumn.isPresent() && unit.isPresent() && ofColumn.get() != unit.get()) {
            row.reject(
                    column,
                    "the value is in " + unit.get().symbol() + ", and the column unit says " + given,
                    "Write the same unit in both, or only one of them.");
            return Optional.empty();
        }
        if (unit.isPresent() && !units.contains(unit.get())) {
            row.reject(column, unit.get().symbol() + " is not a unit of " + fact.key(), possible(units));
            return Optional.empty();
        }
        if (unit.isEmpty() && units.size() > 1) {
            row.reject("unit", "the unit is missing", possible(units));
        }
        return unit.isEmpty() && units.size() == 1 ? Optional.of(units.get(0)) : unit;
    }

    private static String possible(List<FactUnit> units) {
        String symbols = units.stream()
                .filter(unit -> unit != FactUnit.NONE)
                .map(FactUnit::symbol)
                .collect(Collectors.joining(" or "));
        return symbols.isEmpty() ? "Leave it empty." : "Write " + symbols + ".";
    }

    private static String expected(FieldFact fact) {
        String units = fact.kind().units().stream().map(FactUnit::symbol).collect(Collectors.joining(" or "));
        return fact.kind() == FactKind.COUNT
                ? "Write a whole number, such as 3."
                : "Write a number in " + units + ", such as 41.5.";
    }
}
