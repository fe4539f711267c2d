package org.spanroom.input.fields;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.Blanks;

/**
 * The header of the contents table: where its columns are, and which others it has.
 *
 * <p>A column that the table lacks while another has almost its name is a misspelled one. It ends the run as a mapped field does that a
 * layer lacks: all that it holds would be assumed.
 *
 * @param columns the place of each column of ours that the table has
 * @param others names of those that are not ours, as they are in the table; a spreadsheet's columns without a name are left out
 */
record ContentsHeader(Map<String, Integer> columns, List<String> others) {
    private static final String SIZE = "outside_diameter";
    private static final String CATALOG = "catalog";

    static final List<String> COLUMNS = List.of(
            "duct",
            "item",
            "kind",
            "inside",
            SIZE,
            "sdr",
            "wall",
            "mass",
            "in_service",
            CATALOG,
            "may_move",
            "cells",
            "reserved",
            "color",
            "tag",
            "continuous_at_a",
            "continuous_at_b");

    private static final List<String> NEEDED = List.of("duct", "kind");

    /** Nothing is assumed where these are left out, and an owner's own column may well be called almost so: tag_no, colors. */
    private static final Set<String> NEVER_MISSED = Set.of("color", "tag");

    /** Spelled almost as one of ours, and something else. */
    private static final Set<String> NO_MISTAKES = Set.of("inside_diameter");

    /** In names of columns that may hold outside diameters. */
    private static final Pattern SIZE_WORDS = Pattern.compile("diam|(?:^|_)(?:od|dia|size|outer|outside)(?:_|$)");

    /** What a unit or a number behind a name looks like: _in, _kg_m, _id. */
    private static final Pattern SHORT_ENDING = Pattern.compile("(_[a-z]{1,2}){1,2}");

    /** So many letters of a name that was cut identify it. */
    private static final int SHORTEST_CUT = 7;

    /** @throws InputException if a necessary column is missing, one occurs twice, or another one is misspelled */
    static ContentsHeader read(Path file, List<String> header) {
        var columns = new TreeMap<String, Integer>();
        for (int i = 0; i < header.size(); i++) {
            String name = folded(header.get(i));
            if (COLUMNS.contains(name) && columns.putIfAbsent(name, i) != null) {
                throw new InputException(file, "two columns are called " + name, "Remove one of them.");
            }
        }
        if (!columns.keySet().containsAll(NEEDED)) {
            throw new InputException(
                    file,
                    "the contents table needs the columns duct and kind; its header is " + String.join(", ", header),
                    "The columns are " + String.join(", ", COLUMNS) + ".");
        }
        List<String> others = header.stream()
                .filter(name -> !name.isBlank() && !COLUMNS.contains(folded(name)))
                .toList();
        demandNoneMisspelled(file, columns, others);
        demandSizes(file, columns, others);
        return new ContentsHeader(columns, others);
    }

    /**
     * Sizes decide what fits, so a table whose sizes are in a column that no rule of spelling finds must not pass for one without sizes.
     * Where the catalog may have them, only a column that sounds like a size is one.
     */
    private static void demandSizes(Path file, Map<String, Integer> columns, List<String> others) {
        boolean mayBeSizes = columns.containsKey(CATALOG)
                ? others.stream()
                        .anyMatch(name -> SIZE_WORDS.matcher(folded(name)).find())
                : !others.isEmpty();
        if (!columns.containsKey(SIZE) && mayBeSizes) {
            throw new InputException(
                    file,
                    "it has no column " + SIZE + ", so sizes of innerducts and cables would be assumed; other columns: "
                            + String.join(", ", others),
                    "Rename the column that has outside diameters to " + SIZE + "; if there is none, add it empty.");
        }
    }

    private static String folded(String name) {
        return Blanks.strip(name).toLowerCase(Locale.ROOT).replace(' ', '_');
    }

    private static void demandNoneMisspelled(Path file, Map<String, Integer> columns, List<String> others) {
        List<String> missing = COLUMNS.stream()
                .filter(column -> !columns.containsKey(column) && !NEVER_MISSED.contains(column))
                .toList();
        String mistakes = others.stream()
                .flatMap(other -> meant(other, missing).stream()
                        .map(column -> "'" + column + "'; did you mean '" + column + "' by '" + other.strip() + "'?"))
                .collect(Collectors.joining("; "));
        if (!mistakes.isEmpty()) {
            throw new InputException(
                    file,
                    "it has no column " + mistakes,
                    "Rename the column of the table, or remove it. Units are set by inputs.contents.diameter_unit and mass_unit.");
        }
    }

    private static Optional<String> meant(String other, List<String> missing) {
        String name = folded(other).replaceAll("[^\\p{L}\\p{N}]+", "_").replaceAll("_$", "");
        if (NO_MISTAKES.contains(name)) {
            return Optional.empty();
        }
        return missing.stream()
                .filter(column ->
                        isWithEnding(name, column) || (name.length() >= SHORTEST_CUT && column.startsWith(name)))
                .findFirst()
                .or(() -> NearestWord.findAlmost(name, missing));
    }

    private static boolean isWithEnding(String name, String column) {
        return name.startsWith(column)
                && SHORT_ENDING.matcher(name.substring(column.length())).matches();
    }
}
