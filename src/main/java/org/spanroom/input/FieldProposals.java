package org.spanroom.input;

import java.util.List;
import java.util.function.BiConsumer;
import org.spanroom.config.InputConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.proposal.FieldProposal;
import org.spanroom.input.proposal.FieldProposer;

/** Proposes what the fields of a config's layers mean. */
public final class FieldProposals {
    private FieldProposals() {}

    /**
     * Reads the first features of each layer, and all vaults where there are routes too; of a layer in several files its first one.
     *
     * @throws InputException if a file cannot be used at all
     */
    public static List<FieldProposal> of(RunConfig config) {
        InputConfig inputs = config.inputs();
        var proposer = new FieldProposer(config);
        read(inputs.routes(), proposer::readRoutes);
        read(inputs.vaults(), proposer::readVaults);
        read(inputs.zones(), proposer::readZones);
        return proposer.proposals();
    }

    private static void read(LayerConfig layer, BiConsumer<LayerSource, LayerConfig> reading) {
        layer.file().paths().stream().findFirst().ifPresent(file -> {
            try (LayerSource source = LayerSources.open(file, layer.layer(), new FindingLog())) {
                readOnceOrTwice(source, layer, reading);
            }
        });
    }

    /** A layer whose header turns out wrong while it is read is read again, as a run does. */
    private static void readOnceOrTwice(
            LayerSource source, LayerConfig layer, BiConsumer<LayerSource, LayerConfig> reading) {
        try {
            reading.accept(source, layer);
        } catch (InputException problem) {
            try (LayerSource again = source.corrected(new FindingLog()).orElseThrow(() -> problem)) {
                reading.accept(again, layer);
            }
        }
    }
}
