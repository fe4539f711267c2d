package org.spanroom.network;

import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.network.Vault;

/**
 * Looks for outlines that hold other vaults: a plot, a park or a district drawn among the vaults swallows the ends of all spans inside.
 *
 * <p>Three others or more: one or two may be a chamber with a second cover, or a vault that was drawn twice. Our judgment.
 */
final class VaultsInside {
    static final int LEAST = 3;

    private static final int MOST_NAMED = 3;
    private static final double CELL_M = 100;

    private final CuttingContext context;
    private final VaultPlaces places;

    VaultsInside(CuttingContext context) {
        this.context = context;
        places = context.places();
    }

    void report() {
        if (IntStream.range(0, places.count()).noneMatch(places::isFootprint)) {
            return;
        }
        var grid = new PlaceGrid(CELL_M, places.count());
        for (int number = 0; number < places.count(); number++) {
            grid.add(number, places.vault(number).lonDeg(), places.vault(number).latDeg(), 0);
        }
        for (int number = 0; number < places.count(); number++) {
            if (places.isFootprint(number)) {
                report(number, inside(number, grid));
            }
        }
    }

    /** Returns the numbers of the other vaults whose places lie inside an outline. */
    private SortedSet<Integer> inside(int outline, PlaceGrid grid) {
        Vault vault = places.vault(outline);
        var inside = new TreeSet<Integer>();
        grid.visitAround(vault.lonDeg(), vault.latDeg(), places.extentM(outline), 0, number -> {
            Vault other = places.vault(number);
            if (number != outline && places.distanceM(outline, other.lonDeg(), other.latDeg()) == 0) {
                inside.add(number);
            }
        });
        return inside;
    }

    private void report(int outline, SortedSet<Integer> inside) {
        if (inside.size() < LEAST) {
            return;
        }
        List<String> named = inside.stream()
                .limit(MOST_NAMED)
                .map(number -> places.vault(number).id())
                .toList();
        context.findings()
                .vault(
                        FindingCode.VAULT_HOLDS_VAULTS,
                        places.vault(outline),
                        "its outline holds " + inside.size() + " other vaults (" + String.join(", ", named)
                                + (inside.size() > MOST_NAMED ? ", ..." : "")
                                + "), and lines inside end at it instead of at them; draw the vault itself, or take the outline"
                                + " out of the layer of vaults");
    }
}
