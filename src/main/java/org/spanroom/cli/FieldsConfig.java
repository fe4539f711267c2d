package org.spanroom.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.ProposalYaml;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.folder.TextFile;
import org.spanroom.output.folder.TextKind;

/** Writes a proposed field map as a config of its own, with nothing in it that was not given or found. */
final class FieldsConfig {
    /** Heads the list of what is missing, on the screen and in the config. */
    static final String LACKING = "# What a useful ranking lacks:\n";

    private static final TextKind KIND =
            new TextKind("a config that check wrote", "# Written by spanroom check --fields --write.");

    private FieldsConfig() {}

    /** Checks that the config may be written; nothing is worth reading otherwise. */
    static void check(Path yaml, RunConfig config, boolean overwrite) {
        inputs(config).forEach(file -> {
            if (isSame(file, yaml)) {
                throw new OutputException(yaml, "is a file to read", "Name another file with --write.");
            }
        });
        TextFile.check(yaml, KIND, overwrite);
    }

    private static Stream<Path> inputs(RunConfig config) {
        Stream<Path> layers = Stream.of(
                        config.inputs().routes(),
                        config.inputs().vaults(),
                        config.inputs().zones())
                .flatMap(layer -> layer.file().paths().stream());
        return Stream.concat(layers, config.inputs().contents().file().stream());
    }

    private static boolean isSame(Path file, Path other) {
        try {
            return Files.exists(other) && Files.isSameFile(file, other);
        } catch (IOException notReadable) {
            return file.toAbsolutePath()
                    .normalize()
                    .equals(other.toAbsolutePath().normalize());
        }
    }

    /** Writes the config, in which files are named relative to it. */
    static void write(
            Path yaml, List<FieldProposal> proposals, List<String> missing, RunConfig config, boolean overwrite) {
        for (FieldProposal proposal : proposals) {
            if (!proposal.hasCrs()) {
                throw new InputException(
                        proposal.file(),
                        "no usable reference system is known for it, so that no config can be written",
                        "Give the right one with --crs EPSG:code.");
            }
        }
        String text = KIND.mark() + " Fields marked \"unsure\" are commented out: look them over, and take the mark\n"
                + "# away where they are right. What is not named here has the shipped value.\n\n"
                + ProposalYaml.inputs(proposals, config.inputs().contents(), file -> relative(yaml, file))
                + "\noutput:\n  folder: " + ProposalYaml.quoted(folder(yaml))
                + "   # relative to the directory that the program is started in\n"
                + lacking(missing);
        TextFile.write(yaml, text, KIND, overwrite);
    }

    private static String lacking(List<String> missing) {
        return missing.isEmpty()
                ? ""
                : missing.stream()
                        .map(line -> "#   " + line + "\n")
                        .collect(Collectors.joining("", "\n" + LACKING, ""));
    }

    private static String relative(Path yaml, Path file) {
        Path beside = yaml.toAbsolutePath().normalize().getParent();
        Path whole = file.toAbsolutePath().normalize();
        boolean apart = beside == null || !Objects.equals(whole.getRoot(), beside.getRoot());
        return (beside == null || apart ? whole : beside.relativize(whole))
                .toString()
                .replace('\\', '/');
    }

    private static String folder(Path yaml) {
        String name = String.valueOf(yaml.getFileName());
        int dot = name.lastIndexOf('.');
        return "output/" + (dot > 0 ? name.substring(0, dot) : name);
    }
}
