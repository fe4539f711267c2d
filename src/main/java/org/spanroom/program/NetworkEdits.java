package org.spanroom.program;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.DuctOffer;
import org.spanroom.model.program.SectionOffer;

/** A network after spans have been recovered, or without the recovery of spans that cannot be. */
public final class NetworkEdits {
    private NetworkEdits() {}

    /**
     * Returns the network as it is after some work.
     *
     * @param done names of spans that have been recovered: their positions are free
     * @param closed names of spans that are not to be recovered, or where it failed: they keep their positions of today
     */
    public static DuctNetwork after(DuctNetwork network, Set<String> done, Set<String> closed) {
        if (done.isEmpty() && closed.isEmpty()) {
            return network;
        }
        var sections = new ArrayList<SectionOffer>();
        for (SectionOffer section : network.sections()) {
            List<DuctOffer> ducts = section.ducts().stream()
                    .map(duct -> done.contains(duct.spanId())
                            ? fixed(duct, duct.positionsAfter())
                            : closed.contains(duct.spanId()) ? fixed(duct, duct.positionsNow()) : duct)
                    .toList();
            sections.add(new SectionOffer(
                    section.id(),
                    section.bankId(),
                    section.from(),
                    section.to(),
                    section.lengthM(),
                    ducts,
                    section.newDuct(),
                    section.lonLat()));
        }
        return new DuctNetwork(network.vaults(), sections, network.samples(), network.onDate());
    }

    private static DuctOffer fixed(DuctOffer duct, int positions) {
        return new DuctOffer(
                duct.spanId(), duct.ductId(), positions, positions, duct.rank(), duct.closedBy(), Optional.empty());
    }
}
