package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import org.spanroom.model.Line;
import org.spanroom.output.table.Shape;

/**
 * Shapes as whole millionths of a degree (about 0.1 m), each vertex after the first as the difference from the one before: small numbers
 * compress well. Vertices that fall on the one before are left out.
 */
final class PackedShapes {
    private static final double STEPS_PER_DEG = 1e6;

    private PackedShapes() {}

    static void writeLine(JsonGenerator json, Line line) throws IOException {
        json.writeStartArray();
        long lon = 0;
        long lat = 0;
        for (int vertex = 0; vertex < line.size(); vertex++) {
            long nextLon = steps(line.x(vertex));
            long nextLat = steps(line.y(vertex));
            boolean isLastOfTwo = vertex == line.size() - 1 && vertex == 1;
            if (vertex == 0 || isLastOfTwo || nextLon != lon || nextLat != lat) {
                json.writeNumber(nextLon - lon);
                json.writeNumber(nextLat - lat);
            }
            lon = nextLon;
            lat = nextLat;
        }
        json.writeEndArray();
    }

    /** Writes the first vertex of a shape; null for a shape without one. */
    static void writePoint(JsonGenerator json, Shape shape) throws IOException {
        if (shape.isEmpty()) {
            json.writeNull();
            return;
        }
        json.writeStartArray();
        json.writeNumber(steps(shape.x(0)));
        json.writeNumber(steps(shape.y(0)));
        json.writeEndArray();
    }

    /** Writes the parts of a shape, e.g. the rings of a polygon, each as a line. */
    static void writeParts(JsonGenerator json, Shape shape) throws IOException {
        json.writeStartArray();
        for (int part = 0; part < shape.parts(); part++) {
            json.writeStartArray();
            long lon = 0;
            long lat = 0;
            for (int vertex = shape.partStart(part); vertex < shape.partEnd(part); vertex++) {
                long nextLon = steps(shape.x(vertex));
                long nextLat = steps(shape.y(vertex));
                if (vertex == shape.partStart(part) || nextLon != lon || nextLat != lat) {
                    json.writeNumber(nextLon - lon);
                    json.writeNumber(nextLat - lat);
                }
                lon = nextLon;
                lat = nextLat;
            }
            json.writeEndArray();
        }
        json.writeEndArray();
    }

    static long steps(double deg) {
        return Math.round(deg * STEPS_PER_DEG);
    }
}
