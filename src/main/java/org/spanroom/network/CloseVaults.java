package org.spanroom.network;

import java.util.Map;
import java.util.concurrent.ConcurrentSkipListMap;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.Counted;
import org.spanroom.model.network.Vault;

/** Collects which vaults gave way to which, so that a bank of many ducts is reported once. Safe for several threads. */
final class CloseVaults implements CloseCuts.Sink {
    private final Map<Long, Integer> linesByPair = new ConcurrentSkipListMap<>();

    @Override
    public void gaveWay(VaultCrossing loser, VaultCrossing winner) {
        linesByPair.merge((long) loser.vault() << 32 | winner.vault(), 1, Integer::sum);
    }

    void report(CuttingContext context) {
        linesByPair.forEach((pair, lines) -> {
            Vault loser = context.places().vault((int) (pair >>> 32));
            Vault winner = context.places().vault((int) (long) pair);
            context.findings()
                    .vault(
                            FindingCode.VAULTS_TOO_CLOSE,
                            loser,
                            "on " + Counted.of(lines, "line") + ", vault " + winner.id() + " cuts the line instead");
        });
    }
}
