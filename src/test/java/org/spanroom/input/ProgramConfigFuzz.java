package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for the config of an annual program. */
public final class ProgramConfigFuzz {
    private ProgramConfigFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readProgramConfig(data);
    }
}
