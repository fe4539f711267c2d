package org.spanroom.output;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;

/** Writes members of JSON objects: numbers with fixed decimals, blank texts as null, texts made harmless. */
final class JsonPen {
    private final JsonGenerator json;

    JsonPen(JsonGenerator json) {
        this.json = json;
    }

    /** Writes the members of an object. */
    @FunctionalInterface
    interface Members {
        void write() throws IOException;
    }

    /** Writes the members of an object that stands for a thing. */
    @FunctionalInterface
    interface MembersOf<T> {
        void write(T thing) throws IOException;
    }

    /** Returns a constant's name as it stands in files. */
    static String key(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    void object(Members members) throws IOException {
        json.writeStartObject();
        members.write();
        json.writeEndObject();
    }

    void object(String name, Members members) throws IOException {
        json.writeFieldName(name);
        object(members);
    }

    /** Writes an object, or null where there is none. */
    <T> void object(String name, Optional<? extends T> thing, MembersOf<T> members) throws IOException {
        if (thing.isPresent()) {
            object(name, () -> members.write(thing.get()));
        } else {
            json.writeNullField(name);
        }
    }

    <T> void objects(String name, List<? extends T> things, MembersOf<T> members) throws IOException {
        json.writeArrayFieldStart(name);
        for (T thing : things) {
            object(() -> members.write(thing));
        }
        json.writeEndArray();
    }

    <T> void texts(String name, List<? extends T> things, Function<T, String> text) throws IOException {
        json.writeArrayFieldStart(name);
        for (T thing : things) {
            json.writeString(Text.clean(text.apply(thing)));
        }
        json.writeEndArray();
    }

    void text(String name, String value) throws IOException {
        if (value.isBlank()) {
            json.writeNullField(name);
        } else {
            json.writeStringField(name, Text.clean(value));
        }
    }

    void flag(String name, boolean value) throws IOException {
        json.writeBooleanField(name, value);
    }

    void whole(String name, int value) throws IOException {
        json.writeNumberField(name, value);
    }

    void whole(String name, OptionalInt value) throws IOException {
        if (value.isPresent()) {
            json.writeNumberField(name, value.getAsInt());
        } else {
            json.writeNullField(name);
        }
    }

    void real(String name, double value, int decimals) throws IOException {
        if (Double.isFinite(value)) {
            BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
            json.writeFieldName(name);
            json.writeNumber(rounded.toPlainString());
        } else {
            json.writeNullField(name);
        }
    }
}
