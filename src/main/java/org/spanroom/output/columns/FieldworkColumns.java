package org.spanroom.output.columns;

import java.util.List;
import org.spanroom.model.fieldwork.CloseoutRow;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/** The columns of a close-out file. */
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

    private FieldworkColumns() {}
}
