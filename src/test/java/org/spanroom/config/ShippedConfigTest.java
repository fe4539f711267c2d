package org.spanroom.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The packed files are those of the project's folder, and name every key. */
class ShippedConfigTest {
    /**
     * Which keys may be left out even there: the demo's fields, what the catalog gives, and entries of lists
     * that are open here: the tests of the ranking check the file against its criteria and gates. */
    private static final Pattern NOT_DEMANDED =
            Pattern.compile("inputs\\..*\\.fields\\..*|room\\.(design_cable|sleeve|cells).*"
                    + "|(.*\\.)?(kinds|vault_kinds|criteria|gates|terms|position_qualities|curve|years)\\.[^.]+");

    @Test
    void aCopyOfTheFilesReadsAsThePackedOnes() {
        RunConfig copy = ConfigReader.read(Path.of("config", "spanroom.yaml"));

        assertThat(copy).isEqualTo(ShippedConfig.get());
        assertThat(copy.inputs()).isEqualTo(InputConfig.NONE);
        assertThat(copy.scoring()).isSameAs(ShippedConfig.get().scoring());
        for (String key : FiledSections.KEYS) {
            Path file = Path.of("config", key.equals("permit") ? "permits.yaml" : key + ".yaml");
            assertThat(ConfigReader.withSection(ShippedConfig.get(), key, file)).isEqualTo(ShippedConfig.get());
        }
    }

    static Stream<String> files() {
        return Stream.of("spanroom", "rates", "scoring", "permits", "catalog");
    }

    /** Takes each key away in turn. */
    @ParameterizedTest(name = "{0}.yaml")
    @MethodSource("files")
    void aKeyThatIsMissingIsNamed(String file) throws IOException {
        ConfigNode root = YamlParser.parse(Files.readString(Path.of("config", file + ".yaml")));
        String section = file.equals("permits") ? "permit" : file;
        Function<ConfigNode, Object> reading =
                file.equals("spanroom") ? ShippedConfig::main : node -> ShippedConfig.section(section, node);
        List<String> paths = paths(root, "");
        assertThat(paths).hasSizeGreaterThan(3);
        for (String path : paths) {
            List<String> keys = List.of(path.split("\\.", -1));
            ConfigNode less = without(root, keys);
            assertThat(catchThrowable(() -> reading.apply(less)))
                    .as(path)
                    .isNotNull()
                    .extracting(problem -> problem.getMessage().replaceAll("[^a-z_0-9]+", " "))
                    .asString()
                    .containsAnyOf(keys.get(keys.size() - 1) + " ", keys.get(Math.max(0, keys.size() - 2)) + " ");
        }
    }

    private static List<String> paths(ConfigNode node, String stem) {
        var paths = new ArrayList<String>();
        if (node instanceof ConfigNode.Mapping mapping) {
            mapping.entries().forEach((key, entry) -> {
                String path = stem + key;
                if (!NOT_DEMANDED.matcher(path).matches()) {
                    paths.add(path);
                }
                paths.addAll(paths(entry.value(), path + "."));
            });
        }
        return paths;
    }

    private static ConfigNode without(ConfigNode node, List<String> path) {
        var mapping = (ConfigNode.Mapping) node;
        Map<String, ConfigNode.Entry> entries = new LinkedHashMap<>(mapping.entries());
        ConfigNode.Entry entry = entries.remove(path.get(0));
        if (path.size() > 1) {
            entries.put(
                    path.get(0),
                    new ConfigNode.Entry(without(entry.value(), path.subList(1, path.size())), entry.line()));
        }
        return new ConfigNode.Mapping(entries, mapping.line());
    }
}
