package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for a field book, from its rows to the ducts and vaults that it changes. */
public final class FieldBookFuzz {
    private FieldBookFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedDocument.readFieldBook(data);
    }
}
