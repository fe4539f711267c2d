package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonFactoryBuilder;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import java.io.BufferedInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.Utf8Stream;

/** The JSON texts of one file: a single one, one a line, or records after RFC 8142; a parser for each. */
final class GeoJsonTexts implements Closeable {
    /**
     * Depth costs a small object a level and no stack; a name, a number and a wanted text cost their length. What no field
     * wants is skipped whatever its length. NaN and Infinity are no JSON, but some programs write them, and they are
     * better rejected with their feature than with their file.
     */
    static final JsonFactory FACTORY = new JsonFactoryBuilder()
            .streamReadConstraints(StreamReadConstraints.builder()
                    .maxNestingDepth(50_000)
                    .maxStringLength(10_000_000)
                    .maxNameLength(50_000)
                    .maxNumberLength(1_000)
                    .build())
            .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
            .disable(StreamReadFeature.AUTO_CLOSE_SOURCE)
            .enable(StreamReadFeature.USE_FAST_DOUBLE_PARSER)
            .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
            .build();

    /** How the texts follow one another. */
    enum Layout {
        /** One text, or several with nothing between them to hold on to when one is broken. */
        ONE_STREAM(false),
        /** One text a line. */
        LINES(true),
        /** A record separator before each text (RFC 8142). */
        RECORDS(true);

        private final boolean outlastsBrokenText;

        Layout(boolean outlastsBrokenText) {
            this.outlastsBrokenText = outlastsBrokenText;
        }

        /** Returns true if a broken text leaves the ones after it readable. */
        boolean outlastsBrokenText() {
            return outlastsBrokenText;
        }
    }

    private final SeekableByteChannel channel;
    private final InputStream in;
    private final @Nullable DelimitedStream delimited;
    private final Layout layout;
    private boolean begun;

    GeoJsonTexts(Path file, Layout layout) throws IOException {
        this.layout = layout;
        channel = Files.newByteChannel(file);
        in = Utf8Stream.open(Channels.newInputStream(channel));
        delimited = layout == Layout.ONE_STREAM
                ? null
                : new DelimitedStream(in, layout == Layout.LINES ? (byte) '\n' : LayerFormat.RECORD_SEPARATOR);
    }

    /**
     * Returns the layout of a file, judged by its beginning: a separator before the first text, or a first text of one
     * line, no feature collection, with something on a line after it; where the first text is broken or no object, by the lines
     * after it.
     */
    static Layout layoutOf(Path file) throws IOException {
        try (InputStream in = new BufferedInputStream(Utf8Stream.open(file))) {
            int first = in.read();
            while (first == ' ' || first == '\t' || first == '\r' || first == '\n') {
                first = in.read();
            }
            if (first == LayerFormat.RECORD_SEPARATOR) {
                return Layout.RECORDS;
            }
        }
        try (GeoJsonTexts texts = new GeoJsonTexts(file, Layout.ONE_STREAM);
                JsonParser parser = texts.next()) {
            if (parser == null) {
                return Layout.ONE_STREAM;
            }
            Optional<Boolean> line = firstTextIsALine(parser);
            return line.isPresent() ? (line.get() ? Layout.LINES : Layout.ONE_STREAM) : layoutByLines(file);
        }
    }

    Layout layout() {
        return layout;
    }

    /** Returns how much of the file's bytes has been taken, from 0 to 1; NaN for what has no length, such as a pipe. */
    double shareRead() {
        try {
            long sizeBytes = channel.size();
            return sizeBytes > 0 ? Math.min(1, channel.position() / (double) sizeBytes) : Double.NaN;
        } catch (IOException e) {
            return Double.NaN; // the reader reports what is wrong
        }
    }

    /** Returns a parser for the next text that is not empty, or null after the last one. */
    @Nullable
    JsonParser next() throws IOException {
        if (delimited == null) {
            boolean first = !begun;
            begun = true;
            return first ? FACTORY.createParser(in) : null;
        }
        return delimited.nextText() ? FACTORY.createParser((InputStream) delimited) : null;
    }

    /** Returns the words for a place in the text at hand. */
    String place(JsonLocation location) {
        if (delimited == null) {
            return "line " + location.getLineNr() + ", column " + location.getColumnNr();
        }
        return layout == Layout.LINES
                ? "line " + delimited.text() + ", column " + location.getColumnNr()
                : "record " + (delimited.text() - 1) + ", line " + location.getLineNr() + ", column "
                        + location.getColumnNr();
    }

    @Override
    public void close() throws IOException {
        in.close();
    }

    private static Layout layoutByLines(Path file) throws IOException {
        try (InputStream in = Utf8Stream.open(file)) {
            return TextLines.holdFeatures(in) ? Layout.LINES : Layout.ONE_STREAM;
        }
    }

    /** Empty where the first text does not say: it is broken, or no object. */
    private static Optional<Boolean> firstTextIsALine(JsonParser parser) throws IOException {
        int line;
        try {
            if (parser.nextToken() != JsonToken.START_OBJECT) {
                return Optional.empty();
            }
            line = parser.currentTokenLocation().getLineNr();
            for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
                JsonToken value = parser.nextToken();
                if (name.equals("features")
                        || (value == JsonToken.VALUE_STRING && parser.getText().equals("FeatureCollection"))) {
                    return Optional.of(false);
                }
                parser.skipChildren();
            }
            if (parser.currentLocation().getLineNr() != line) {
                return Optional.of(false);
            }
        } catch (JsonProcessingException broken) {
            return Optional.empty(); // the reading itself will say what is wrong
        }
        try {
            return Optional.of(
                    parser.nextToken() != null && parser.currentTokenLocation().getLineNr() > line);
        } catch (JsonProcessingException broken) {
            return Optional.of(
                    broken.getLocation() != null && broken.getLocation().getLineNr() > line);
        }
    }
}
