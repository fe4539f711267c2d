package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.spanroom.model.Line;

/**
 * The sections of the page, the best first.
 *
 * @param table the rows
 * @param lonLat the line of the best span of each
 * @param spans rows of the spans of each, the best first
 * @param all how many sections the run has
 */
public record ReportSections(PayloadTable<?> table, List<Optional<Line>> lonLat, List<List<Integer>> spans, long all) {
    public ReportSections {
        lonLat = List.copyOf(lonLat);
        spans = spans.stream().map(List::copyOf).toList();
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
        RowLists.write(json, "spans", spans);
        json.writeEndObject();
    }
}
