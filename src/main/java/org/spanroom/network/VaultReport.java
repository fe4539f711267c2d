package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.finding.FindingCode;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultUse;

/** What became of each vault. */
final class VaultReport {
    private final VaultPlaces places;
    private final VaultSightings sightings;
    private final CuttingContext context;
    private final SortedMap<Integer, List<String>> merged = new TreeMap<>();

    VaultReport(CuttingContext context) {
        this.context = context;
        places = context.places();
        sightings = context.sightings();
        for (int number = 0; number < places.count(); number++) {
            if (places.standsFor(number) != number) {
                merged.computeIfAbsent(places.standsFor(number), any -> new ArrayList<>())
                        .add(places.vault(number).id());
            }
        }
    }

    /** Reports vaults that are treated as another, and those that no route comes near. */
    void report() {
        for (int number = 0; number < places.count(); number++) {
            Vault vault = places.vault(number);
            int standsFor = places.standsFor(number);
            if (standsFor != number) {
                double meters = places.distanceM(standsFor, vault.lonDeg(), vault.latDeg());
                context.findings()
                        .vault(
                                FindingCode.DUPLICATE_VAULT,
                                vault,
                                "it is " + NetworkFindings.meters(meters) + " from vault "
                                        + places.vault(standsFor).id() + " and was treated as that vault");
            } else {
                reportIfFar(number, vault);
            }
        }
    }

    private void reportIfFar(int number, Vault vault) {
        double nearestM = sightings.nearestM(number);
        if (sightings.endCount(number) == 0 && nearestM > context.settings().snapToleranceM()) {
            double radiusM = Math.max(
                    context.settings().snapToleranceM(), context.settings().gapWarningM());
            context.findings()
                    .vault(
                            FindingCode.VAULT_FAR_FROM_ROUTES,
                            vault,
                            nearestM <= radiusM
                                    ? "the nearest route passes at " + NetworkFindings.meters(nearestM)
                                    : "no route within " + NetworkFindings.meters(radiusM));
        }
    }

    /** Returns the place of each vault among those that count; of one that is treated as another, the other's. */
    int[] places() {
        int[] among = new int[places.count()];
        int counting = 0;
        for (int number = 0; number < among.length; number++) {
            int standsFor = places.standsFor(number);
            among[number] = standsFor == number ? counting++ : among[standsFor];
        }
        return among;
    }

    /** Returns the vaults that count, in the order of their names. */
    List<VaultUse> uses() {
        List<VaultUse> uses = new ArrayList<>(places.count());
        for (int number = 0; number < places.count(); number++) {
            if (places.standsFor(number) == number) {
                uses.add(new VaultUse(
                        places.vault(number), merged.getOrDefault(number, List.of()), sightings.endCount(number)));
            }
        }
        return uses;
    }
}
