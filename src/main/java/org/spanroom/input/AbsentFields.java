package org.spanroom.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.LayerFields;
import org.spanroom.input.layer.LayerHeader;

/**
 * The mapped fields that the files of a layer lack. A field that none of them has is a mistake in the config, and ends the run: all that
 * it should hold would be assumed. One that only some files have is reported.
 */
final class AbsentFields {
    private static final int MOST_FIELDS_SHOWN = 40;

    /** The key of the config that fields which are kept are named at. */
    private static final String KEPT = "keep";

    private final String role;
    private final List<OfFile> files = new ArrayList<>();

    AbsentFields(String role) {
        this.role = role;
    }

    private record OfFile(LayerHeader header, String source, Map<String, String> absent) {}

    /** Adds a file of which at least one feature was used. */
    void add(LayerHeader header, String source, Map<String, String> absent) {
        files.add(new OfFile(header, source, absent));
    }

    /**
     * Reports what is missing; to be called when all files have been read.
     *
     * @throws InputException if no file has one of the fields
     */
    void report(FindingLog findings) {
        if (files.isEmpty()) {
            return;
        }
        OfFile first = files.get(0);
        var nowhere = new TreeMap<>(first.absent);
        files.forEach(file -> nowhere.keySet().retainAll(file.absent.keySet()));
        if (!nowhere.isEmpty()) {
            throw refusal(first, nowhere);
        }
        files.forEach(file -> file.absent.forEach((field, term) -> findings.add(Finding.of(
                FindingCode.LAYER_ISSUE,
                file.source,
                "",
                "the file has no field '" + field + "', which the config names for " + term
                        + " and another file of the layer has" + hint(field, file.header)))));
    }

    private InputException refusal(OfFile file, Map<String, String> absent) {
        String each = absent.entrySet().stream()
                .map(field -> "'" + field.getKey() + "' (mapped to " + field.getValue() + ")"
                        + hint(field.getKey(), file.header))
                .collect(Collectors.joining("; "));
        List<String> fields = file.header.fields();
        String shown = fields.stream().limit(MOST_FIELDS_SHOWN).collect(Collectors.joining(", "));
        return new InputException(
                file.header.file(),
                "it has no field " + each,
                fields.isEmpty()
                        ? "The file has no fields at all; of a Shapefile, is its .dbf missing?"
                        : "Correct " + keys(absent)
                                + ", or remove the fields that the file does not have. Its fields are "
                                + (fields.size() > MOST_FIELDS_SHOWN ? shown + " and more" : shown) + ".");
    }

    /** Returns the keys of the config that name the fields. */
    private String keys(Map<String, String> absent) {
        return absent.values().stream()
                .map(term -> "inputs." + role + (term.equals(KEPT) ? ".keep" : ".fields"))
                .distinct()
                .sorted()
                .collect(Collectors.joining(" and "));
    }

    private static String hint(String field, LayerHeader header) {
        return suggestion(field, header.fields())
                .map(name -> "; did you mean '" + name + "'?")
                .orElse("");
    }

    /** A cut name first, then what is inside an object of that name, then the name that is spelled most similarly. */
    private static Optional<String> suggestion(String field, List<String> fields) {
        String cut = field.substring(0, Math.min(field.length(), LayerFields.SHAPEFILE_NAME_LENGTH));
        return LayerFields.findShortened(field, fields)
                .or(() -> fields.stream()
                        .filter(name -> name.startsWith(field + "."))
                        .findFirst())
                .or(() -> fields.stream()
                        .filter(name -> name.endsWith("." + field))
                        .findFirst())
                .or(() -> NearestWord.find(field, fields))
                .or(() -> NearestWord.find(cut, fields));
    }
}
