package org.spanroom.network;

import org.spanroom.finding.FindingCode;
import org.spanroom.model.fieldwork.FieldEntry;

/**
 * What keeps an entry of the field book from taking effect, wholly or in part.
 *
 * @param entry number of the entry
 */
public record FieldProblem(FindingCode code, int entry, String detail) {
    static FieldProblem contradiction(FieldEntry entry, String detail) {
        return new FieldProblem(FindingCode.FIELD_ENTRY_CONTRADICTS, entry.number(), words(entry) + ": " + detail);
    }

    static FieldProblem incomplete(FieldEntry entry, String detail) {
        return new FieldProblem(FindingCode.FIELD_ENTRY_INCOMPLETE, entry.number(), words(entry) + ": " + detail);
    }

    private static String words(FieldEntry entry) {
        String item = entry.item().isEmpty() ? "" : " of '" + entry.item() + "'";
        return "entry " + entry.number() + ", " + entry.fact().key() + item + " "
                + entry.value().text();
    }
}
