package org.spanroom.config;

import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.finding.InputException;

/** Sections of a config in separate files, which are named instead of the section. */
final class FiledSections {
    /** Keys of the sections that may be a file's name: those that an owner keeps and dates by themselves. */
    static final List<String> KEYS = List.of("catalog", "rates", "scoring", "permit");

    private FiledSections() {}

    /**
     * Returns every section that is a file's name, read from that file.
     *
     * @param config the file that names them
     * @throws InputException naming the section's own file if anything in it is not understood
     */
    static Map<String, StandIn> read(ConfigNode root, Path config, StandIn given) {
        var sections = new LinkedHashMap<String, StandIn>();
        files(root).forEach((key, named) -> {
            Object section = section(key, ConfigFiles.beside(config, named), given.component(component(key)));
            sections.put(key, () -> Optional.of(section));
        });
        return sections;
    }

    /** Returns the nodes without the sections that are files' names. */
    static ConfigNode without(ConfigNode root) {
        Map<String, Path> files = files(root);
        if (!(root instanceof ConfigNode.Mapping mapping) || files.isEmpty()) {
            return root;
        }
        var entries = new LinkedHashMap<>(mapping.entries());
        entries.keySet().removeAll(files.keySet());
        return new ConfigNode.Mapping(entries, mapping.line());
    }

    private static Map<String, Path> files(ConfigNode root) {
        var files = new LinkedHashMap<String, Path>();
        if (root instanceof ConfigNode.Mapping mapping) {
            mapping.entries().forEach((key, entry) -> {
                if (KEYS.contains(key) && entry.value() instanceof ConfigNode.Scalar name && !name.isNull()) {
                    files.put(key, ScalarValues.path(name, key));
                }
            });
        }
        return files;
    }

    /** Reads one section's file on top of the values that the config has for it. */
    static RunConfig withSection(RunConfig config, String key, Path file) {
        StandIn whole = () -> Optional.of(config);
        return replaced(config, key, section(key, file, whole.component(component(key))));
    }

    private static Object section(String key, Path file, StandIn given) {
        try {
            ConfigNode node = YamlParser.parse(ConfigReader.text(file, remedy(key)));
            return Binder.value(node, component(key).getGenericType(), given, key);
        } catch (ConfigProblem e) {
            throw e.in(file);
        }
    }

    private static String remedy(String key) {
        String option = key.equals("scoring") ? ", or give it with --scoring" : "";
        return "Name a readable file at " + key + " in the config" + option + ".";
    }

    /** Returns a record with another value for one of its components. */
    static <T extends Record> T replaced(T config, String key, Object value) {
        RecordComponent[] components = config.getClass().getRecordComponents();
        Object[] values = Arrays.stream(components)
                .map(component -> RecordParts.key(component.getName()).equals(key)
                        ? value
                        : RecordParts.valueOf(component, config))
                .toArray();
        @SuppressWarnings("unchecked")
        Class<T> type = (Class<T>) config.getClass();
        return type.cast(RecordParts.construct(new ConfigNode.Mapping(Map.of(), 0), type, components, values));
    }

    static RecordComponent component(String key) {
        return Arrays.stream(RunConfig.class.getRecordComponents())
                .filter(component -> RecordParts.key(component.getName()).equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the config has no section " + key));
    }
}
