package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** Decides by the first lines of a JSON file whose first text is broken whether each line is a text of its own. */
final class TextLines {
    private static final int MOST_LINES = 20;
    private static final int LONGEST_LINE = 1 << 20;

    private TextLines() {}

    /**
     * Returns true if one of the first lines is a whole feature or geometry and none before it belongs to a collection, whose
     * features often have a line each, too.
     */
    static boolean holdFeatures(InputStream in) throws IOException {
        var lines = new DelimitedStream(in, (byte) '\n');
        for (int line = 0; line < MOST_LINES && lines.nextText(); line++) {
            byte[] text = lines.readNBytes(LONGEST_LINE);
            String words = new String(text, StandardCharsets.ISO_8859_1);
            if (text.length == LONGEST_LINE || words.contains("\"features\"") || words.contains("FeatureCollection")) {
                return false;
            }
            if (line > 0 && isFeature(text)) {
                return true;
            }
        }
        return false;
    }

    private static boolean isFeature(byte[] text) throws IOException {
        try (JsonParser parser = GeoJsonTexts.FACTORY.createParser(text)) {
            boolean found = false;
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                return false;
            }
            for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
                if (parser.nextToken() == JsonToken.VALUE_STRING && name.equals("type")) {
                    String type = parser.getText();
                    found = type.equals("Feature") || GeoJsonGeometry.isType(type);
                }
                parser.skipChildren();
            }
            return found && parser.nextToken() == null;
        } catch (JsonProcessingException broken) {
            return false;
        }
    }
}
