package org.spanroom.cli;

import java.nio.file.Path;
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
        Path file = layer.file().get();
        text.append(FieldProposal.of(file, layer.layer(), config.plausible(), new FindingLog())
                .text());
    }
}
