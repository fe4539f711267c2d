package org.spanroom.input;

import java.io.IOException;

/** What a coverage-guided fuzzer calls for Shapefiles: bytes for .shp, .shx and .dbf, each behind its length. */
public final class ShapefileFuzz {
    private ShapefileFuzz() {}

    public static void fuzzerTestOneInput(byte[] data) throws IOException {
        FuzzedFile.readShapefile(data);
    }
}
