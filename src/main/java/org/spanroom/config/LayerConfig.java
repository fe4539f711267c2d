package org.spanroom.config;

import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * A layer to read.
 *
 * @param file the file, or several with the same fields; a config names them relative to itself
 * @param layer the layer's name, where the files hold several
 * @param crs the reference system, where the files state none or a wrong one; otherwise each is read in its own
 * @param axisOrder which ordinate comes first in the file
 * @param keep fields of the layer that are written with the results as they are recorded; of routes only
 */
public record LayerConfig(
        InputFiles file,
        Optional<String> layer,
        Optional<String> crs,
        AxisOrder axisOrder,
        FieldMap fields,
        List<String> keep) {
    /** As many as a table can show beside its own columns; and each is held for every route. */
    private static final int MOST_KEPT = 20;

    public static final LayerConfig NONE = new LayerConfig(
            InputFiles.NONE, Optional.empty(), Optional.empty(), AxisOrder.EAST_FIRST, FieldMap.EMPTY, List.of());

    public LayerConfig {
        keep = List.copyOf(keep);
        if (keep.size() > MOST_KEPT) {
            throw new IllegalArgumentException("keep names " + keep.size() + " fields; the maximum is " + MOST_KEPT);
        }
        if (keep.stream().anyMatch(String::isBlank)) {
            throw new IllegalArgumentException("keep names a field without a name");
        }
        if (new HashSet<>(keep).size() < keep.size()) {
            throw new IllegalArgumentException("keep names a field twice");
        }
    }

    public LayerConfig withFile(Path otherFile) {
        return withFiles(InputFiles.of(otherFile));
    }

    public LayerConfig withFiles(InputFiles others) {
        return new LayerConfig(others, layer, crs, axisOrder, fields, keep);
    }

    /**
     * Returns this for files that the config does not know. What it says of its own files, their layer, reference system and order of
     * ordinates, does not carry over to them; what its fields mean does.
     */
    public LayerConfig withOtherFiles(InputFiles others) {
        return new LayerConfig(others, Optional.empty(), Optional.empty(), AxisOrder.EAST_FIRST, fields, keep);
    }

    LayerConfig withFiles(UnaryOperator<Path> other) {
        return new LayerConfig(file.map(other), layer, crs, axisOrder, fields, keep);
    }

    public LayerConfig withCrs(String otherCrs) {
        return new LayerConfig(file, layer, Optional.of(otherCrs), axisOrder, fields, keep);
    }

    public LayerConfig withLayer(String otherLayer) {
        return new LayerConfig(file, Optional.of(otherLayer), crs, axisOrder, fields, keep);
    }

    public LayerConfig withFields(FieldMap otherFields) {
        return new LayerConfig(file, layer, crs, axisOrder, otherFields, keep);
    }
}
