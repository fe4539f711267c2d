package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.OutputFormat;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.style.LayerStyle;
import org.spanroom.output.style.LayerStyles;
import org.spanroom.output.table.Table;

/**
 * Styles beside a GeoJSON file or a Shapefile, under the names at which a desktop GIS finds them by itself: those of the layer, with other
 * endings. A GeoPackage has its styles inside.
 */
final class StyleFiles {
    private static final String SLD = ".sld";
    private static final String QML = ".qml";

    private StyleFiles() {}

    /** Returns whether a table in such formats has its styles in files of their own. */
    static boolean areBeside(Set<OutputFormat> formats) {
        return formats.contains(OutputFormat.GEOJSON) || formats.contains(OutputFormat.SHAPEFILE);
    }

    static List<String> names(String table) {
        return List.of(table + SLD, table + QML);
    }

    /**
     * Writes the style of a layer, if it has one.
     *
     * @param formats of the layer's files. One style serves them all: it has the columns' short names only where all that it is for is a
     *     Shapefile
     */
    static void write(Path folder, Table<?> table, Set<OutputFormat> formats) {
        boolean isShort = !formats.contains(OutputFormat.GEOJSON);
        Optional<LayerStyle> style = isShort ? LayerStyles.findForShortNames(table) : LayerStyles.find(table);
        style.ifPresent(found -> {
            put(folder.resolve(table.name() + SLD), found.sld());
            put(folder.resolve(table.name() + QML), found.qml());
        });
    }

    private static void put(Path file, String text) {
        try {
            Files.writeString(file, text);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }
}
