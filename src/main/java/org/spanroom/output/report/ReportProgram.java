package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;

/**
 * An annual program as the page has it.
 *
 * @param years its years, from 1
 * @param items its spans in the order of the calendar
 * @param itemRows rows of these spans; -1 for one that the page does not show
 * @param reserve the eligible spans that it leaves out
 * @param reserveRows rows of these spans; -1 for one that the page does not show
 */
public record ReportProgram(
        List<Integer> years,
        PayloadTable<?> items,
        List<Integer> itemRows,
        PayloadTable<?> totals,
        PayloadTable<?> curve,
        PayloadTable<?> connections,
        PayloadTable<?> reserve,
        List<Integer> reserveRows) {
    public ReportProgram {
        years = List.copyOf(years);
        itemRows = List.copyOf(itemRows);
        reserveRows = List.copyOf(reserveRows);
    }

    void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        RowLists.writeRows(json, "years", years);
        json.writeObjectFieldStart("items");
        items.write(json);
        RowLists.writeRows(json, "row", itemRows);
        json.writeEndObject();
        write(json, "totals", totals);
        write(json, "curve", curve);
        write(json, "connections", connections);
        json.writeObjectFieldStart("reserve");
        reserve.write(json);
        RowLists.writeRows(json, "row", reserveRows);
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void write(JsonGenerator json, String name, PayloadTable<?> table) throws IOException {
        json.writeObjectFieldStart(name);
        table.write(json);
        json.writeEndObject();
    }
}
