package org.spanroom.output;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.spanroom.model.OutputFormat;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.style.LayerStyle;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;

/**
 * Styles beside a GeoJSON file or a Shapefile, under the names at which a desktop GIS finds them by itself: those of the layer, with other
 * endings. A GeoPackage has its styles inside.
 */
final class StyleFiles {
    private static final String SLD = ".sld";
    private static final String QML = ".qml";

    /** Words that may be names of columns; parts of longer words are none. */
    private static final Pattern WORD = Pattern.compile("(?<![\\w.-])[a-z][a-z0-9_]*(?![\\w-])");

    private StyleFiles() {}

    /** Returns whether a table in such formats has its styles in files of their own. */
    static boolean areBeside(Set<OutputFormat> formats) {
        return formats.contains(OutputFormat.GEOJSON) || formats.contains(OutputFormat.SHAPEFILE);
    }

    static List<String> names(String table) {
        return List.of(table + SLD, table + QML);
    }

    /**
     * Writes the style of a layer.
     *
     * @param formats of the layer's files. One style serves them all: it has the columns' short names only where all that it is for is a
     *     Shapefile
     */
    static void write(Path folder, Table<?> table, LayerStyle style, Set<OutputFormat> formats) {
        boolean isShort = !formats.contains(OutputFormat.GEOJSON);
        put(folder.resolve(table.name() + SLD), isShort ? withShortNames(style.sld(), table) : style.sld());
        put(folder.resolve(table.name() + QML), isShort ? withShortNames(style.qml(), table) : style.qml());
    }

    /** Returns a style for a Shapefile of the table, whose columns have other names. */
    static String withShortNames(String style, Table<?> table) {
        Map<String, String> shortNames = new HashMap<>();
        for (Column<?> column : table.columns()) {
            shortNames.put(column.name(), column.shortName());
        }
        return WORD.matcher(style)
                .replaceAll(word ->
                        Matcher.quoteReplacement(shortNames.getOrDefault(word.group(), word.group())));
    }

    private static void put(Path file, String text) {
        try {
            Files.writeString(file, text);
        } catch (IOException failure) {
            throw OutputException.of(file, failure);
        }
    }
}
