package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for the contents table. */
public final class ContentsFuzz {
    private ContentsFuzz() {}

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedFile.readContents(data);
    }
}
