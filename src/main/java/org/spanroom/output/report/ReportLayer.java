package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.util.List;
import org.spanroom.output.table.Shape;

/**
 * A table whose rows have places.
 *
 * @param table the rows
 * @param kind what the shapes are
 * @param shapes one for each row; empty ones for rows that have none
 */
public record ReportLayer(PayloadTable<?> table, Kind kind, List<Shape> shapes) {
    /** What the shapes of a layer are. */
    public enum Kind {
        POINTS,
        POLYGONS
    }

    public ReportLayer {
        shapes = List.copyOf(shapes);
        if (shapes.size() != table.rows()) {
            throw new IllegalArgumentException("shapes must be as many as rows");
        }
    }

    void write(JsonGenerator json) throws IOException {
        json.writeStartObject();
        table.write(json);
        json.writeArrayFieldStart(kind == Kind.POINTS ? "points" : "polygons");
        for (Shape shape : shapes) {
            if (kind == Kind.POINTS) {
                PackedShapes.writePoint(json, shape);
            } else {
                PackedShapes.writeParts(json, shape);
            }
        }
        json.writeEndArray();
        json.writeEndObject();
    }
}
