package org.spanroom.config;

import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
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
                ? words(component).stream().map(RecordParts::word)
                : Stream.of(RecordParts.key(component.getName()));
    }

    /** Returns the words whose flags are set; a flag that is left out is as given, or not set. */
    static Set<Object> read(ConfigNode.Mapping section, RecordComponent component, StandIn given, String name) {
        var set = new LinkedHashSet<Object>();
        for (Object word : words(component)) {
            String key = RecordParts.word(word);
            ConfigNode.Entry entry = section.entries().get(key);
            if (entry == null && given.demandsAll()) {
                throw Binder.missing(section, key, name);
            }
            boolean isSet = entry == null
                    ? given.value()
                            .filter(before -> ((Set<?>) before).contains(word))
                            .isPresent()
                    : ScalarValues.flag(Binder.scalar(entry.value(), key), key);
            if (isSet) {
                set.add(word);
            }
        }
        return set;
    }

    static void write(RecordComponent component, Object value, Map<String, Object> section) {
        words(component).forEach(word -> section.put(RecordParts.word(word), ((Set<?>) value).contains(word)));
    }

    private static List<?> words(RecordComponent component) {
        var type = (ParameterizedType) component.getGenericType();
        return List.of(((Class<?>) type.getActualTypeArguments()[0]).getEnumConstants());
    }
}
