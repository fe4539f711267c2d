package org.spanroom.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntConsumer;
import org.spanroom.model.network.Vault;

/**
 * All vaults, where they lie, and which of them are at one place.
 *
 * <p>Vaults are numbered in the order of their names, then of their places, so that no result depends on the order of the
 * file. A vault within the merge distance of an earlier one that represents itself is treated as the first such; distance is
 * measured between their points, or from either's point to the other's footprint. Routes are still matched against both
 * drawn places, so that nothing in tolerance is lost.
 */
final class VaultPlaces {
    private static final double CELL_M = 100;

    private static final Comparator<Vault> IN_ORDER = Comparator.comparing(Vault::id, new NameOrder())
            .thenComparingDouble(Vault::lonDeg)
            .thenComparingDouble(Vault::latDeg)
            .thenComparing(Vault::kind)
            .thenComparingInt(Vault::sequence);

    private final List<Vault> vaults;

    /**
     * Longitude, latitude, meters per degree east and north, and how far a footprint reaches from the point, of each vault:
     * together, for the processor's cache.
     */
    private final double[] packed;

    private final Footprint[] footprints;
    private final boolean[] isFootprint;
    private final int[] standsFor;
    private final PlaceGrid grid;

    VaultPlaces(List<Vault> vaultsRead, double mergeM) {
        vaults = inOrder(vaultsRead);
        int count = vaults.size();
        packed = new double[5 * count];
        footprints = new Footprint[count];
        isFootprint = new boolean[count];
        standsFor = new int[count];
        grid = new PlaceGrid(CELL_M, count);
        for (int vault = 0; vault < count; vault++) {
            place(vault);
            standsFor[vault] = firstWithin(vault, mergeM);
            if (standsFor[vault] == vault || isFootprint[vault] || distanceM(standsFor[vault], vault) > 0) {
                index(vault);
            }
        }
    }

    private static List<Vault> inOrder(List<Vault> vaults) {
        return vaults.stream().sorted(IN_ORDER).toList();
    }

    private void place(int number) {
        Vault vault = vaults.get(number);
        packed[5 * number] = vault.lonDeg();
        packed[5 * number + 1] = vault.latDeg();
        packed[5 * number + 2] = GroundStep.eastMPerDeg(vault.latDeg());
        packed[5 * number + 3] = GroundStep.northMPerDeg(vault.latDeg());
        if (!vault.footprint().isEmpty()) {
            isFootprint[number] = true;
            footprints[number] = new Footprint(vault, packed[5 * number + 2], packed[5 * number + 3]);
            packed[5 * number + 4] = halfDiagonalM(number);
        }
    }

    private void index(int number) {
        if (isFootprint[number]) {
            double[] box = footprints[number].box();
            grid.addBox(
                    number,
                    packed[5 * number] + box[0] / packed[5 * number + 2],
                    packed[5 * number + 1] + box[1] / packed[5 * number + 3],
                    packed[5 * number] + box[2] / packed[5 * number + 2],
                    packed[5 * number + 1] + box[3] / packed[5 * number + 3]);
        } else {
            grid.add(number, packed[5 * number], packed[5 * number + 1], 0);
        }
    }

    private int firstWithin(int number, double mergeM) {
        int[] first = {number};
        double radiusM = mergeM + extentM(number);
        grid.visitAround(packed[5 * number], packed[5 * number + 1], radiusM, 0, other -> {
            if (other < first[0] && standsFor[other] == other && betweenM(number, other) <= mergeM) {
                first[0] = other;
            }
        });
        return first[0];
    }

    private double halfDiagonalM(int number) {
        double[] box = footprints[number].box();
        return Math.max(Math.hypot(box[0], box[1]), Math.hypot(box[2], box[3]));
    }

    private double betweenM(int a, int b) {
        return Math.min(distanceM(a, b), distanceM(b, a));
    }

    private double distanceM(int number, int pointOf) {
        return distanceM(number, packed[5 * pointOf], packed[5 * pointOf + 1]);
    }

    int count() {
        return vaults.size();
    }

    /** Returns all vaults in the order of their numbers. */
    List<Vault> vaults() {
        return vaults;
    }

    Vault vault(int number) {
        return vaults.get(number);
    }

    /** Returns the number of the vault that this one is treated as; its own, mostly. */
    int standsFor(int number) {
        return standsFor[number];
    }

    /** Returns the distance on the ground from a point to a vault's point or footprint. */
    double distanceM(int number, double pointLonDeg, double pointLatDeg) {
        double x = eastM(number, pointLonDeg);
        double y = northM(number, pointLatDeg);
        return isFootprint[number] ? footprints[number].distanceM(x, y) : Math.sqrt(x * x + y * y);
    }

    /** Returns meters east of a vault, by the scale at its latitude. */
    double eastM(int number, double pointLonDeg) {
        return GroundStep.differenceDeg(packed[5 * number], pointLonDeg) * packed[5 * number + 2];
    }

    double northM(int number, double pointLatDeg) {
        return (pointLatDeg - packed[5 * number + 1]) * packed[5 * number + 3];
    }

    /** Returns the distance from the vault's point within which all of it lies; 0 for a point. */
    double extentM(int number) {
        return packed[5 * number + 4];
    }

    boolean isFootprint(int number) {
        return isFootprint[number];
    }

    Footprint footprint(int number) {
        return footprints[number];
    }

    /** Visits vaults that may be within a distance of a step. */
    void visitStep(
            double fromLonDeg, double fromLatDeg, double dLonDeg, double dLatDeg, double radiusM, IntConsumer visitor) {
        grid.visitStep(fromLonDeg, fromLatDeg, dLonDeg, dLatDeg, radiusM, 0, visitor);
    }

    /** Returns the nearest vault within a distance of a point, of two equally near the one with the smaller name; -1 for none. */
    int nearest(double pointLonDeg, double pointLatDeg, double radiusM) {
        int[] best = {-1};
        double[] bestM = {radiusM};
        grid.visitAround(pointLonDeg, pointLatDeg, radiusM, 0, number -> {
            double meters = distanceM(number, pointLonDeg, pointLatDeg);
            int candidate = standsFor[number];
            if (meters < bestM[0] || (meters == bestM[0] && (best[0] < 0 || candidate < best[0]))) {
                best[0] = candidate;
                bestM[0] = meters;
            }
        });
        return best[0];
    }

    /** Returns the vaults of each name, as the numbers that they are treated as. */
    Map<String, List<Integer>> numbersById() {
        Map<String, List<Integer>> numbers = new HashMap<>();
        for (int number = 0; number < vaults.size(); number++) {
            numbers.computeIfAbsent(vaults.get(number).id(), id -> new ArrayList<>(1))
                    .add(standsFor[number]);
        }
        return numbers;
    }
}
