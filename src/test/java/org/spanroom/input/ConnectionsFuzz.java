package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for a table of connections. */
public final class ConnectionsFuzz {
    private ConnectionsFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readConnections(data);
    }
}
