package org.spanroom.model.fieldwork;

/**
 * One row of a close-out file, as it is written: one fact. Every cell is text; empty where nothing is said.
 *
 * @param code of the sheet's page, see {@link SheetCode}; may be empty
 * @param span id of the span that it is about; may be empty where the code names it
 * @param vault id of the vault that it is about, for facts of vaults
 * @param fact see {@link FieldFact}
 * @param item see {@link FactItem}
 * @param planned what the sheet said, in the same unit
 * @param value what was found or done; empty: nothing is reported
 * @param unit of both
 * @param by who found it
 * @param date on which it was found, e.g. 2027-03-31
 * @param supersedes number of the entry of the field book that this row corrects
 */
public record CloseoutRow(
        String code,
        String span,
        String vault,
        String fact,
        String item,
        String planned,
        String value,
        String unit,
        String by,
        String date,
        String supersedes,
        String note) {}
