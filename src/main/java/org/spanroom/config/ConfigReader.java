package org.spanroom.config;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Stream;
import org.spanroom.finding.InputException;
import org.spanroom.model.Term;
import org.spanroom.model.bore.Catalog;

/**
 * Reads the run's configuration from YAML.
 *
 * <p>A key that is left out has the shipped value ({@link ShippedConfig}). Input files and filed sections are named relative to the
 * config's own folder, results relative to the directory that the program is started in, as on the command line. Some sections may
 * are in a separate file, whose name is then the section's value.
 */
public final class ConfigReader {
    private static final int LARGEST_BYTES = 1_000_000;

    private ConfigReader() {}

    /**
     * Reads a file.
     *
     * @throws InputException naming file, line, key and remedy if anything in it is not understood
     */
    public static RunConfig read(Path file) {
        return of(file, YamlParser::parse, root -> {
            Map<String, StandIn> filed = FiledSections.read(root, file, ShippedConfig.standIn());
            RunConfig config =
                    bound(FiledSections.without(root), ShippedConfig.standIn().with(filed));
            return config.withInputs(config.inputs().withFiles(named -> ConfigFiles.beside(file, named)));
        });
    }

    /**
     * Reads the config that the record of a run holds: the member "config" of a JSON object, JSON being YAML too. Its files are named
     * as they were opened. What it leaves out had no value, or is a key that came with a later version and has the shipped one.
     *
     * @throws InputException if the file is no such record
     */
    public static RunConfig readRecorded(Path runFile) {
        StandIn given = ShippedConfig.standIn().with(Map.of("assumed", StandIn.NOTHING));
        return of(runFile, YamlParser::parseJson, root -> bound(recorded(root), given));
    }

    /**
     * Returns a config with one section read from a file of its own, on top of what the config has for it.
     *
     * @throws InputException naming file, line, key and remedy if anything in it is not understood
     */
    public static RunConfig withSection(RunConfig config, String key, Path file) {
        return FiledSections.withSection(config, key, file);
    }

    private static ConfigNode recorded(ConfigNode root) {
        if (root instanceof ConfigNode.Mapping members && members.entries().containsKey("config")) {
            return members.entries().get("config").value();
        }
        throw new ConfigProblem(0, "this is not the record of a run: it has no config", "Name the folder of a run.");
    }

    private static RunConfig of(
            Path file, Function<String, ConfigNode> parser, Function<ConfigNode, RunConfig> reading) {
        try {
            return reading.apply(parser.apply(text(file, "Name a readable config file with --config.")));
        } catch (ConfigProblem e) {
            throw e.in(file);
        }
    }

    /** Returns the sections as a config. */
    static RunConfig bound(ConfigNode root, StandIn given) {
        var rows = new NamedRoom(root, catalog(root, given));
        RunConfig config = Binder.bind(rows.resolved(), RunConfig.class, given);
        rows.demandThatTheCableFits(config.room());
        demandTermsOfTheirLayers(config);
        demandRowsOfTheCatalog(config);
        return config;
    }

    /** The catalog must be known before the sections that may name its rows. */
    private static Catalog catalog(ConfigNode root, StandIn given) {
        ConfigNode.Mapping sections = Binder.mapping(root, "the config");
        return (Catalog) Binder.component(sections, FiledSections.component("catalog"), given, "the config");
    }

    /** @param remedy what to do where there is no such file */
    static String text(Path file, String remedy) {
        if (Files.isDirectory(file)) {
            throw new InputException(file, "it is a folder", "Name the config file in it.");
        }
        // A pipe says no size, and a device may never end.
        try (InputStream in = Files.newInputStream(file)) {
            byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
            if (bytes.length > LARGEST_BYTES) {
                throw new ConfigProblem(0, "the file has more than " + LARGEST_BYTES + " bytes", "Is it a config?");
            }
            return ConfigText.of(bytes);
        } catch (CharacterCodingException e) {
            throw new InputException(file, "the file is not text in UTF-8 or UTF-16", "Save it as UTF-8.", e);
        } catch (IOException e) {
            String problem = Files.exists(file) ? "the file cannot be read" : "there is no such file";
            throw new InputException(file, problem, remedy, e);
        }
    }

    private static void demandTermsOfTheirLayers(RunConfig config) {
        demandTerms("routes", config.inputs().routes().fields(), FieldMap.routeTerms());
        demandTerms("vaults", config.inputs().vaults().fields(), FieldMap.VAULT_TERMS);
        demandTerms("zones", config.inputs().zones().fields(), FieldMap.ZONE_TERMS);
        demandNothingKept("vaults", config.inputs().vaults());
        demandNothingKept("zones", config.inputs().zones());
    }

    private static void demandNothingKept(String layer, LayerConfig config) {
        if (!config.keep().isEmpty()) {
            throw new ConfigProblem(
                    0,
                    "inputs." + layer + ".keep: fields are kept of routes only",
                    "Leave it empty, or move it to inputs.routes.keep.");
        }
    }

    private static void demandRowsOfTheCatalog(RunConfig config) {
        Catalog catalog = config.catalog();
        demandRow(config, Term.DUCT_SIZE, catalog.outerDucts().stream().map(Catalog.OuterDuct::name));
        demandRow(config, Term.INNERDUCT_SIZE, catalog.innerducts().stream().map(Catalog.InnerductSize::name));
        demandRow(config, Term.CABLE_TYPE, catalog.designCables().stream().map(Catalog.DesignCable::name));
    }

    private static void demandRow(RunConfig config, Term term, Stream<String> rows) {
        List<String> names = rows.toList();
        config.assumed().findWord(term).ifPresent(word -> {
            if (names.stream().noneMatch(word.strip()::equalsIgnoreCase)) {
                throw new ConfigProblem(
                        0,
                        "assumed." + term.key() + ": the catalog has no row '" + word + "'",
                        NamedRoom.remedy(word, names));
            }
        });
    }

    private static void demandTerms(String layer, FieldMap fields, Set<Term> ofLayer) {
        Set<String> wrong = new TreeSet<>();
        for (Term term : fields.byTerm().keySet()) {
            if (!ofLayer.contains(term)) {
                wrong.add(term.key());
            }
        }
        if (!wrong.isEmpty()) {
            throw new ConfigProblem(
                    0,
                    "inputs." + layer + ".fields: " + String.join(", ", wrong) + " is not a term of " + layer,
                    "Move it to the other layer's fields.");
        }
    }

    /** Returns a config as sections, keys and plain values that {@link #read} would read the same from. */
    public static Map<String, Object> asMap(RunConfig config) {
        return ConfigMap.section(config);
    }
}
