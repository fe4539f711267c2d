package org.spanroom.config;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.spanroom.finding.FileName;
import org.spanroom.model.Unit;
import org.spanroom.model.Worded;

/**
 * Makes records of config nodes: a section for a record, a snake-case key for each component, a stand-in for what is left out.
 *
 * <p>Written out rather than left to a library so that another record's values can replace missing keys, and so that every
 * complaint names the line, the key and what would be right.
 */
final class Binder {
    private static final Pattern WHOLE = Pattern.compile("[-+]?[0-9]+");

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
        return construct(section, type, components, values);
    }

    /** Returns the value of one component: what its section says, or what replaces that. */
    static Object component(ConfigNode.Mapping section, RecordComponent component, StandIn given, String name) {
        String key = key(component.getName());
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
            return absent(raw).or(given::value).orElseThrow(() -> wrongType(node, key, "a value"));
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
        return simple(scalar(node, key), raw, key);
    }

    private static Object simple(ConfigNode.Scalar node, Class<?> raw, String key) {
        if (raw == String.class) {
            return node.text();
        }
        if (raw.isEnum() && raw != Unit.class) {
            return constant(node, raw, key);
        }
        return switch (raw.getSimpleName()) {
            case "double", "Double" -> number(node, key);
            case "OptionalDouble" -> OptionalDouble.of(number(node, key));
            case "int", "Integer" -> wholeNumber(node, key);
            case "OptionalInt" -> OptionalInt.of(wholeNumber(node, key));
            case "boolean", "Boolean" -> flag(node, key);
            case "Path" -> path(node, key);
            case "Unit" -> unit(node, key);
            default -> throw new IllegalStateException("no binding for type " + raw.getName() + " of key " + key);
        };
    }

    private static List<Object> list(ConfigNode node, Type itemType, StandIn given, String key) {
        if (!(node instanceof ConfigNode.Sequence sequence)) {
            throw wrongType(node, key, "a list, such as [a, b]");
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
            demandKnownKeys(section, stands.keySet().stream().map(Binder::word).toList(), key);
        }
        Map<Object, Object> result = raw(type) == SortedMap.class ? new TreeMap<>() : new LinkedHashMap<>();
        result.putAll(stands);
        section.entries().forEach((name, entry) -> {
            Object mapKey =
                    simple(new ConfigNode.Scalar(name, false, entry.line()), keyType, NumberRanges.KEY_OF + key);
            StandIn before = stands.containsKey(mapKey) ? () -> Optional.of(stands.get(mapKey)) : given.item();
            result.put(mapKey, value(entry.value(), valueType, before, key + "." + name));
        });
        return result;
    }

    private static Object constant(ConfigNode.Scalar node, Class<?> type, String key) {
        List<?> constants = Arrays.asList(type.getEnumConstants());
        String wanted = node.text().strip().replace('-', '_').replace(' ', '_');
        return constants.stream()
                .filter(constant -> isNamed(constant, wanted))
                .findFirst()
                .map(Object.class::cast)
                .orElseThrow(() -> new ConfigProblem(
                        node.line(),
                        "'" + node.text() + "' is not a valid value for " + key,
                        NearestWord.remedy(
                                node.text(),
                                constants.stream().map(Binder::word).toList())));
    }

    private static boolean isNamed(Object constant, String wanted) {
        return word(constant).equalsIgnoreCase(wanted)
                || (constant instanceof Worded choice && choice.words().contains(wanted.toLowerCase(Locale.ROOT)));
    }

    private static double number(ConfigNode.Scalar node, String key) {
        try {
            double number = Double.parseDouble(node.text().strip());
            if (Double.isFinite(number) && !node.text().matches(".*[dDfF]\\s*")) {
                return inRange(number, node, key);
            }
        } catch (NumberFormatException e) {
            // Falls through to the message below.
        }
        throw wrongType(node, key, "a number");
    }

    private static double inRange(double number, ConfigNode.Scalar node, String key) {
        NumberRange range = NumberRanges.of(key);
        if (!range.contains(number)) {
            throw outside(node, key, range.words(), range);
        }
        // Zero with a sign is zero.
        return number == 0 ? 0 : number;
    }

    private static int wholeNumber(ConfigNode.Scalar node, String key) {
        String text = node.text().strip();
        if (!WHOLE.matcher(text).matches()) {
            throw wrongType(node, key, "a whole number");
        }
        NumberRange range = NumberRanges.of(key);
        double number = Double.parseDouble(text);
        if (!range.contains(number)) {
            throw outside(node, key, range.wholeWords(), range);
        }
        return (int) number;
    }

    /** @param wanted the range in words */
    static ConfigProblem outside(ConfigNode node, String key, String wanted, NumberRange range) {
        return new ConfigProblem(node.line(), key + " must be " + wanted + ", is " + node.kind(), range.remedy());
    }

    static boolean flag(ConfigNode.Scalar node, String key) {
        return switch (node.text().strip().toLowerCase(Locale.ROOT)) {
            case "true", "yes" -> true;
            case "false", "no" -> false;
            default -> throw wrongType(node, key, "true or false");
        };
    }

    /** One name is treated as a list of one. */
    private static InputFiles files(ConfigNode node, String key) {
        if (node instanceof ConfigNode.Scalar scalar) {
            return scalar.isNull() ? InputFiles.NONE : InputFiles.of(path(scalar, key));
        }
        if (!(node instanceof ConfigNode.Sequence sequence)) {
            throw wrongType(node, key, "the name of a file, or a list of names");
        }
        return new InputFiles(sequence.items().stream()
                .map(item -> path(scalar(item, key), key))
                .toList());
    }

    static Path path(ConfigNode.Scalar node, String key) {
        FileName.remedy(node.text()).ifPresent(remedy -> {
            throw new ConfigProblem(node.line(), key + ": the name " + node.kind() + " cannot be used: " + remedy, "");
        });
        try {
            if (!node.text().isBlank()) {
                return Path.of(node.text().strip());
            }
        } catch (InvalidPathException e) {
            // Falls through to the message below.
        }
        throw wrongType(node, key, "the name of a file or folder");
    }

    private static Unit unit(ConfigNode.Scalar node, String key) {
        return Unit.findBySymbol(node.text())
                .orElseThrow(() -> new ConfigProblem(
                        node.line(),
                        "'" + node.text() + "' is not a known unit (" + key + ")",
                        NearestWord.remedy(
                                node.text(),
                                Arrays.stream(Unit.values()).map(Unit::symbol).toList())));
    }

    static Object construct(ConfigNode.Mapping section, Class<?> type, RecordComponent[] components, Object[] values) {
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        try {
            return type.getDeclaredConstructor(types).newInstance(values);
        } catch (InvocationTargetException e) {
            if (e.getCause() instanceof IllegalArgumentException broken) {
                throw brokenRule(section, components, String.valueOf(broken.getMessage()));
            }
            throw new IllegalStateException("cannot make a " + type.getName(), e);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("cannot make a " + type.getName(), e);
        }
    }

    /** A record names its component; the reader of the config knows the key. */
    private static ConfigProblem brokenRule(ConfigNode.Mapping section, RecordComponent[] components, String message) {
        for (RecordComponent component : components) {
            if (message.startsWith(component.getName() + " ")) {
                String key = key(component.getName());
                ConfigNode.Entry entry = section.entries().get(key);
                int line = entry == null ? section.line() : entry.line();
                return new ConfigProblem(
                        line, key + message.substring(component.getName().length()), "");
            }
        }
        return new ConfigProblem(section.line(), message, "");
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
        throw wrongType(node, name, "a section of keys");
    }

    static ConfigNode.Scalar scalar(ConfigNode node, String key) {
        if (node instanceof ConfigNode.Scalar scalar) {
            return scalar;
        }
        throw wrongType(node, key, "a single value");
    }

    private static ConfigProblem wrongType(ConfigNode node, String key, String wanted) {
        return new ConfigProblem(node.line(), key + " must be " + wanted + ", is " + node.kind(), "");
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

    static Object valueOf(RecordComponent component, Object record) {
        try {
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("cannot read " + component, e);
        }
    }

    /** Returns a component's key: snapToleranceM is snap_tolerance_m. */
    static String key(String componentName) {
        return componentName.replaceAll("(?<=.)(?=\\p{Upper})", "_").toLowerCase(Locale.ROOT);
    }

    /** Returns the word for an enum constant, or any other key, in a config. */
    static String word(Object value) {
        return value instanceof Enum<?> constant ? constant.name().toLowerCase(Locale.ROOT) : value.toString();
    }

    private static Class<?> raw(Type type) {
        return type instanceof ParameterizedType generic ? (Class<?>) generic.getRawType() : (Class<?>) type;
    }

    private static Type argument(Type type, int index) {
        return ((ParameterizedType) type).getActualTypeArguments()[index];
    }
}
