package org.spanroom.pipeline;

import java.util.List;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.DuctNetwork;

/** Finds vaults by the names that people give. */
final class Vaults {
    private static final int MOST_SHOWN = 3;

    private Vaults() {}

    /**
     * Returns the number of a vault.
     *
     * @param option the option that names it
     * @throws InputException if no span of the run ends there, with the nearest names
     */
    static int find(NetworkReader.Recorded recorded, String option, String vaultId) {
        return recorded.network()
                .find(vaultId)
                .orElseThrow(() -> new InputException(
                        recorded.run().file(),
                        "no span of the run ends at the vault '" + vaultId + "' of " + option,
                        "Name a vault as in the columns vault_a and vault_b; the nearest names are "
                                + nearest(recorded.network(), vaultId) + "."));
    }

    /** Returns the names that are nearest to a wrong one. */
    static String nearest(DuctNetwork network, String vaultId) {
        List<String> names = network.vaults().stream().map(vault -> vault.id()).toList();
        return String.join(", ", NearestWord.nearest(vaultId, names, MOST_SHOWN));
    }
}
