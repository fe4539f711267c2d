package org.spanroom.config;

import java.nio.file.Path;
import java.util.Optional;
import org.spanroom.finding.InputException;

/** Reads the config of an annual program from YAML. A key that is left out has the shipped value. */
public final class ProgramConfigReader {
    private ProgramConfigReader() {}

    /** Returns the shipped config. */
    public static ProgramConfig shipped() {
        return ShippedConfig.program();
    }

    /**
     * Reads a file. Files that it names are relative to its own folder.
     *
     * @throws InputException naming file, line, key and remedy if anything in it is not understood
     */
    public static ProgramConfig read(Path file) {
        try {
            ConfigNode root = YamlParser.parse(ConfigReader.text(file, "Name a readable file with --config."));
            ProgramConfig config = Binder.bind(root, ProgramConfig.class, () -> Optional.of(shipped()));
            return withFiles(config, file);
        } catch (ConfigProblem problem) {
            throw problem.in(file);
        }
    }

    private static ProgramConfig withFiles(ProgramConfig config, Path file) {
        ProgramConfig found = FiledSections.replaced(
                config, "connections", config.connections().map(named -> ConfigFiles.beside(file, named)));
        return FiledSections.replaced(
                found, "previous", config.previous().map(named -> ConfigFiles.beside(file, named)));
    }
}
