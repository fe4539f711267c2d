package org.spanroom.cli;

import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The program's standard output in UTF-8. Remembers why writing failed, which a print writer does not report. */
final class StandardOut extends PrintWriter {
    private final Sink sink;

    StandardOut(OutputStream stream) {
        this(new Sink(stream));
    }

    private StandardOut(Sink sink) {
        super(new BufferedWriter(new OutputStreamWriter(sink, StandardCharsets.UTF_8)), true);
        this.sink = sink;
    }

    /** Returns a writer to the process's own standard output. */
    static StandardOut ofProcess() {
        return new StandardOut(new FileOutputStream(FileDescriptor.out));
    }

    /**
     * Returns why the output is incomplete, if it is. A reader that closed the pipe, as {@code head} does, has what it wanted.
     *
     * @param out any writer
     */
    static Optional<String> findLoss(PrintWriter out) {
        if (!out.checkError()) {
            return Optional.empty();
        }
        String reason = out instanceof StandardOut standard ? standard.sink.reason() : "it is closed";
        return Optional.of(reason).filter(text -> !text.toLowerCase(Locale.ROOT).contains("pipe"));
    }

    private static final class Sink extends OutputStream {
        private final OutputStream stream;
        private volatile @Nullable IOException failure;

        Sink(OutputStream stream) {
            this.stream = stream;
        }

        String reason() {
            IOException known = failure;
            return known == null || known.getMessage() == null ? "it is closed" : known.getMessage();
        }

        @Override
        public void write(int value) throws IOException {
            write(new byte[] {(byte) value}, 0, 1);
        }

        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
            try {
                stream.write(bytes, from, count);
            } catch (IOException e) {
                if (failure == null) {
                    failure = e;
                }
                throw e;
            }
        }

        @Override
        public void flush() throws IOException {
            stream.flush();
        }
    }
}
