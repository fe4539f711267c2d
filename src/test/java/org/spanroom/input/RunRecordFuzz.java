package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for the record of an earlier run (run.json). */
public final class RunRecordFuzz {
    private RunRecordFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readRunRecord(data);
    }
}
