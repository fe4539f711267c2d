package org.spanroom.sample;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** What the invented crews of the demo city report of the first weeks of its program: a file of our own, made once. */
final class DemoCloseout {
    static final String FILE = "closeout.csv";

    private DemoCloseout() {}

    /** Returns the close-out file. */
    static String text() {
        try (InputStream in = DemoCloseout.class.getResourceAsStream(FILE)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its own file " + FILE);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
