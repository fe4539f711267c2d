package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for permit zones: rings and their repair, words and days, in GeoJSON. */
public final class ZonesFuzz {
    private ZonesFuzz() {}

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedFile.readZones(data);
    }
}
