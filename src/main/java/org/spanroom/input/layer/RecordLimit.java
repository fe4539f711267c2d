package org.spanroom.input.layer;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/** Ends the reading of a table in which a record does not end: one quote that is not closed would take the rest of the file. */
public final class RecordLimit extends FilterReader {
    private final long mostCharacters;
    private long characters;

    public RecordLimit(Reader in, long mostCharacters) {
        super(in);
        this.mostCharacters = mostCharacters;
    }

    /** A next record begins; what has been read ahead counts for the last one. */
    public void next() {
        characters = 0;
    }

    @Override
    public int read() throws IOException {
        int read = super.read();
        count(read < 0 ? 0 : 1);
        return read;
    }

    @Override
    public int read(char[] target, int from, int length) throws IOException {
        int read = super.read(target, from, length);
        count(Math.max(0, read));
        return read;
    }

    private void count(int read) throws IOException {
        characters += read;
        if (characters > mostCharacters) {
            throw new IOException("a row of more than " + mostCharacters + " characters: is a quote not closed?");
        }
    }
}
