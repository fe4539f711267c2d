package org.spanroom.cli;

import java.nio.file.Path;
import java.util.Optional;
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
        if (layer.file().isEmpty()) {
            return;
        }
        String proposal = proposing
                .of(layer.file().get(), layer.layer(), config.plausible(), new FindingLog())
                .text();
        // All layers stand under one key, so that the whole can be pasted.
        text.append(text.isEmpty() ? proposal : proposal.replaceFirst("(?m)^inputs:\n", ""));
    }
}
