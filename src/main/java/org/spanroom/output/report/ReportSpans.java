package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Line;

/**
 * The spans of the page in the order of the ranking, with what their rows have beyond columns.
 *
 * @param table the rows
 * @param lonLat their lines
 * @param places what belongs to each row, as many as rows
 */
public record ReportSpans(PayloadTable<?> table, List<Optional<Line>> lonLat, List<Place> places) {
    /**
     * Where a span belongs; -1 stands for none.
     *
     * @param section row of its section
     * @param pack number of the pack that has its details
     * @param band its score band, from 1
     * @param year of the program, from 1
     */
    public record Place(int section, int pack, int band, int year) {}

    public ReportSpans {
        lonLat = List.copyOf(lonLat);
        places = List.copyOf(places);
        if (lonLat.size() != table.rows() || places.size() != table.rows()) {
            throw new IllegalArgumentException("lines and places must be as many as rows");
        }
    }

    void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        table.write(json);
        json.writeArrayFieldStart("lines");
        for (Optional<Line> line : lonLat) {
            if (line.isPresent()) {
                PackedShapes.writeLine(json, line.get());
            } else {
                json.writeNull();
            }
        }
        json.writeEndArray();
        RowLists.writeRows(json, "section", places.stream().map(Place::section).toList());
        RowLists.writeRows(json, "detail", places.stream().map(Place::pack).toList());
        RowLists.writeRows(json, "band", places.stream().map(Place::band).toList());
        RowLists.writeRows(json, "year", places.stream().map(Place::year).toList());
        json.writeEndObject();
    }
}
