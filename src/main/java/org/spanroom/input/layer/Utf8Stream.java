package org.spanroom.input.layer;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * The bytes of a JSON file as UTF-8 without a byte order mark.
 *
 * <p>RFC 8259 section 8.1 demands UTF-8, yet files in UTF-16 and UTF-32 occur. They are known by their mark or, because a
 * JSON text begins with an ASCII character, by the zeros in the first four bytes (RFC 4627 section 3), and are converted.
 */
public final class Utf8Stream extends InputStream {
    private static final int CHUNK = 1 << 14;

    private final Reader reader;
    private final CharsetEncoder encoder = StandardCharsets.UTF_8.newEncoder();
    private final CharBuffer chars = CharBuffer.allocate(CHUNK).flip();
    private final ByteBuffer bytes = ByteBuffer.allocate(3 * CHUNK).flip();
    private boolean ended;

    private Utf8Stream(InputStream in, Charset charset) {
        reader = new InputStreamReader(
                in,
                charset.newDecoder()
                        .onMalformedInput(CodingErrorAction.REPORT)
                        .onUnmappableCharacter(CodingErrorAction.REPORT));
    }

    public static InputStream open(Path file) throws IOException {
        return open(Files.newInputStream(file));
    }

    /** Reads on from where a stream stands, its file's beginning, and closes it in the end. */
    public static InputStream open(InputStream in) throws IOException {
        try {
            byte[] head = in.readNBytes(4);
            Charset charset = charset(head);
            int mark = markLength(head, charset);
            InputStream whole = new SequenceInputStream(new ByteArrayInputStream(head, mark, head.length - mark), in);
            return charset.equals(StandardCharsets.UTF_8) ? whole : new Utf8Stream(whole, charset);
        } catch (IOException | RuntimeException e) {
            in.close();
            throw e;
        }
    }

    /** Returns the encoding that the first four bytes show. */
    public static Charset charset(byte[] head) {
        int a = at(head, 0);
        int b = at(head, 1);
        int c = at(head, 2);
        int d = at(head, 3);
        if ((a == 0 && b == 0 && c == 0xFE && d == 0xFF) || (a == 0 && b == 0 && c == 0 && d > 0)) {
            return Charset.forName("UTF-32BE");
        }
        if (c == 0 && d == 0 && ((a == 0xFF && b == 0xFE) || (a > 0 && b == 0))) {
            return Charset.forName("UTF-32LE");
        }
        if ((a == 0xFE && b == 0xFF) || (a == 0 && b > 0)) {
            return StandardCharsets.UTF_16BE;
        }
        return (a == 0xFF && b == 0xFE) || (a > 0 && b == 0) ? StandardCharsets.UTF_16LE : StandardCharsets.UTF_8;
    }

    /** Returns how many of the first bytes are a byte order mark. */
    public static int markLength(byte[] head, Charset charset) {
        byte[] mark = "\uFEFF".getBytes(charset);
        if (head.length < mark.length) {
            return 0;
        }
        for (int i = 0; i < mark.length; i++) {
            if (head[i] != mark[i]) {
                return 0;
            }
        }
        return mark.length;
    }

    @Override
    public int read() throws IOException {
        return refill() ? bytes.get() & 0xFF : -1;
    }

    @Override
    public int read(byte[] target, int from, int length) throws IOException {
        Objects.checkFromIndexSize(from, length, target.length);
        if (length == 0) {
            return 0;
        }
        if (!refill()) {
            return -1;
        }
        int count = Math.min(length, bytes.remaining());
        bytes.get(target, from, count);
        return count;
    }

    @Override
    public void close() throws IOException {
        reader.close();
    }

    private boolean refill() throws IOException {
        while (!bytes.hasRemaining() && !ended) {
            chars.compact();
            ended = reader.read(chars) < 0;
            chars.flip();
            bytes.clear();
            CoderResult result = encoder.encode(chars, bytes, ended);
            if (result.isError()) {
                result.throwException();
            }
            bytes.flip();
        }
        return bytes.hasRemaining();
    }

    private static int at(byte[] head, int index) {
        return index < head.length ? head[index] & 0xFF : -1;
    }
}
