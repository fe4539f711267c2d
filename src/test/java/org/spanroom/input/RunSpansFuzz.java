package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for the spans of an earlier run, as text before it is compressed. */
public final class RunSpansFuzz {
    private RunSpansFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readRunSpans(data);
    }
}
