package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for the config of a run, and what its record keeps of it. */
public final class RunConfigFuzz {
    private RunConfigFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readRunConfig(data);
    }
}
