package org.spanroom.output.columns;

import java.util.List;
import java.util.function.Function;
import org.spanroom.model.fieldwork.BookRow;
import org.spanroom.model.fieldwork.CloseoutRow;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of a close-out file, and those of the field book. */
public final class FieldworkColumns {
    public static final Table<CloseoutRow> CLOSEOUT = Table.plain(
            "closeout",
            "A close-out file: one row for each fact that a crew reports. `spanroom sheets` writes one with the planned values; the crew "
                    + "or the office fills in value, by and date. A row without a value reports nothing.",
            List.of(
                    Column.text(
                            "code",
                            "code",
                            "Code of the page that the fact was written on, as its QR code has it; may be empty.",
                            CloseoutRow::code),
                    Column.text(
                            "span",
                            "span",
                            "The span that the fact is about; may be empty where the code names it.",
                            CloseoutRow::span),
                    Column.text("vault", "vault", "The vault that the fact is about.", CloseoutRow::vault),
                    Column.text("fact", "fact", "What is reported; see the table of facts.", CloseoutRow::fact),
                    Column.text(
                            "item",
                            "item",
                            "The innerduct, cable, sleeve, step, end or occasion that the fact is about.",
                            CloseoutRow::item),
                    Column.text("planned", "planned", "What the sheet said, in the same unit.", CloseoutRow::planned),
                    Column.text(
                            "value",
                            "value",
                            "What was found or done; empty: nothing is reported.",
                            CloseoutRow::value),
                    Column.text("unit", "unit", "Unit of planned and value.", CloseoutRow::unit),
                    Column.text("by", "by", "Who found it.", CloseoutRow::by),
                    Column.text("date", "date", "Day on which it was found, e.g. 2027-03-31.", CloseoutRow::date),
                    Column.text(
                            "supersedes",
                            "supersedes",
                            "Number of the entry of the field book that this row corrects.",
                            CloseoutRow::supersedes),
                    Column.text("note", "note", "Remark.", CloseoutRow::note)));

    /** Each cell as its row is written; numbers are texts here, so that a value comes back as it was reported. */
    public static final Table<BookRow> FIELD_BOOK = Table.plain(
            "field_book",
            "The field book: one row for each fact that `spanroom closeout` entered. Rows are only added; one that is wrong is "
                    + "corrected by a later one that names it in `supersedes`.",
            List.of(
                    Column.integer("format", "format", "Version of the row: 1.", row -> BookRow.FORMAT),
                    Column.integer(
                            "entry",
                            "entry",
                            "Number of the entry, from 1; never used twice.",
                            entry(FieldEntry::number)),
                    Column.text("run", "run", "Code of the run whose sheets were worked from.", entry(FieldEntry::run)),
                    Column.text("span", "span", "The span that the fact is about.", subject(FactSubject.SPAN)),
                    Column.text("vault", "vault", "The vault that the fact is about.", subject(FactSubject.VAULT)),
                    Column.text(
                            "fact",
                            "fact",
                            "What is reported.",
                            entry(e -> e.fact().key())),
                    Column.text(
                            "item",
                            "item",
                            "The innerduct, cable, sleeve, step, end or occasion that the fact is about.",
                            entry(FieldEntry::item)),
                    Column.text(
                            "planned",
                            "planned",
                            "What the sheet said, in the same unit.",
                            entry(e -> e.planned().map(FactValue::text))),
                    Column.text(
                            "value",
                            "value",
                            "What was found or done.",
                            entry(e -> e.value().text())),
                    Column.text(
                            "unit",
                            "unit",
                            "Unit of planned and value.",
                            entry(e -> e.value().unit().symbol())),
                    Column.text("by", "by", "Who found it.", entry(FieldEntry::by)),
                    Column.text(
                            "date",
                            "date",
                            "Day on which it was found.",
                            entry(e -> e.day().toString())),
                    Column.integer(
                            "supersedes",
                            "supersedes",
                            "Number of the earlier entry that this one corrects.",
                            entry(FieldEntry::supersedes)),
                    Column.text("note", "note", "Remark.", entry(FieldEntry::note)),
                    Column.text(
                            "entered",
                            "entered",
                            "Day on which it was entered.",
                            row -> row.enteredOn().toString())));

    private FieldworkColumns() {}

    private static Function<BookRow, Object> entry(Function<FieldEntry, Object> cell) {
        return row -> cell.apply(row.entry());
    }

    private static Function<BookRow, Object> subject(FactSubject wanted) {
        return entry(e -> e.fact().subject() == wanted ? e.subject() : "");
    }
}
