package org.spanroom.output.explain;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.spanroom.output.explain.ExplanationValue.Figure;
import org.spanroom.output.explain.ExplanationValue.Flag;
import org.spanroom.output.explain.ExplanationValue.Sentences;
import org.spanroom.output.explain.ExplanationValue.Several;
import org.spanroom.output.explain.ExplanationValue.Word;
import org.spanroom.output.table.Text;

/**
 * Renders an explanation as JSON, RFC 8259, in the order of its parts, the unit of each number as the last word of its name. What is
 * not known or does not apply is null.
 */
public final class ExplanationJson {
    private final JsonGenerator json;

    private ExplanationJson(JsonGenerator json) {
        this.json = json;
    }

    /** Returns the explanation as one object, ended with a line break. */
    public static String write(ExplanationSection explanation) {
        return write(json -> json.object(explanation.parts()));
    }

    /** Returns several explanations as an array of objects, ended with a line break. */
    public static String write(List<ExplanationSection> explanations) {
        return write(json ->
                json.array(explanations.stream().map(ExplanationSection::parts).toList()));
    }

    /** What is written. */
    private interface Body {
        void write(ExplanationJson json) throws IOException;
    }

    private static String write(Body body) {
        var text = new StringWriter();
        var indenter = new DefaultIndenter("  ", "\n");
        var printer = new DefaultPrettyPrinter().withObjectIndenter(indenter).withArrayIndenter(indenter);
        try (JsonGenerator generator = new JsonFactory().createGenerator(text)) {
            generator.setPrettyPrinter(printer);
            body.write(new ExplanationJson(generator));
        } catch (IOException impossible) {
            throw new UncheckedIOException("a text in memory cannot fail", impossible);
        }
        return text.append('\n').toString();
    }

    private void object(List<ExplanationPart> parts) throws IOException {
        json.writeStartObject();
        members(parts);
        json.writeEndObject();
    }

    private void members(List<ExplanationPart> parts) throws IOException {
        for (ExplanationPart part : parts) {
            if (!part.key().isEmpty()) {
                json.writeFieldName(part.key());
                content(part);
            } else if (part instanceof ExplanationSection section) {
                members(section.parts());
            } else if (part instanceof ExplanationLine line) {
                members(line.parts());
            }
        }
    }

    private void content(ExplanationPart part) throws IOException {
        if (part instanceof ExplanationItem item) {
            value(item.value());
            evidence(item);
        } else if (part instanceof ExplanationLine line) {
            object(line.parts());
        } else if (part instanceof ExplanationSection section) {
            object(section.parts());
        } else if (part instanceof ExplanationTable table) {
            array(table.rows());
        } else if (part instanceof ExplanationSections several) {
            array(several.sections().stream().map(ExplanationSection::parts).toList());
        }
    }

    private void evidence(ExplanationItem item) throws IOException {
        if (!item.evidence().isEmpty()) {
            json.writeFieldName(item.key() + "_evidence");
            string(item.evidence());
        }
    }

    private void array(List<List<ExplanationPart>> objects) throws IOException {
        json.writeStartArray();
        for (List<ExplanationPart> parts : objects) {
            object(parts);
        }
        json.writeEndArray();
    }

    private void value(ExplanationValue value) throws IOException {
        if (value instanceof Figure number) {
            json.writeNumber(BigDecimal.valueOf(number.value())
                    .setScale(number.decimals(), RoundingMode.HALF_UP)
                    .toPlainString());
        } else if (value instanceof ExplanationValue.Text text) {
            string(text.text());
        } else if (value instanceof Word word) {
            string(word.key());
        } else if (value instanceof Flag flag) {
            json.writeBoolean(flag.value());
        } else if (value instanceof Several several) {
            values(several.values());
        } else if (value instanceof Sentences list) {
            values(list.sentences().stream().map(ExplanationValue::text).toList());
        } else {
            json.writeNull();
        }
    }

    private void values(List<ExplanationValue> values) throws IOException {
        json.writeStartArray();
        for (ExplanationValue value : values) {
            value(value);
        }
        json.writeEndArray();
    }

    private void string(String text) throws IOException {
        json.writeString(Text.clean(text));
    }
}
