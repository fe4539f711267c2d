package org.spanroom.config;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A layer to read.
 *
 * @param file the file, or several with the same fields; a config names them relative to itself
 * @param layer the layer's name, where the files hold several
 * @param crs the reference system, where the files state none or a wrong one; otherwise each is read in its own
 * @param axisOrder which ordinate comes first in the file
 */
public record LayerConfig(
        InputFiles file, Optional<String> layer, Optional<String> crs, AxisOrder axisOrder, FieldMap fields) {
    public static final LayerConfig NONE =
            new LayerConfig(InputFiles.NONE, Optional.empty(), Optional.empty(), AxisOrder.EAST_FIRST, FieldMap.EMPTY);

    public LayerConfig withFile(Path otherFile) {
        return withFiles(InputFiles.of(otherFile));
    }

    public LayerConfig withFiles(InputFiles others) {
        return new LayerConfig(others, layer, crs, axisOrder, fields);
    }

    LayerConfig withFiles(UnaryOperator<Path> other) {
        return new LayerConfig(file.map(other), layer, crs, axisOrder, fields);
    }

    public LayerConfig withCrs(String otherCrs) {
        return new LayerConfig(file, layer, Optional.of(otherCrs), axisOrder, fields);
    }

    public LayerConfig withLayer(String otherLayer) {
        return new LayerConfig(file, Optional.of(otherLayer), crs, axisOrder, fields);
    }

    public LayerConfig withFields(FieldMap otherFields) {
        return new LayerConfig(file, layer, crs, axisOrder, otherFields);
    }
}
