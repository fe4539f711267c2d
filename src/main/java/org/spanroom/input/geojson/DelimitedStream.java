package org.spanroom.input.geojson;

import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;

/**
 * A stream of texts separated by one byte; it reads as one text after another, each with an end of its own.
 *
 * <p>Closing it is left to the owner of the stream below, because a parser closes what it has read to the end.
 */
final class DelimitedStream extends InputStream {
    private final InputStream in;
    private final byte delimiter;
    private final byte[] buffer = new byte[1 << 16];
    private int at;
    private int limit;
    private long texts;
    private boolean textEnded = true;

    DelimitedStream(InputStream in, byte delimiter) {
        this.in = in;
        this.delimiter = delimiter;
    }

    /** Goes to the next text, past what is left of this one, and returns false if there is none. */
    boolean nextText() throws IOException {
        while (!textEnded) {
            skipBuffered();
        }
        textEnded = false;
        texts++;
        return refill();
    }

    /** Returns the number, from 1, of the text at hand, empty ones included. */
    long text() {
        return texts;
    }

    @Override
    public int read() throws IOException {
        var one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xFF;
    }

    @Override
    public int read(byte[] target, int from, int length) throws IOException {
        Objects.checkFromIndexSize(from, length, target.length);
        if (length == 0) {
            return 0;
        }
        if (textEnded || !refill()) {
            textEnded = true;
            return -1;
        }
        int start = at;
        int end = Math.min(limit, at + length);
        while (at < end && buffer[at] != delimiter) {
            at++;
        }
        int count = at - start;
        System.arraycopy(buffer, start, target, from, count);
        if (at < end) {
            at++;
            textEnded = true;
        }
        return count == 0 ? -1 : count;
    }

    private void skipBuffered() throws IOException {
        if (!refill()) {
            textEnded = true;
        }
        while (at < limit && !textEnded) {
            textEnded = buffer[at++] == delimiter;
        }
    }

    private boolean refill() throws IOException {
        if (at == limit) {
            at = 0;
            limit = Math.max(0, in.read(buffer, 0, buffer.length));
        }
        return at < limit;
    }
}
