package org.spanroom.input;

import org.spanroom.input.geopackage.WkbDecoder;
import org.spanroom.input.layer.FeatureFault;

/** What a coverage-guided fuzzer calls for the binary geometries of GeoPackages. */
public final class WkbFuzz {
    private WkbFuzz() {}

    public static void fuzzerTestOneInput(byte[] data) {
        var decoder = new WkbDecoder();
        try {
            decoder.decode(data);
        } catch (FeatureFault fault) {
            return;
        }
        decoder.vertices().build(decoder.kind());
    }
}
