package org.spanroom.config;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Sets of our words, which a section holds as one flag for each word that there is, beside its other keys. */
final class FlagSets {
    private FlagSets() {}

    static boolean isOne(RecordComponent component) {
        return component.getType() == Set.class;
    }

    /** Returns the keys of a component in its section: its own, or those of its flags. */
    static Stream<String> keys(RecordComponent component) {
        return isOne(component)
                ? words(component).stream().map(Binder::word)
                : Stream.of(Binder.key(component.getName()));
    }

    /** Returns the words whose flags are set; a flag that is left out is as given, or not set. */
    static Set<Object> read(ConfigNode.Mapping section, RecordComponent component, Optional<Object> given) {
        Set<?> before = (Set<?>) given.orElse(Set.of());
        var set = new LinkedHashSet<Object>();
        for (Object word : words(component)) {
            String key = Binder.word(word);
            ConfigNode.Entry entry = section.entries().get(key);
            boolean isSet = entry == null ? before.contains(word) : Binder.flag(Binder.scalar(entry.value(), key), key);
            if (isSet) {
                set.add(word);
            }
        }
        return set;
    }

    static void write(RecordComponent component, Object value, Map<String, Object> section) {
        words(component).forEach(word -> section.put(Binder.word(word), ((Set<?>) value).contains(word)));
    }

    private static List<?> words(RecordComponent component) {
        var type = (ParameterizedType) component.getGenericType();
        return List.of(((Class<?>) type.getActualTypeArguments()[0]).getEnumConstants());
    }
}
