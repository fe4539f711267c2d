package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for a layer of streets. */
public final class StreetsFuzz {
    private StreetsFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readStreets(data);
    }
}
