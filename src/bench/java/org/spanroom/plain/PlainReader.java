package org.spanroom.plain;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.geom.Coordinate;

/** Reads points and lines of a GeoJSON file token by token. */
final class PlainReader {
    private static final JsonFactory JSON = JsonFactory.builder()
            .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
            .build();

    private final Path file;

    PlainReader(Path file) {
        this.file = file;
    }

    List<PlainFeature> read() throws IOException {
        var features = new ArrayList<PlainFeature>();
        try (JsonParser parser = JSON.createParser(file.toFile())) {
            var attributes = new ArrayList<String>();
            var coordinates = new ArrayList<Coordinate>();
            while (parser.nextToken() != null) {
                if (parser.currentToken() != JsonToken.FIELD_NAME) {
                    continue;
                }
                if (parser.currentName().equals("properties")) {
                    readAttributes(parser, attributes);
                } else if (parser.currentName().equals("coordinates")) {
                    readCoordinates(parser, coordinates);
                    features.add(new PlainFeature(
                            attributes.toArray(String[]::new), coordinates.toArray(Coordinate[]::new)));
                    attributes.clear();
                    coordinates.clear();
                }
            }
        }
        return features;
    }

    private static void readAttributes(JsonParser parser, List<String> attributes) throws IOException {
        parser.nextToken();
        while (parser.nextToken() == JsonToken.FIELD_NAME) {
            attributes.add(parser.currentName());
            parser.nextToken();
            attributes.add(parser.getText());
        }
    }

    private static void readCoordinates(JsonParser parser, List<Coordinate> coordinates) throws IOException {
        int depth = 0;
        do {
            JsonToken token = parser.nextToken();
            if (token == JsonToken.START_ARRAY) {
                depth++;
            } else if (token == JsonToken.END_ARRAY) {
                depth--;
            } else {
                double x = parser.getDoubleValue();
                parser.nextToken();
                coordinates.add(new Coordinate(x, parser.getDoubleValue()));
            }
        } while (depth > 0);
    }
}
