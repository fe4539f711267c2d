package org.spanroom.config;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.UnaryOperator;
import org.spanroom.finding.InputException;
import org.spanroom.model.Term;

/**
 * Reads the run's configuration from YAML.
 *
 * <p>Every key may be left out and then has the value of {@link RunConfig#defaults()}. File names in it are relative to the directory
 * that the program is started in, not to the config's own, so that they read the same as on the command line. Some sections may
 * stand in a file of their own, whose name is then the section's value.
 */
public final class ConfigReader {
    private static final long LARGEST_BYTES = 1_000_000;

    private ConfigReader() {}

    /**
     * Reads a file.
     *
     * @throws InputException naming file, line, key and remedy if anything in it is not understood
     */
    public static RunConfig read(Path file) {
        return read(file, root -> root);
    }

    /**
     * Reads the config that the record of a run holds: the member "config" of a JSON object, JSON being YAML too.
     *
     * @throws InputException if the file is no such record
     */
    public static RunConfig readRecorded(Path runFile) {
        return read(runFile, ConfigReader::recorded);
    }

    private static ConfigNode recorded(ConfigNode root) {
        if (root instanceof ConfigNode.Mapping members && members.entries().containsKey("config")) {
            return members.entries().get("config").value();
        }
        throw new ConfigProblem(0, "this is no record of a run: it holds no config", "Name the folder of a run.");
    }

    private static RunConfig read(Path file, UnaryOperator<ConfigNode> section) {
        try {
            ConfigNode node = section.apply(YamlParser.parse(text(file)));
            RunConfig filed = FiledSections.read(node, RunConfig.defaults());
            RunConfig config = Binder.bind(FiledSections.without(node), RunConfig.class, filed);
            demandTermsOfTheirLayers(config);
            return config;
        } catch (ConfigProblem e) {
            String place = e.line() > 0 ? "line " + e.line() + ": " : "";
            throw new InputException(file, place + e.problem(), e.remedy(), e);
        }
    }

    static String text(Path file) {
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw new ConfigProblem(0, "the file has more than " + LARGEST_BYTES + " bytes", "Is it a config?");
            }
            return ConfigText.of(Files.readAllBytes(file));
        } catch (CharacterCodingException e) {
            throw new InputException(file, "the file is not text in UTF-8 or UTF-16", "Save it as UTF-8.", e);
        } catch (IOException e) {
            String problem = Files.exists(file) ? "the file cannot be read" : "there is no such file";
            throw new InputException(file, problem, "Name a readable config file with --config.", e);
        }
    }

    private static void demandTermsOfTheirLayers(RunConfig config) {
        demandTerms("routes", config.inputs().routes().fields(), false);
        demandTerms("vaults", config.inputs().vaults().fields(), true);
    }

    private static void demandTerms(String layer, FieldMap fields, boolean ofVaults) {
        Set<String> wrong = new TreeSet<>();
        for (Term term : fields.byTerm().keySet()) {
            if (FieldMap.VAULT_TERMS.contains(term) != ofVaults) {
                wrong.add(term.key());
            }
        }
        if (!wrong.isEmpty()) {
            throw new ConfigProblem(
                    0,
                    "inputs." + layer + ".fields: " + String.join(", ", wrong) + " is no term of " + layer,
                    "Move it to the other layer's fields.");
        }
    }

    /** Returns a config as sections, keys and plain values that {@link #read} would read the same from. */
    public static Map<String, Object> asMap(RunConfig config) {
        return ConfigMap.section(config);
    }
}
