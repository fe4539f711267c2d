package org.spanroom.network;

import java.util.List;

/**
 * A place where a chain is cut at a vault, or a stretch inside one that is cut out.
 *
 * @param fromM where the span before it ends
 * @param toM where the span after it begins
 */
record Cut(int vault, double fromM, double toM) {
    boolean isPlace() {
        return fromM == toM;
    }

    Cut shifted(double byM) {
        return new Cut(vault, fromM + byM, toM + byM);
    }

    /** Returns the cuts of the passes that are kept. */
    static List<Cut> of(List<VaultCrossing> standing) {
        return standing.stream()
                .map(pass -> new Cut(pass.vault(), pass.cutFromM(), pass.cutToM()))
                .toList();
    }
}
