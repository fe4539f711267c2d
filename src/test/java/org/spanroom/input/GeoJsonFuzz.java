package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for GeoJSON, line-delimited JSON and JSON text sequences. */
public final class GeoJsonFuzz {
    private GeoJsonFuzz() {}

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedFile.readLayer("a.geojson", data);
    }
}
