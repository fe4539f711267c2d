package org.spanroom.cli;

import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.FieldProposal;

/** What {@code check --fields} says: each layer's fields with samples, and a map of them to paste into a config. */
final class FieldsReport {
    private FieldsReport() {}

    static String text(RunConfig config) {
        var text = new StringBuilder();
        add(config.inputs().routes(), config, text);
        add(config.inputs().vaults(), config, text);
        return Printable.of(text.toString());
    }

    private static void add(LayerConfig layer, RunConfig config, StringBuilder text) {
        if (layer.file().isEmpty()) {
            return;
        }
        String proposal = FieldProposal.of(layer.file().get(), layer.layer(), config.plausible(), new FindingLog())
                .text();
        // Both layers stand under one key, so that the whole can be pasted.
        text.append(text.isEmpty() ? proposal : proposal.replaceFirst("(?m)^inputs:\n", ""));
    }
}
