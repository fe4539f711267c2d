package org.spanroom.input;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.geojson.GeoJsonSource;
import org.spanroom.input.geopackage.GeoPackageSource;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerInfo;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.shapefile.ShapefileSource;

/** Opens the layers of files, whatever their format. */
public final class LayerSources {
    private LayerSources() {}

    /**
     * Opens a layer for reading.
     *
     * @param layerName the layer's name; may be empty where the file has one layer only
     * @param findings takes what is wrong with the layer, now and while it is read
     */
    static LayerSource open(Path file, Optional<String> layerName, FindingLog findings) {
        LayerFormat format = LayerFormat.of(file);
        if (format == LayerFormat.GEOPACKAGE) {
            return GeoPackageSource.open(file, layerName, findings);
        }
        LayerSource source = format == LayerFormat.GEOJSON
                ? GeoJsonSource.open(file, findings)
                : ShapefileSource.open(file, findings);
        String only = source.header().layerName();
        if (layerName.isPresent() && !layerName.get().equals(only)) {
            source.close();
            throw new InputException(
                    file,
                    "it has no layer \"" + layerName.get() + "\"; a " + format.title() + " is one layer",
                    "Remove the layer name");
        }
        return source;
    }

    /** Returns the layers of a file; except in a GeoPackage this reads it to the end. */
    public static List<LayerInfo> list(Path file) {
        if (LayerFormat.of(file) == LayerFormat.GEOPACKAGE) {
            return GeoPackageSource.list(file);
        }
        try (LayerSource source = open(file, Optional.empty(), new FindingLog())) {
            var types = new TreeSet<String>();
            long count = source.read(List.of(), feature -> types.add(feature.geometryType()));
            types.remove("null");
            return List.of(new LayerInfo(source.header().layerName(), String.join(", ", types), count));
        }
    }
}
