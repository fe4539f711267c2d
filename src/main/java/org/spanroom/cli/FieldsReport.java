package org.spanroom.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.stream.Collectors;
import org.spanroom.config.InputFiles;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.FieldProposal;

/** What {@code check --fields} says: each layer's fields with samples, and a map of them to paste into a config. */
final class FieldsReport {
    private FieldsReport() {}

    static String text(RunConfig config) {
        var text = new StringBuilder();
        add(config.inputs().routes(), config, FieldProposal::of, text);
        add(config.inputs().vaults(), config, FieldProposal::of, text);
        add(config.inputs().zones(), config, FieldProposal::ofZones, text);
        return Printable.of(text.toString());
    }

    /** Reads a layer and proposes what its fields mean. */
    private interface Proposing {
        FieldProposal of(Path file, Optional<String> layer, PlausibleRanges ranges, FindingLog findings);
    }

    private static void add(LayerConfig layer, RunConfig config, Proposing proposing, StringBuilder text) {
        boolean first = true;
        for (Path file : layer.file()) {
            String proposal = proposing
                    .of(file, layer.layer(), config.plausible(), new FindingLog())
                    .text();
            if (first) {
                // All layers stand under one key, so that the whole can be pasted.
                String pasted = named(layer.file(), proposal);
                text.append(text.isEmpty() ? pasted : pasted.replaceFirst("(?m)^inputs:\n", ""));
            } else {
                text.append(asComment(proposal));
            }
            first = false;
        }
    }

    /** The fields of several files are mapped once, by those of the first; it takes the place of all. */
    private static String named(InputFiles files, String proposal) {
        if (files.paths().size() == 1) {
            return proposal;
        }
        String list = files.paths().stream()
                .map(file -> "\"" + file.toString().replace("\\", "\\\\").replace("\"", "\\\"") + "\"")
                .collect(Collectors.joining(", "));
        return proposal.replaceFirst("(?m)^    file: .*$", Matcher.quoteReplacement("    file: [" + list + "]"));
    }

    private static String asComment(String proposal) {
        return proposal.replaceFirst("(?m)^inputs:\n", "").replaceAll("(?m)^(?!#)", "# ").replaceFirst("# $", "");
    }
}
