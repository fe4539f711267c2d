package org.spanroom.output;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.spanroom.output.table.Text;

/** A JSON object, RFC 8259, put together member by member; written in the order in which the members were added. */
public final class JsonObject {
    private final Map<String, Object> members = new LinkedHashMap<>();

    /** Adds a text. */
    public JsonObject text(String name, String text) {
        return member(name, text);
    }

    /** Adds a whole number. */
    public JsonObject number(String name, long number) {
        return member(name, number);
    }

    /** Adds a number with so many decimals; null where it is not a finite number. */
    public JsonObject number(String name, double inUnit, int decimals) {
        return Double.isFinite(inUnit)
                ? member(name, BigDecimal.valueOf(inUnit).setScale(decimals, RoundingMode.HALF_UP))
                : member(name, Null.NULL);
    }

    /** Adds an object. */
    public JsonObject object(String name, JsonObject object) {
        return member(name, object);
    }

    /** Adds an object of counts. */
    public JsonObject counts(String name, Map<String, Long> counts) {
        var object = new JsonObject();
        counts.forEach(object::number);
        return member(name, object);
    }

    /** Adds a list of texts. */
    public JsonObject texts(String name, List<String> texts) {
        return member(name, List.copyOf(texts));
    }

    /** Adds a list of objects. */
    public JsonObject objects(String name, List<JsonObject> objects) {
        return member(name, List.copyOf(objects));
    }

    private JsonObject member(String name, Object value) {
        members.put(name, value);
        return this;
    }

    /** Returns the object with one member or item on each line, ended with a line break. */
    public String write() {
        var text = new StringWriter();
        var indenter = new DefaultIndenter("  ", "\n");
        var printer = new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.setPrettyPrinter(printer);
            write(json, this);
        } catch (IOException impossible) {
            throw new UncheckedIOException("a text in memory cannot fail", impossible);
        }
        return text.append('\n').toString();
    }

    private enum Null {
        NULL
    }

    private static void write(JsonGenerator json, Object value) throws IOException {
        if (value instanceof JsonObject object) {
            json.writeStartObject();
            for (var member : object.members.entrySet()) {
                json.writeFieldName(Text.clean(member.getKey()));
                write(json, member.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object item : list) {
                write(json, item);
            }
            json.writeEndArray();
        } else if (value instanceof BigDecimal decimal) {
            json.writeNumber(decimal.toPlainString());
        } else if (value instanceof Long number) {
            json.writeNumber(number);
        } else if (value instanceof String text) {
            json.writeString(Text.clean(text));
        } else {
            json.writeNull();
        }
    }
}
