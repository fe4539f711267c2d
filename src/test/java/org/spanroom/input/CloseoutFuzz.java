package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for a close-out file. */
public final class CloseoutFuzz {
    private CloseoutFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readCloseout(data);
    }
}
