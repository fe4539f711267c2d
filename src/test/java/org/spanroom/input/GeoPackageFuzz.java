package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for GeoPackages. */
public final class GeoPackageFuzz {
    private GeoPackageFuzz() {}

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedFile.readLayer("a.gpkg", data);
    }
}
