package org.spanroom.input.shapefile;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerLog;

/** The files that make up one shapefile, found beside one of them by the same name and any of the endings, in any case. */
final class ShapefileParts {
    private static final int LONGEST_TEXT = 1 << 20;

    private final Path shp;
    private final Map<String, Path> byEnding;

    private ShapefileParts(Path shp, Map<String, Path> byEnding) {
        this.shp = shp;
        this.byEnding = byEnding;
    }

    /** Returns the parts of the shapefile that a file belongs to. */
    static ShapefileParts around(Path file) throws IOException {
        var found = new TreeMap<String, Path>();
        Path folder = Optional.ofNullable(file.getParent()).orElse(Path.of(""));
        String stem = LayerFormat.stem(file);
        try (DirectoryStream<Path> siblings = Files.newDirectoryStream(folder, Files::isRegularFile)) {
            for (Path sibling : siblings) {
                if (LayerFormat.stem(sibling).equalsIgnoreCase(stem)) {
                    found.merge(LayerFormat.ending(sibling), sibling, (a, b) -> betterMatch(a, b, file));
                }
            }
        }
        String ending = LayerFormat.ending(file);
        boolean belongsToOther = ending.matches("shx|dbf|dbt|fpt|prj|cpg|cst|sbn|sbx");
        if (!belongsToOther) {
            return new ShapefileParts(file, found);
        }
        Path shp = found.get("shp");
        if (shp == null) {
            throw new InputException(file, "its .shp is missing", "Put the .shp next to its other files");
        }
        return new ShapefileParts(shp, found);
    }

    Path shp() {
        return shp;
    }

    Optional<Path> shx() {
        return Optional.ofNullable(byEnding.get("shx"));
    }

    Optional<Path> dbf() {
        return Optional.ofNullable(byEnding.get("dbf"));
    }

    /** Returns the file with the texts of memo fields, if there is one. */
    Optional<Path> memos() {
        return Optional.ofNullable(byEnding.getOrDefault("fpt", byEnding.get("dbt")));
    }

    /** Returns the text of the .prj, if there is one with something in it. */
    Optional<String> crsDefinition(LayerLog log) throws IOException {
        return text("prj", log);
    }

    /** Returns the encoding that the .cpg or .cst states, if one does and we know it. */
    Optional<DbfEncoding> encoding(LayerLog log) throws IOException {
        Optional<String> name = text("cpg", log);
        if (name.isEmpty()) {
            name = text("cst", log);
        }
        Optional<DbfEncoding> known = name.flatMap(DbfEncoding::named);
        if (name.isPresent() && known.isEmpty()) {
            String stated = name.get().lines().findFirst().orElse("");
            log.layer(
                    FindingCode.LAYER_ISSUE,
                    "the encoding \"" + stated.substring(0, Math.min(40, stated.length()))
                            + "\" that is stated for the table is unknown; it was ignored");
        }
        return known;
    }

    private Optional<String> text(String ending, LayerLog log) throws IOException {
        Path file = byEnding.get(ending);
        if (file == null) {
            return Optional.empty();
        }
        if (Files.size(file) > LONGEST_TEXT) {
            log.layer(FindingCode.LAYER_ISSUE, "the ." + ending + " is too long to be one; it was ignored");
            return Optional.empty();
        }
        String text = new String(Files.readAllBytes(file), StandardCharsets.UTF_8);
        String stripped = (text.startsWith("\uFEFF") ? text.substring(1) : text).strip();
        return stripped.isEmpty() ? Optional.empty() : Optional.of(stripped);
    }

    /** Prefers the name that agrees in case, first before the dot and then behind it, and then the one that sorts first. */
    private static Path betterMatch(Path a, Path b, Path given) {
        Comparator<Path> byCase = Comparator.comparing(
                        (Path part) -> !LayerFormat.stem(part).equals(LayerFormat.stem(given)))
                .thenComparing(part -> hasCapitals(part) != hasCapitals(given))
                .thenComparing(Comparator.naturalOrder());
        return byCase.compare(a, b) <= 0 ? a : b;
    }

    /** Returns whether an ending is written as in ROADS.SHP. */
    private static boolean hasCapitals(Path part) {
        String name = String.valueOf(part.getFileName());
        String ending = name.substring(name.lastIndexOf('.') + 1);
        return !ending.equals(ending.toLowerCase(Locale.ROOT));
    }
}
