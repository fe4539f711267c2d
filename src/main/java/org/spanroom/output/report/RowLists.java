package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;

/** Lists of row numbers, one list for each row of another table. */
final class RowLists {
    private RowLists() {}

    static void write(JsonGenerator json, String name, List<List<Integer>> lists) throws IOException {
        json.writeArrayFieldStart(name);
        for (List<Integer> rows : lists) {
            json.writeStartArray();
            for (int row : rows) {
                json.writeNumber(row);
            }
            json.writeEndArray();
        }
        json.writeEndArray();
    }

    /** Writes one row number for each row; null where it is -1. */
    static void writeRows(JsonGenerator json, String name, List<Integer> rows) throws IOException {
        json.writeArrayFieldStart(name);
        for (int row : rows) {
            if (row < 0) {
                json.writeNull();
            } else {
                json.writeNumber(row);
            }
        }
        json.writeEndArray();
    }
}
