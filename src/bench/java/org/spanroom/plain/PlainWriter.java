package org.spanroom.plain;

import com.fasterxml.jackson.core.JsonEncoding;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.MinimalPrettyPrinter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import org.locationtech.jts.geom.Coordinate;

/** Makes spans into features of GeoJSON. */
final class PlainWriter {
    private static final double STEPS = 1e8;
    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamWriteFeature.USE_FAST_DOUBLE_WRITER)
            .build();

    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 20);
    private final JsonGenerator json;
    private int spans;
    private double lengthM;

    PlainWriter() throws IOException {
        json = JSON.createGenerator(bytes, JsonEncoding.UTF8);
        json.setPrettyPrinter(new MinimalPrettyPrinter(",\n"));
    }

    void add(PlainFeature route, PlainFeature from, PlainFeature to, Coordinate[] line, double spanLengthM)
            throws IOException {
        json.writeStartObject();
        json.writeStringField("type", "Feature");
        json.writeObjectFieldStart("properties");
        for (int i = 0; i < route.attributes().length; i += 2) {
            json.writeStringField(route.attributes()[i], route.attributes()[i + 1]);
        }
        json.writeStringField("vault_a", from.attributes()[1]);
        json.writeStringField("vault_b", to.attributes()[1]);
        json.writeNumberField("length_m", Math.round(spanLengthM * 1000) / 1000.0);
        json.writeEndObject();
        json.writeObjectFieldStart("geometry");
        json.writeStringField("type", "LineString");
        json.writeArrayFieldStart("coordinates");
        for (Coordinate place : line) {
            json.writeStartArray();
            json.writeNumber(Math.round(place.x * STEPS) / STEPS);
            json.writeNumber(Math.round(place.y * STEPS) / STEPS);
            json.writeEndArray();
        }
        json.writeEndArray();
        json.writeEndObject();
        json.writeEndObject();
        spans++;
        lengthM += spanLengthM;
    }

    void end() throws IOException {
        json.flush();
    }

    int spans() {
        return spans;
    }

    double lengthM() {
        return lengthM;
    }

    void writeTo(OutputStream out) throws IOException {
        bytes.writeTo(out);
    }
}
