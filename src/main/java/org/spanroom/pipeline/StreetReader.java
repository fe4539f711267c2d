package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.InputException;
import org.spanroom.input.LineLayer;
import org.spanroom.model.Line;
import org.spanroom.model.network.Street;

/** Reads a layer of streets, a backdrop for maps. */
public final class StreetReader {
    /** What the field of a street's name is called, without case and signs; the first that a layer has counts. */
    private static final List<String> USUAL_NAMES = List.of(
            "name",
            "streetname",
            "street",
            "stname",
            "strname",
            "fullname",
            "fullstreetname",
            "roadname",
            "road",
            "label");

    private static final int NEAREST_SHOWN = 3;

    private StreetReader() {}

    /**
     * Returns the streets of a layer, in the order of their names, those without one last; the lines of one name are one street, in the order
     * of the file.
     *
     * @param file in any format that layers are read in; it states its reference system
     * @param nameField the field of the names; where none is given, one that is called as is usual, and where the layer has no such
     *     field, streets have no names
     * @throws InputException if the file cannot be read, holds something else than lines, or lacks the field
     */
    public static List<Street> read(Path file, Optional<String> nameField) {
        List<LineLayer.Named> lines = LineLayer.read(
                file,
                fields ->
                        nameField.isPresent() ? Optional.of(given(file, fields, nameField.get())) : findUsual(fields));
        var byName = new TreeMap<String, List<Line>>(
                Comparator.comparing(String::isEmpty).thenComparing(Comparator.naturalOrder()));
        for (LineLayer.Named line : lines) {
            byName.computeIfAbsent(line.value(), name -> new ArrayList<>()).add(line.lonLat());
        }
        return byName.entrySet().stream()
                .map(street -> new Street(street.getKey(), street.getValue()))
                .toList();
    }

    /** Returns the field of a name as the layer spells it: exactly so or, where none is, in other case. */
    private static String given(Path file, List<String> fields, String name) {
        return fields.contains(name)
                ? name
                : fields.stream()
                        .filter(name::equalsIgnoreCase)
                        .findFirst()
                        .orElseThrow(() -> noSuchField(file, fields, name));
    }

    private static InputException noSuchField(Path file, List<String> fields, String name) {
        List<String> nearest = NearestWord.nearest(name, fields, NEAREST_SHOWN);
        return new InputException(
                file,
                "it has no field '" + name + "' for the names of streets",
                nearest.isEmpty()
                        ? "It has no fields at all: remove --street-name."
                        : "The nearest are: " + String.join(", ", nearest) + ".");
    }

    private static Optional<String> findUsual(List<String> fields) {
        return USUAL_NAMES.stream()
                .flatMap(usual -> fields.stream().filter(field -> plain(field).equals(usual)))
                .findFirst();
    }

    private static String plain(String field) {
        return field.toLowerCase(Locale.ROOT).replaceAll("[^a-z]", "");
    }
}
