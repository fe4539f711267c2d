package org.spanroom.output.sheet;

import java.util.List;
import java.util.Optional;
import org.spanroom.model.Line;
import org.spanroom.model.effort.SharedShift;
import org.spanroom.model.network.Street;
import org.spanroom.model.network.VaultUse;

/**
 * A section that sheets are made of: ducts of one bank between the same two vaults.
 *
 * @param number its place among the sections of the sheets, from 1
 * @param id name of the section
 * @param ducts in the order of the work, at least one
 * @param vaultA where the first duct begins, and what a crew prepares for there
 * @param vaultB where it ends; the same one where a span returns to its vault
 * @param together all ducts of the section in one shift; empty where fewer than two have hours
 * @param around what lies near
 */
public record SectionWork(
        int number,
        String id,
        List<DuctWork> ducts,
        VaultUse vaultA,
        VaultUse vaultB,
        Optional<SharedShift> together,
        Around around) {
    /**
     * What a sketch map shows in addition to the section.
     *
     * @param spans lines of other spans, degrees on WGS 84
     * @param streets those near by
     */
    public record Around(List<Line> spans, List<Street> streets) {
        public Around {
            spans = List.copyOf(spans);
            streets = List.copyOf(streets);
        }
    }

    public SectionWork {
        if (ducts.isEmpty()) {
            throw new IllegalArgumentException("a section needs a duct");
        }
        ducts = List.copyOf(ducts);
    }
}
