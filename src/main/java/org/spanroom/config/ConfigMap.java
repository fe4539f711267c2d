package org.spanroom.config;

import java.lang.reflect.RecordComponent;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.spanroom.model.Term;
import org.spanroom.model.Unit;

/** Turns records back into the sections, keys and values of a config. */
final class ConfigMap {
    private static final MathContext SHOWN_DIGITS = new MathContext(15);

    private ConfigMap() {}

    static Map<String, Object> section(Record record) {
        var section = new LinkedHashMap<String, Object>();
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            Object value = RecordParts.valueOf(component, record);
            if (FlagSets.isOne(component)) {
                FlagSets.write(component, value, section);
            } else {
                plain(value).ifPresent(shown -> section.put(RecordParts.key(component.getName()), shown));
            }
        }
        return section;
    }

    /** Returns a value in the form that a config has; empty for one that is absent. */
    private static Optional<Object> plain(Object value) {
        if (value instanceof Optional<?> optional) {
            return optional.flatMap(ConfigMap::plain);
        }
        if (value instanceof OptionalInt optional) {
            return optional.isPresent() ? Optional.of(optional.getAsInt()) : Optional.empty();
        }
        if (value instanceof OptionalDouble optional) {
            return optional.isPresent() ? Optional.of(optional.getAsDouble()) : Optional.empty();
        }
        if (value instanceof InputFiles files) {
            return files(files);
        }
        if (value instanceof Unit unit) {
            return Optional.of(unit.symbol());
        }
        if (value instanceof Path path) {
            return Optional.of(path.toString().replace('\\', '/'));
        }
        return Optional.of(collection(value));
    }

    private static Optional<Object> files(InputFiles files) {
        return files.paths().size() == 1
                ? plain(files.paths().get(0))
                : Optional.<Object>of(files.paths())
                        .filter(any -> !files.isEmpty())
                        .flatMap(ConfigMap::plain);
    }

    private static Object collection(Object value) {
        if (value instanceof FieldMap fields) {
            return fields(fields);
        }
        if (value instanceof AssumedValues assumed) {
            return assumed(assumed);
        }
        if (value instanceof PlausibleRanges ranges) {
            return ranges(ranges);
        }
        if (value instanceof Record record) {
            return section(record);
        }
        if (value instanceof List<?> list) {
            return list.stream().flatMap(item -> plain(item).stream()).toList();
        }
        if (value instanceof Map<?, ?> map) {
            var section = new LinkedHashMap<String, Object>();
            map.forEach((key, item) -> plain(item).ifPresent(shown -> section.put(RecordParts.word(key), shown)));
            return section;
        }
        return value instanceof Number || value instanceof Boolean ? value : RecordParts.word(value);
    }

    private static Map<String, Object> fields(FieldMap fields) {
        var section = new LinkedHashMap<String, Object>();
        fields.byTerm().forEach((term, source) -> section.put(term.key(), source(source)));
        return section;
    }

    private static Object source(FieldSource source) {
        if (source.unit().isEmpty()) {
            return source.field();
        }
        var section = new LinkedHashMap<String, Object>();
        section.put("field", source.field());
        section.put("unit", source.unit().get().symbol());
        return section;
    }

    private static Map<String, Object> assumed(AssumedValues assumed) {
        var section = new LinkedHashMap<String, Object>();
        for (Term term : Term.values()) {
            assumed.findNumber(term).ifPresent(number -> section.put(term.key(), quantity(term, number)));
            assumed.findWord(term).ifPresent(word -> section.put(term.key(), word));
        }
        return section;
    }

    private static Map<String, Object> ranges(PlausibleRanges ranges) {
        var section = new LinkedHashMap<String, Object>();
        for (Term term : Term.values()) {
            var range = new LinkedHashMap<String, Object>();
            Optional.ofNullable(ranges.least().get(term)).ifPresent(least -> range.put("least", quantity(term, least)));
            Optional.ofNullable(ranges.most().get(term)).ifPresent(most -> range.put("most", quantity(term, most)));
            if (!range.isEmpty()) {
                section.put(term.key(), range);
            }
        }
        return section;
    }

    private static String quantity(Term term, double kept) {
        String number = new BigDecimal(kept, SHOWN_DIGITS).stripTrailingZeros().toPlainString();
        return TermQuantities.keptUnit(term)
                .map(unit -> number + " " + unit.symbol())
                .orElse(number);
    }
}
