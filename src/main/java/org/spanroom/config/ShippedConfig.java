package org.spanroom.config;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * The config that the program comes with: the files of the project's folder {@code config}, packed into the program, which are the
 * only place of shipped values. Each file is parsed at most once, and not before one of its values is requested. They must name
 * every key: a file that lacks one fails as soon as it is read.
 */
public final class ShippedConfig {
    private static final Map<String, Object> FILED = new HashMap<>();

    private ShippedConfig() {}

    /**
     * Returns the whole config. What the main file says of inputs and of the folder of results belongs to the demo and is not in
     * it.
     *
     * @throws IllegalStateException if a packed file is missing or lacks a key
     */
    public static RunConfig get() {
        return Whole.CONFIG;
    }

    /** Returns what is used where a config says nothing. */
    static StandIn standIn() {
        StandIn whole = () -> Optional.of(get());
        StandIn noInputs = () -> Optional.of(InputConfig.NONE);
        return whole.with(Map.of("inputs", noInputs)).with(filedSections());
    }

    /** Returns the config of a main file that must name every key but those of the sections in files of their own. */
    static RunConfig main(ConfigNode root) {
        RunConfig config = ConfigReader.bound(root, StandIn.NONE_ALLOWED.with(filedSections()));
        return config.withInputs(InputConfig.NONE).withOutput(config.output().withoutFolder());
    }

    /** Returns a section from its own file, which must name every key. */
    static Object section(String key, ConfigNode root) {
        return Binder.value(root, FiledSections.component(key).getGenericType(), StandIn.NONE_ALLOWED, key);
    }

    /** Returns the config of an annual program, from a file of its own that must name every key. */
    static ProgramConfig program() {
        return Program.CONFIG;
    }

    /** Parsed when it is first requested. */
    private static final class Program {
        static final ProgramConfig CONFIG =
                read("program.yaml", root -> Binder.bind(root, ProgramConfig.class, StandIn.NONE_ALLOWED));
    }

    /** Parsed when it is first requested. */
    private static final class Whole {
        static final RunConfig CONFIG = read("spanroom.yaml", ShippedConfig::main);
    }

    private static Map<String, StandIn> filedSections() {
        var sections = new HashMap<String, StandIn>();
        FiledSections.KEYS.forEach(key -> sections.put(key, () -> Optional.of(filed(key))));
        return sections;
    }

    private static synchronized Object filed(String key) {
        String file = key.equals("permit") ? "permits.yaml" : key + ".yaml";
        return FILED.computeIfAbsent(key, unread -> read(file, root -> section(unread, root)));
    }

    private static <T> T read(String file, Function<ConfigNode, T> reading) {
        try (InputStream packed = ShippedConfig.class.getResourceAsStream("shipped/" + file)) {
            if (packed == null) {
                throw new IllegalStateException("the program was packed without its config " + file);
            }
            return reading.apply(YamlParser.parse(ConfigText.of(packed.readAllBytes())));
        } catch (ConfigProblem e) {
            throw new IllegalStateException("the shipped " + file + ", line " + e.line() + ": " + e.problem(), e);
        } catch (IOException e) {
            throw new UncheckedIOException("the shipped " + file + " cannot be read", e);
        }
    }
}
