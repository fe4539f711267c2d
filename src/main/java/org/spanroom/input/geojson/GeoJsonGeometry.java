package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.input.layer.VertexBuffer;

/**
 * One GeoJSON geometry while it is read (RFC 7946 section 3.1), from tokens straight into packed vertices.
 *
 * <p>Members come in any order: coordinates are read before their type may be known, so the depth of their lists is noted
 * and checked against the type at the end. Members of a collection are treated as parts of one geometry.
 */
final class GeoJsonGeometry {
    private static final int DEEPEST_COLLECTION = 16;
    private static final int DEEPEST_POSITION = 4;

    private final VertexBuffer vertices = new VertexBuffer();
    private @Nullable Kind kind;
    private String typeName = "null";
    private Shape root = new Shape();
    private boolean hasOddHeights;

    /** What is known of one geometry object before its end. */
    private static final class Shape {
        private @Nullable String type;
        private boolean hasCoordinates;
        private boolean hasGeometries;
        private int positionLevel;
        private int deepestEmptyList;
    }

    void begin() {
        vertices.clear();
        kind = null;
        typeName = "null";
        root = new Shape();
        hasOddHeights = false;
    }

    /** Reads a whole geometry object, or the null that means none. */
    void read(JsonParser parser) throws IOException, FeatureFault {
        if (parser.currentToken() != JsonToken.VALUE_NULL) {
            root = readShape(parser, 1);
            typeName = String.valueOf(root.type);
        }
    }

    /** Reads one member of a geometry that is the outermost object of its text. */
    void member(String name, JsonParser parser) throws IOException, FeatureFault {
        member(name, parser, root, 1);
    }

    /** Ends a geometry that was read by its members. */
    void end() throws FeatureFault {
        typeName = String.valueOf(root.type);
        end(root);
    }

    String typeName() {
        return typeName;
    }

    Kind kind() {
        return kind == null ? Kind.NONE : kind;
    }

    VertexBuffer vertices() {
        return vertices;
    }

    /** Returns true if a third ordinate was something else than a number or null, so that the vertex was read without a height. */
    boolean hasOddHeights() {
        return hasOddHeights;
    }

    private Shape readShape(JsonParser parser, int depth) throws IOException, FeatureFault {
        if (parser.currentToken() != JsonToken.START_OBJECT) {
            throw FeatureFault.unreadable("a geometry is " + GeoJsonFeature.words(parser.currentToken()));
        }
        if (depth > DEEPEST_COLLECTION) {
            throw FeatureFault.unreadable("geometry collections are nested more than " + DEEPEST_COLLECTION + " deep");
        }
        var shape = new Shape();
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            parser.nextToken();
            member(name, parser, shape, depth);
        }
        end(shape);
        return shape;
    }

    private void member(String name, JsonParser parser, Shape shape, int depth) throws IOException, FeatureFault {
        switch (name) {
            case "type" -> shape.type = GeoJsonFeature.type(parser, shape.type);
            case "coordinates" -> {
                refuseSecond(shape.hasCoordinates, name);
                shape.hasCoordinates = true;
                coordinates(parser, shape);
            }
            case "geometries" -> {
                refuseSecond(shape.hasGeometries, name);
                shape.hasGeometries = true;
                geometries(parser, depth);
            }
            default -> parser.skipChildren();
        }
    }

    private static void refuseSecond(boolean there, String name) throws FeatureFault {
        if (there) {
            throw FeatureFault.unreadable("the member \"" + name + "\" occurs twice");
        }
    }

    private void geometries(JsonParser parser, int depth) throws IOException, FeatureFault {
        if (parser.currentToken() != JsonToken.START_ARRAY) {
            throw FeatureFault.unreadable("\"geometries\" is " + GeoJsonFeature.words(parser.currentToken()));
        }
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            readShape(parser, depth + 1);
        }
    }

    private void coordinates(JsonParser parser, Shape shape) throws IOException, FeatureFault {
        if (parser.currentToken() != JsonToken.START_ARRAY) {
            throw FeatureFault.unreadable("\"coordinates\" is " + GeoJsonFeature.words(parser.currentToken()));
        }
        vertices.startPolygon();
        int level = 1;
        boolean first = true; // the list at hand has had no element yet
        while (level > 0) {
            JsonToken token = parser.nextToken();
            if (token == JsonToken.START_ARRAY) {
                level++;
                first = true;
            } else if (token == JsonToken.END_ARRAY) {
                endList(shape, level--, first);
                first = false;
            } else if (first && (token == JsonToken.VALUE_NUMBER_FLOAT || token == JsonToken.VALUE_NUMBER_INT)) {
                position(parser, shape, level--);
                first = false;
            } else {
                throw noPosition(parser, token);
            }
            if (level > DEEPEST_POSITION) {
                throw FeatureFault.unreadable("coordinates are nested more than " + DEEPEST_POSITION + " deep");
            }
        }
        vertices.endPart();
    }

    private void position(JsonParser parser, Shape shape, int level) throws IOException, FeatureFault {
        if (shape.positionLevel == 0) {
            shape.positionLevel = level;
        } else if (shape.positionLevel != level) {
            throw FeatureFault.unreadable("positions lie at several depths of the coordinates");
        }
        double x = parser.getDoubleValue();
        JsonToken second = parser.nextToken();
        if (second == JsonToken.END_ARRAY) {
            throw FeatureFault.unreadable("a position has one number only, or lists are missing around it");
        }
        double y = ordinate(parser, second);
        double z = Double.NaN;
        JsonToken token = parser.nextToken();
        if (token != JsonToken.END_ARRAY) {
            z = height(parser, token);
            token = parser.nextToken();
        }
        for (; token != JsonToken.END_ARRAY; token = parser.nextToken()) {
            parser.skipChildren(); // what follows the height has no meaning (RFC 7946 section 3.1.1)
        }
        vertices.add(x, y, z);
    }

    /** Where there is no number for the height, the place is still known: NaN. A list shows that positions lie deeper than they should. */
    private double height(JsonParser parser, JsonToken token) throws IOException, FeatureFault {
        if (token == JsonToken.VALUE_NUMBER_FLOAT || token == JsonToken.VALUE_NUMBER_INT) {
            return parser.getDoubleValue();
        }
        if (token == JsonToken.START_ARRAY) {
            throw noPosition(parser, token);
        }
        hasOddHeights |= token != JsonToken.VALUE_NULL;
        parser.skipChildren();
        return Double.NaN;
    }

    private static double ordinate(JsonParser parser, JsonToken token) throws IOException, FeatureFault {
        if (token != JsonToken.VALUE_NUMBER_FLOAT && token != JsonToken.VALUE_NUMBER_INT) {
            throw noPosition(parser, token);
        }
        return parser.getDoubleValue();
    }

    private static FeatureFault noPosition(JsonParser parser, JsonToken token) throws IOException {
        if (token == JsonToken.VALUE_STRING || token == JsonToken.VALUE_NULL) {
            return FeatureFault.badCoordinate("a coordinate is "
                    + (token == JsonToken.VALUE_NULL ? "null" : "the text \"" + shortened(parser.getText()) + "\""));
        }
        return FeatureFault.unreadable("among the coordinates is " + GeoJsonFeature.words(token) + " where a "
                + (token == JsonToken.START_ARRAY ? "number" : "position") + " is expected");
    }

    private static String shortened(String text) {
        return text.length() <= 40 ? text : text.substring(0, 40) + "...";
    }

    private void endList(Shape shape, int level, boolean empty) {
        if (empty) {
            shape.deepestEmptyList = Math.max(shape.deepestEmptyList, level);
        } else if (level == shape.positionLevel - 1) {
            vertices.endPart();
        } else if (level == shape.positionLevel - 2) {
            vertices.startPolygon();
        }
    }

    private void end(Shape shape) throws FeatureFault {
        String type = shape.type;
        if (type == null) {
            throw FeatureFault.unreadable("a geometry has no \"type\"");
        }
        boolean collection = type.equals("GeometryCollection");
        Kind shapeKind = collection ? Kind.OTHER : kindOf(type);
        if (collection != shape.hasGeometries || collection == shape.hasCoordinates) {
            throw FeatureFault.unreadable("the " + type + " has no \"" + (collection ? "geometries" : "coordinates")
                    + "\", or members of another type");
        }
        if (collection || shape.positionLevel == 0) {
            return;
        }
        int level = positionLevel(type);
        if (shape.positionLevel != level || shape.deepestEmptyList >= level) {
            throw FeatureFault.unreadable("the coordinates are not nested as those of a " + type);
        }
        kind = kind == null || kind == shapeKind ? shapeKind : Kind.OTHER;
    }

    /** Returns true for the name of a geometry type of GeoJSON. */
    static boolean isType(String name) {
        try {
            return name.equals("GeometryCollection") || kindOf(name) != Kind.NONE;
        } catch (FeatureFault none) {
            return false;
        }
    }

    private static Kind kindOf(String type) throws FeatureFault {
        return switch (type) {
            case "Point", "MultiPoint" -> Kind.POINTS;
            case "LineString", "MultiLineString" -> Kind.LINES;
            case "Polygon", "MultiPolygon" -> Kind.POLYGONS;
            default ->
                throw FeatureFault.unreadable("the geometry's type \"" + shortened(type) + "\" is not a GeoJSON type");
        };
    }

    private static int positionLevel(String type) {
        return switch (type) {
            case "Point" -> 1;
            case "MultiPoint", "LineString" -> 2;
            case "MultiLineString", "Polygon" -> 3;
            default -> 4;
        };
    }
}
