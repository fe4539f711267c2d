package org.spanroom.config;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Makes records of config nodes: a section for a record, a snake-case key for each component, a stand-in for what is left out.
 *
 * <p>Written out rather than left to a library so that another record's values can replace missing keys, and so that every
 * complaint names the line, the key and what would be right.
 */
final class Binder {
    private Binder() {}

    /** Returns the whole config as a record; keys that it lacks are taken from the stand-in. */
    static <T extends Record> T bind(ConfigNode node, Class<T> type, StandIn given) {
        return type.cast(record(node, type, given, "the config"));
    }

    private static Object record(ConfigNode node, Class<?> type, StandIn given, String name) {
        ConfigNode.Mapping section = mapping(node, name);
        RecordComponent[] components = type.getRecordComponents();
        List<String> keys = Arrays.stream(components).flatMap(FlagSets::keys).toList();
        demandKnownKeys(section, keys, name);
        Object[] values = new Object[components.length];
        for (int i = 0; i < components.length; i++) {
            values[i] = component(section, components[i], given, name);
        }
        return RecordParts.construct(section, type, components, values);
    }

    /** Returns the value of one component: what its section says, or what replaces that. */
    static Object component(ConfigNode.Mapping section, RecordComponent component, StandIn given, String name) {
        String key = RecordParts.key(component.getName());
        if (FlagSets.isOne(component)) {
            return FlagSets.read(section, component, given.component(component), name);
        }
        ConfigNode.Entry entry = section.entries().get(key);
        if (entry != null) {
            String shown = NumberRanges.isOfRate(key) ? rate(section, name) + "." + key : key;
            return value(entry.value(), component.getGenericType(), given.component(component), shown);
        }
        Optional<Object> left = given.demandsAll() ? Optional.empty() : absentOrEmpty(component.getType());
        return given.component(component).value().or(() -> left).orElseThrow(() -> missing(section, key, name));
    }

    /** Returns the name of the rate whose members a section has: it names the rate itself, or is named so. */
    private static String rate(ConfigNode.Mapping section, String name) {
        ConfigNode.Entry rate = section.entries().get("rate");
        return rate != null && rate.value() instanceof ConfigNode.Scalar scalar ? scalar.text() : name;
    }

    static ConfigProblem missing(ConfigNode.Mapping section, String key, String name) {
        return new ConfigProblem(section.line(), "the key '" + key + "' is missing in " + name, "Add it.");
    }

    /** Returns a node as a value of a component's type. */
    static Object value(ConfigNode node, Type type, StandIn given, String key) {
        Class<?> raw = raw(type);
        if (raw == InputFiles.class) {
            return files(node, key);
        }
        if (node instanceof ConfigNode.Scalar scalar && scalar.isNull() && raw != String.class) {
            return absent(raw).or(given::value).orElseThrow(() -> ScalarValues.wrongType(node, key, "a value"));
        }
        Optional<Object> ofTerms = TermSections.read(node, raw, given, key);
        if (ofTerms.isPresent()) {
            return ofTerms.get();
        }
        if (raw.isRecord()) {
            return record(node, raw, given, key);
        }
        if (raw == List.class) {
            return list(node, argument(type, 0), given.item(), key);
        }
        if (Map.class.isAssignableFrom(raw)) {
            return map(node, (ParameterizedType) type, given, key);
        }
        if (raw == Optional.class) {
            return Optional.of(value(node, argument(type, 0), StandIn.NOTHING, key));
        }
        return ScalarValues.simple(scalar(node, key), raw, key);
    }

    private static List<Object> list(ConfigNode node, Type itemType, StandIn given, String key) {
        if (!(node instanceof ConfigNode.Sequence sequence)) {
            throw ScalarValues.wrongType(node, key, "a list, such as [a, b]");
        }
        var items = new ArrayList<Object>();
        sequence.items().forEach(item -> items.add(value(item, itemType, given, key)));
        return items;
    }

    /**
     * A map that has one of our words, a record, or a switch for each key is filled up from the stand-in; of records and switches only a
     * sorted map takes keys that the stand-in lacks. Any other map, such as a curve, is used as it is written.
     */
    private static Map<Object, Object> map(ConfigNode node, ParameterizedType type, StandIn given, String key) {
        ConfigNode.Mapping section = mapping(node, key);
        Class<?> keyType = raw(argument(type, 0));
        Type valueType = argument(type, 1);
        boolean closed = raw(valueType).isRecord() || raw(valueType) == Boolean.class;
        boolean filledUp = closed || keyType.isEnum();
        boolean whole = keyType.isEnum() && section.entries().size() == keyType.getEnumConstants().length;
        Map<?, ?> stands = (Map<?, ?>) (filledUp && !whole ? given.value() : Optional.empty()).orElse(Map.of());
        if (closed && !stands.isEmpty() && raw(type) != SortedMap.class) {
            demandKnownKeys(
                    section, stands.keySet().stream().map(RecordParts::word).toList(), key);
        }
        Map<Object, Object> result = raw(type) == SortedMap.class ? new TreeMap<>() : new LinkedHashMap<>();
        result.putAll(stands);
        section.entries().forEach((name, entry) -> {
            Object mapKey = ScalarValues.simple(
                    new ConfigNode.Scalar(name, false, entry.line()), keyType, NumberRanges.KEY_OF + key);
            StandIn before = stands.containsKey(mapKey) ? () -> Optional.of(stands.get(mapKey)) : given.item();
            result.put(mapKey, value(entry.value(), valueType, before, key + "." + name));
        });
        return result;
    }

    /** One name is treated as a list of one. */
    private static InputFiles files(ConfigNode node, String key) {
        if (node instanceof ConfigNode.Scalar scalar) {
            return scalar.isNull() ? InputFiles.NONE : InputFiles.of(ScalarValues.path(scalar, key));
        }
        if (!(node instanceof ConfigNode.Sequence sequence)) {
            throw ScalarValues.wrongType(node, key, "the name of a file, or a list of names");
        }
        return new InputFiles(sequence.items().stream()
                .map(item -> ScalarValues.path(scalar(item, key), key))
                .toList());
    }

    static void demandKnownKeys(ConfigNode.Mapping section, List<String> keys, String name) {
        section.entries().forEach((key, entry) -> {
            if (!keys.contains(key)) {
                throw new ConfigProblem(
                        entry.line(), "unknown key '" + key + "' in " + name, NearestWord.remedy(key, keys));
            }
        });
    }

    static ConfigNode.Mapping mapping(ConfigNode node, String name) {
        if (node instanceof ConfigNode.Mapping mapping) {
            return mapping;
        }
        if (node instanceof ConfigNode.Scalar scalar && scalar.isNull()) {
            return new ConfigNode.Mapping(Map.of(), node.line());
        }
        throw ScalarValues.wrongType(node, name, "a section of keys");
    }

    static ConfigNode.Scalar scalar(ConfigNode node, String key) {
        if (node instanceof ConfigNode.Scalar scalar) {
            return scalar;
        }
        throw ScalarValues.wrongType(node, key, "a single value");
    }

    private static Optional<Object> absent(Class<?> type) {
        if (type == Optional.class) {
            return Optional.of(Optional.empty());
        }
        if (type == OptionalInt.class) {
            return Optional.of(OptionalInt.empty());
        }
        if (type == InputFiles.class) {
            return Optional.of(InputFiles.NONE);
        }
        return type == OptionalDouble.class ? Optional.of(OptionalDouble.empty()) : Optional.empty();
    }

    /** What is left out of a record that has no given values: nothing, no items, or not. */
    private static Optional<Object> absentOrEmpty(Class<?> type) {
        if (type == List.class) {
            return Optional.of(List.of());
        }
        return type == boolean.class ? Optional.of(false) : absent(type);
    }

    private static Class<?> raw(Type type) {
        return type instanceof ParameterizedType generic ? (Class<?>) generic.getRawType() : (Class<?>) type;
    }

    private static Type argument(Type type, int index) {
        return ((ParameterizedType) type).getActualTypeArguments()[index];
    }
}
