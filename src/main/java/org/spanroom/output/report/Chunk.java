package org.spanroom.output.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;

/**
 * A part of the data in the page: JSON, compressed, in letters that cannot end the element that holds it.
 *
 * @param id of the element
 * @param base64 GZIP of the JSON in UTF-8, as Base64
 */
public record Chunk(String id, String base64) {
    private static final JsonFactory JSON = new JsonFactory();

    /** What writes one JSON value. */
    public interface Content {
        void write(JsonGenerator json) throws IOException;
    }

    /** Packs a value; the same value always gives the same letters. */
    public static Chunk of(String id, Content content) {
        var bytes = new ByteArrayOutputStream();
        try (JsonGenerator json =
                JSON.createGenerator(new Packer(Base64.getEncoder().wrap(bytes)))) {
            content.write(json);
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
        return new Chunk(id, bytes.toString(StandardCharsets.ISO_8859_1));
    }

    /** Compresses as well as it can; the header has no time, so that the bytes repeat. */
    private static final class Packer extends GZIPOutputStream {
        private static final int BUFFER_BYTES = 1 << 16;

        Packer(OutputStream out) throws IOException {
            super(out, BUFFER_BYTES);
            def.setLevel(Deflater.BEST_COMPRESSION);
        }
    }
}
