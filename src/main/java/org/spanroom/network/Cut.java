package org.spanroom.network;

import java.util.ArrayList;
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

    /**
     * Returns the cuts of an open chain. Where the line ends within tolerance of its last vault, the cut moves to the end:
     * the little that is drawn past the vault belongs to the last span.
     */
    static List<Cut> open(List<VaultCrossing> standing, double lengthM) {
        List<Cut> cuts = new ArrayList<>(standing.size());
        for (int i = 0; i < standing.size(); i++) {
            VaultCrossing pass = standing.get(i);
            boolean atStart = i == 0 && pass.holds(0);
            boolean atEnd = i == standing.size() - 1 && pass.holds(lengthM);
            double fromM = atStart ? 0 : pass.cutFromM();
            double toM = atEnd ? lengthM : pass.cutToM();
            if (!pass.isInside() && atStart != atEnd) {
                double placeM = atStart ? 0 : lengthM;
                fromM = placeM;
                toM = placeM;
            }
            cuts.add(new Cut(pass.vault(), fromM, toM));
        }
        return cuts;
    }

    static List<Cut> around(List<VaultCrossing> standing) {
        return standing.stream()
                .map(pass -> new Cut(pass.vault(), pass.cutFromM(), pass.cutToM()))
                .toList();
    }
}
