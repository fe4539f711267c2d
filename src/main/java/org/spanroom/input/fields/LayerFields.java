package org.spanroom.input.fields;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.spanroom.config.FieldMap;
import org.spanroom.config.FieldSource;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/**
 * Where each mapped term is found in the values of a layer's features.
 *
 * <p>A field is taken by its name, else by its name without regard to case, else by the first ten characters of it, which is all that a
 * Shapefile keeps: one config serves the same layer in every format. Where several mapped fields begin with the same ten characters, a field of
 * that name is ambiguous, and none is taken.
 */
public final class LayerFields {
    /** This many characters of a field's name a Shapefile keeps. */
    public static final int SHAPEFILE_NAME_LENGTH = 10;

    private final List<String> wanted;
    private final Map<Term, Column> columns = new EnumMap<>(Term.class);
    private final List<Column> kept = new ArrayList<>();

    /**
     * The place of a term's field.
     *
     * @param index in the list of wanted fields
     * @param field its name in the layer
     */
    record Column(int index, String field, Optional<Unit> unit) {}

    public LayerFields(FieldMap map, LayerHeader header) {
        this(map, List.of(), header);
    }

    /**
     * Finds mapped fields, and others that are kept as they are.
     *
     * @param keep the names of those
     */
    public LayerFields(FieldMap map, List<String> keep, LayerHeader header) {
        var names = new LinkedHashMap<String, Integer>();
        List<String> asked = new ArrayList<>(
                map.byTerm().values().stream().map(FieldSource::field).toList());
        asked.addAll(keep);
        map.byTerm().forEach((term, source) -> {
            String name = nameInLayer(source.field(), header.fields(), asked);
            columns.put(term, new Column(index(name, names), name, source.unit()));
        });
        for (String field : keep) {
            String name = nameInLayer(field, header.fields(), asked);
            kept.add(new Column(index(name, names), name, Optional.empty()));
        }
        wanted = List.copyOf(names.keySet());
    }

    private static int index(String name, Map<String, Integer> names) {
        return names.computeIfAbsent(name, key -> names.size());
    }

    /** Returns the fields that are kept, in the order in which they were requested. */
    List<Column> kept() {
        return kept;
    }

    /** Returns the fields to ask the layer for. */
    public List<String> wanted() {
        return wanted;
    }

    Optional<Column> find(Term term) {
        return Optional.ofNullable(columns.get(term));
    }

    private static String nameInLayer(String name, List<String> fields, List<String> asked) {
        if (fields.contains(name)) {
            return name;
        }
        return only(fields.stream().filter(name::equalsIgnoreCase).toList())
                .or(() -> findShortened(name, fields).filter(field -> isShortOfOne(field, fields, asked)))
                .orElse(name);
    }

    /** Finds the field that may be what a Shapefile keeps of a name. */
    public static Optional<String> findShortened(String name, List<String> fields) {
        return only(fields.stream()
                .filter(field -> field.length() == SHAPEFILE_NAME_LENGTH)
                .filter(field -> beginsWith(name, field))
                .toList());
    }

    private static boolean isShortOfOne(String field, List<String> fields, List<String> mapped) {
        return mapped.stream().noneMatch(field::equalsIgnoreCase)
                && mapped.stream()
                                .filter(name -> beginsWith(name, field))
                                .filter(name -> fields.stream().noneMatch(name::equalsIgnoreCase))
                                .map(name -> name.toLowerCase(Locale.ROOT))
                                .distinct()
                                .count()
                        == 1;
    }

    private static boolean beginsWith(String name, String field) {
        return name.toLowerCase(Locale.ROOT).startsWith(field.toLowerCase(Locale.ROOT));
    }

    private static Optional<String> only(List<String> names) {
        return names.size() == 1 ? Optional.of(names.get(0)) : Optional.empty();
    }
}
