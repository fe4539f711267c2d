package org.spanroom.output;

import static java.util.stream.Collectors.joining;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.Function;
import org.spanroom.model.fieldwork.FactItem;
import org.spanroom.model.fieldwork.FactKind;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactUse;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.output.columns.FieldworkColumns;
import org.spanroom.output.table.Table;

/** The part of the data dictionary about what crews report: two tables and the facts, made from the schema itself. */
final class FieldworkDictionary {
    private static final String FACTS = """
            ## Facts

            What a row of a close-out file or of the field book may report: its word in the column `fact`, what it is about, what the value
            looks like and in which units, what the column `item` names, and what it is used for. The first unit is the one that is kept.

            | fact | about a | value | units | item | used for |
            |---|---|---|---|---|---|
            """;

    private FieldworkDictionary() {}

    static String text(Function<Table<?>, String> section) {
        return section.apply(FieldworkColumns.CLOSEOUT) + "\n"
                + section.apply(FieldworkColumns.FIELD_BOOK) + "\n" + FACTS
                + Arrays.stream(FieldFact.values())
                        .map(FieldworkDictionary::row)
                        .collect(joining());
    }

    private static String row(FieldFact fact) {
        String row = "| `" + fact.key() + "` | " + fact.subject().key() + " | " + value(fact) + " | "
                + units(fact.kind()) + " | " + item(fact.item()) + " | " + use(fact.use()) + " |\n";
        return row.replace("|  |", "| |").replace("|  |", "| |");
    }

    private static String value(FieldFact fact) {
        return switch (fact.kind()) {
            case WORD -> fact.words().stream().map(word -> "`" + word + "`").collect(joining(", "));
            case ANSWER -> "`yes` or `no`";
            case TEXT -> "text";
            case DAY -> "day, such as 2027-03-31";
            case COUNT -> "whole number";
            default -> "number";
        };
    }

    private static String units(FactKind kind) {
        return kind.units().stream()
                .map(FactUnit::symbol)
                .filter(symbol -> !symbol.isEmpty())
                .collect(joining(", "));
    }

    private static String item(FactItem item) {
        return switch (item) {
            case NONE -> "";
            case END -> "`a` or `b`";
            case INNERDUCT_AT_END -> "innerduct and end: `innerduct-2 a`";
            case CABLE_AT_END -> "cable and end: `cable-2 a`";
            case STEP -> "step of `step_hours`";
            case OCCASION -> "occasion, in words";
            default -> item.name().toLowerCase(Locale.ROOT);
        };
    }

    private static String use(FactUse use) {
        return switch (use) {
            case STATUS -> "state of the work";
            case DUCT -> "duct and contents";
            case VAULT -> "vault";
            case PRODUCTION -> "rates and friction";
            case RECORD -> "people only";
        };
    }
}
