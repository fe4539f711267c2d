package org.spanroom.config;

import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.spanroom.finding.InputException;

/** Sections of a config that stand in files of their own, named where the section would stand. */
final class FiledSections {
    /** Keys of the sections that may be a file's name: those that an owner keeps and dates by themselves. */
    static final List<String> KEYS = List.of("catalog", "scoring", "permit");

    private FiledSections() {}

    /**
     * Returns the given config with every section that is a file's name read from that file.
     *
     * @throws InputException naming the section's own file if anything in it is not understood
     */
    static RunConfig read(ConfigNode root, RunConfig given) {
        RunConfig config = given;
        for (Map.Entry<String, Path> filed : files(root).entrySet()) {
            config = withSection(config, filed.getKey(), filed.getValue());
        }
        return config;
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
                    files.put(key, Binder.path(name, key));
                }
            });
        }
        return files;
    }

    /** Reads one section's file on top of the values that the config has for it. */
    static RunConfig withSection(RunConfig config, String key, Path file) {
        RecordComponent[] components = RunConfig.class.getRecordComponents();
        Object[] values = Arrays.stream(components)
                .map(component -> Binder.valueOf(component, config))
                .toArray();
        try {
            for (int i = 0; i < components.length; i++) {
                if (Binder.key(components[i].getName()).equals(key)) {
                    ConfigNode node = YamlParser.parse(ConfigReader.text(file));
                    values[i] = Binder.value(node, components[i].getGenericType(), Optional.of(values[i]), key);
                }
            }
            return (RunConfig)
                    Binder.construct(new ConfigNode.Mapping(Map.of(), 0), RunConfig.class, components, values);
        } catch (ConfigProblem e) {
            String place = e.line() > 0 ? "line " + e.line() + ": " : "";
            throw new InputException(file, place + e.problem(), e.remedy(), e);
        }
    }
}
