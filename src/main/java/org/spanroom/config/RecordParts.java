package org.spanroom.config;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Locale;

/** How records and the sections of a config go together: the key of a component, its value, and the record of its values. */
final class RecordParts {
    private RecordParts() {}

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
}
