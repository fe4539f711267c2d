package org.spanroom.output;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import org.spanroom.output.table.Text;

/** A JSON object, RFC 8259, put together member by member; written in the order in which the members were added. */
public final class JsonObject {
    private static final ObjectMapper MAPPER = JsonMapper.builder()
            .enable(StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
            .build();

    private final ObjectNode node = JsonNodeFactory.instance.objectNode();

    /** Adds a text. */
    public JsonObject text(String name, String text) {
        node.put(Text.clean(name), Text.clean(text));
        return this;
    }

    /** Adds a whole number. */
    public JsonObject number(String name, long number) {
        node.put(Text.clean(name), number);
        return this;
    }

    /** Adds a number with so many decimals; null where it is not a finite number. */
    public JsonObject number(String name, double inUnit, int decimals) {
        if (Double.isFinite(inUnit)) {
            node.put(Text.clean(name), BigDecimal.valueOf(inUnit).setScale(decimals, RoundingMode.HALF_UP));
        } else {
            node.putNull(Text.clean(name));
        }
        return this;
    }

    /** Adds true or false. */
    public JsonObject flag(String name, boolean flag) {
        node.put(Text.clean(name), flag);
        return this;
    }

    /** Adds an object. */
    public JsonObject object(String name, JsonObject object) {
        node.set(Text.clean(name), object.node);
        return this;
    }

    /** Adds an object of counts. */
    public JsonObject counts(String name, Map<String, Long> counts) {
        var object = new JsonObject();
        counts.forEach(object::number);
        return object(name, object);
    }

    /** Adds a list of texts. */
    public JsonObject texts(String name, List<String> texts) {
        var list = node.putArray(Text.clean(name));
        texts.forEach(text -> list.add(Text.clean(text)));
        return this;
    }

    /** Adds a list of objects. */
    public JsonObject objects(String name, List<JsonObject> objects) {
        var list = node.putArray(Text.clean(name));
        objects.forEach(object -> list.add(object.node));
        return this;
    }

    /** Returns the object with one member or item on each line, ended with a line break. */
    public String write() {
        var indenter = new DefaultIndenter("  ", "\n");
        ObjectWriter writer = MAPPER.writer(
                new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter));
        try {
            return writer.writeValueAsString(node) + "\n";
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException("a tree of texts and numbers cannot fail", impossible);
        }
    }
}
