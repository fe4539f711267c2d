package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.input.layer.WantedFields;

/**
 * One GeoJSON feature while it is read (RFC 7946 section 3.2): its members come in any order. Used again for the next feature.
 */
final class GeoJsonFeature {
    private static final int LONGEST_ID = 200;

    private final WantedFields fields;
    private final LayerLog log;
    private final GeoJsonGeometry geometry = new GeoJsonGeometry();
    private final GeoJsonProperties properties;

    private long number;
    private @Nullable String type;
    private String id = "";
    private boolean hasGeometry;
    private boolean hasProperties;
    private Optional<Optional<String>> crs = Optional.empty();

    GeoJsonFeature(WantedFields fields, LayerLog log, boolean collectNames) {
        this.fields = fields;
        this.log = log;
        this.properties = new GeoJsonProperties(fields, log, collectNames);
    }

    void begin(long featureNumber) {
        number = featureNumber;
        type = null;
        id = "";
        hasGeometry = false;
        hasProperties = false;
        crs = Optional.empty();
        fields.clear();
        geometry.begin();
    }

    /** Reads the object at which the parser is. */
    void read(JsonParser parser) throws IOException, FeatureFault {
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            parser.nextToken();
            member(name, parser);
        }
        if (!"Feature".equals(type)) {
            throw FeatureFault.unreadable(
                    "its type is " + (type == null ? "missing" : "\"" + type + "\"") + " and must be \"Feature\"");
        }
    }

    void member(String name, JsonParser parser) throws IOException, FeatureFault {
        switch (name) {
            case "type" -> type = type(parser, type);
            case "id" -> id(parser);
            case "crs" -> crs = Optional.of(GeoJsonCrs.read(parser));
            case "geometry" -> {
                if (hasGeometry) {
                    throw FeatureFault.unreadable("it has two geometries");
                }
                hasGeometry = true;
                geometry.read(parser);
            }
            case "properties" -> {
                if (hasProperties) {
                    throw FeatureFault.unreadable("it has the member \"properties\" twice");
                }
                hasProperties = true;
                properties(parser);
            }
            default -> parser.skipChildren();
        }
    }

    String id() {
        return id;
    }

    GeoJsonGeometry geometry() {
        return geometry;
    }

    /** Returns the reference system that the feature states for itself, if it does: the old member "crs". */
    Optional<Optional<String>> crs() {
        return crs;
    }

    /** Returns the properties as they have been met so far. */
    GeoJsonProperties properties() {
        return properties;
    }

    /** Reads the value of a member "type". */
    static String type(JsonParser parser, @Nullable String before) throws IOException, FeatureFault {
        if (parser.currentToken() != JsonToken.VALUE_STRING) {
            throw FeatureFault.unreadable("a \"type\" is " + words(parser.currentToken()));
        }
        String type = parser.getText();
        if (before != null && !before.equals(type)) {
            throw FeatureFault.unreadable("it has two types");
        }
        return type.length() <= 40 ? type : type.substring(0, 40);
    }

    /** Returns the words for a kind of token. */
    static String words(@Nullable JsonToken token) {
        if (token == null) {
            return "nothing";
        }
        return switch (token) {
            case START_OBJECT -> "an object";
            case START_ARRAY -> "a list";
            case VALUE_STRING -> "a text";
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> "a number";
            case VALUE_TRUE, VALUE_FALSE -> "true or false";
            case VALUE_NULL -> "null";
            default -> token.toString();
        };
    }

    /** The file's id only names the feature in findings. */
    private static String shortened(String id) {
        return id.length() <= LONGEST_ID ? id : id.substring(0, LONGEST_ID);
    }

    private void id(JsonParser parser) throws IOException {
        switch (parser.currentToken()) {
            case VALUE_STRING, VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> id = shortened(parser.getText());
            case VALUE_NULL -> id = "";
            default -> {
                log.odd(FindingCode.LAYER_ISSUE, number, "the id is neither text nor number; it was ignored");
                parser.skipChildren();
            }
        }
    }

    private void properties(JsonParser parser) throws IOException, FeatureFault {
        if (parser.currentToken() == JsonToken.VALUE_NULL) {
            return;
        }
        if (parser.currentToken() != JsonToken.START_OBJECT) {
            throw FeatureFault.unreadable("\"properties\" is " + words(parser.currentToken()));
        }
        properties.read(number, parser);
    }
}
