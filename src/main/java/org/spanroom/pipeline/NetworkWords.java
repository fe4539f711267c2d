package org.spanroom.pipeline;

import java.util.Locale;
import org.spanroom.model.program.DuctNetwork;

/** How the size of a network is worded. */
final class NetworkWords {
    private NetworkWords() {}

    static String size(DuctNetwork network) {
        return String.format(
                Locale.ROOT,
                "%,d sections between %,d vaults",
                network.sections().size(),
                network.vaults().size());
    }
}
