package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.input.layer.WantedFields;

/**
 * The properties of one GeoJSON feature while they are read; of their values only the wanted ones are kept.
 *
 * <p>What is inside an object is a field of its own, named by the path to it: {@code start.id}. The values of a list are joined by
 * commas, and so are those of one path in a list of objects; of a list of one value that value counts. An object itself has no value.
 */
final class GeoJsonProperties {
    /** This many names of fields are shown and searched; a wanted field is read anyway where it comes later. */
    private static final int MOST_NAMES = 10_000;

    private static final int LONGEST_PATH = 1000;
    private static final int DEEPEST = 16;
    private static final int LONGEST_TEXT = 10_000_000;

    private final WantedFields fields;
    private final LayerLog log;
    private final boolean collectNames;

    /** Whether the field has been seen with a value of its own, rather than as null or as an object. */
    private final Map<String, Boolean> names = new LinkedHashMap<>();

    private final Set<String> parents = new HashSet<>();
    private final Set<String> wantedParents = new HashSet<>();
    private final boolean[] met;
    private final long[] lastSeen;
    private final @Nullable StringBuilder[] joined;
    private long number;

    GeoJsonProperties(WantedFields fields, LayerLog log, boolean collectNames) {
        this.fields = fields;
        this.log = log;
        this.collectNames = collectNames;
        int slots = fields.names().size();
        met = new boolean[slots];
        lastSeen = new long[slots];
        joined = new StringBuilder[slots];
        for (String name : fields.names()) {
            for (int dot = name.indexOf('.'); dot >= 0; dot = name.indexOf('.', dot + 1)) {
                wantedParents.add(name.substring(0, dot));
            }
        }
    }

    /** Returns the names of the fields met so far, in the order in which they came; an object is shown by what it holds. */
    List<String> names() {
        return names.entrySet().stream()
                .filter(name -> name.getValue() || !parents.contains(name.getKey()))
                .map(Map.Entry::getKey)
                .toList();
    }

    /** Returns the wanted fields that some feature had with a value or as null. */
    List<String> met() {
        return fields.names().stream().filter(name -> met[fields.slot(name)]).toList();
    }

    /** Reads the object at which the parser is. */
    void read(long featureNumber, JsonParser parser) throws IOException, FeatureFault {
        number = featureNumber;
        Arrays.fill(joined, null);
        object("", parser, 1, false);
        for (int slot = 0; slot < joined.length; slot++) {
            if (joined[slot] != null) {
                fields.set(slot, joined[slot].toString());
            }
        }
    }

    private void object(String path, JsonParser parser, int depth, boolean inList) throws IOException, FeatureFault {
        for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
            String field = path.isEmpty() ? name : path + "." + name;
            JsonToken token = parser.nextToken();
            if (!path.isEmpty() && collectNames) {
                parents.add(path);
            }
            note(field, token);
            value(field, parser, token, depth, inList);
        }
    }

    private void note(String field, JsonToken token) {
        boolean room = names.size() < MOST_NAMES && field.length() <= LONGEST_PATH;
        if (collectNames && (room || names.containsKey(field))) {
            names.merge(field, token.isScalarValue() && token != JsonToken.VALUE_NULL, Boolean::logicalOr);
        }
    }

    private void value(String field, JsonParser parser, JsonToken token, int depth, boolean inList)
            throws IOException, FeatureFault {
        int slot = fields.slot(field);
        if (token.isStructStart()) {
            boolean looked = slot >= 0 || wantedParents.contains(field) || collectNames;
            if (!looked || depth == DEEPEST || field.length() > LONGEST_PATH) {
                parser.skipChildren();
            } else if (token == JsonToken.START_OBJECT) {
                object(field, parser, depth + 1, inList);
            } else {
                list(field, parser, depth + 1, inList);
            }
        } else if (slot >= 0) {
            met[slot] = true;
            set(slot, field, scalar(parser, token), inList);
        }
    }

    private void list(String field, JsonParser parser, int depth, boolean inList) throws IOException, FeatureFault {
        boolean again = inList;
        for (JsonToken token = parser.nextToken(); token != JsonToken.END_ARRAY; token = parser.nextToken()) {
            if (token.isScalarValue()) {
                note(field, token);
            }
            value(field, parser, token, depth, again);
            again = true;
        }
    }

    /** The first value of a list is as good as a single one; those that follow are joined to it. */
    private void set(int slot, String field, @Nullable Object value, boolean inList) throws FeatureFault {
        boolean seen = lastSeen[slot] == number;
        lastSeen[slot] = number;
        if (seen && inList) {
            join(slot, field, value);
            return;
        }
        if (seen) {
            log.odd(
                    FindingCode.LAYER_ISSUE,
                    number,
                    "the property \"" + field + "\" occurs twice in one feature; the last one was used");
        }
        joined[slot] = null;
        fields.set(slot, value);
    }

    private void join(int slot, String field, @Nullable Object value) throws FeatureFault {
        Object before = fields.get(slot);
        if (value == null) {
            return;
        }
        if (before == null) {
            fields.set(slot, value);
            return;
        }
        StringBuilder text = joined[slot];
        if (text == null) {
            text = new StringBuilder(SourceNumber.text(before));
            joined[slot] = text;
        }
        text.append(", ").append(SourceNumber.text(value));
        if (text.length() > LONGEST_TEXT) {
            throw FeatureFault.unreadable("the values of the property \"" + field + "\" together have more than "
                    + LONGEST_TEXT + " characters");
        }
    }

    private static @Nullable Object scalar(JsonParser parser, JsonToken token) throws IOException {
        return switch (token) {
            case VALUE_STRING -> parser.getText();
            case VALUE_NUMBER_INT ->
                parser.getNumberType() == JsonParser.NumberType.BIG_INTEGER
                        ? finiteOrText(parser)
                        : (Object) parser.getLongValue();
            case VALUE_NUMBER_FLOAT -> finiteOrText(parser);
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            default -> null;
        };
    }

    /** Returns NaN and infinities as the recorded text, so that the reader of the number can report it. */
    private static Object finiteOrText(JsonParser parser) throws IOException {
        double value = parser.getDoubleValue();
        return Double.isFinite(value) ? (Object) value : parser.getText();
    }
}
