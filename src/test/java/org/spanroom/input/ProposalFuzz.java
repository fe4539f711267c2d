package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for guesses of what the fields of layers mean. */
public final class ProposalFuzz {
    private ProposalFuzz() {}

    public static void fuzzerInitialize() {
        FuzzedDocument.begin();
    }

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedProposal.read(data);
    }
}
