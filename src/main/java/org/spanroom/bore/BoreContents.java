package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.Answer;
import org.spanroom.model.bore.RoomSettings;
import org.spanroom.model.bore.RoomSettings.BesideRule;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;

/**
 * A cross-section of a duct by its sizes alone, its contents in order: what many ducts share, and the key under which the
 * answer is kept.
 *
 * @param insideDiameterMm diameter of a round bore, side of a square one
 * @param oval true where the duct is recorded as oval
 * @param besideForbidden whether nothing may be placed beside rigid innerducts that stay in
 * @param pipes the rigid innerducts in the order in which they are chosen to come out
 * @param fabrics the sleeves already in, sorted
 */
record BoreContents(
        BoreShape shape,
        double insideDiameterMm,
        boolean oval,
        boolean besideForbidden,
        List<Pipe> pipes,
        List<Fabric> fabrics,
        List<Wire> looseWires) {
    /**
     * A cable by its size.
     *
     * @param dead true where it is recorded as dead
     * @param mayMove false where it may not be laid into a cell, and that matters
     */
    record Wire(double outsideDiameterMm, boolean dead, boolean mayMove) implements Comparable<Wire> {
        private static final Comparator<Wire> ORDER = Comparator.comparingDouble(Wire::outsideDiameterMm)
                .reversed()
                .thenComparing(Wire::dead)
                .thenComparing(wire -> !wire.mayMove());

        double areaMm2() {
            return disc(outsideDiameterMm);
        }

        @Override
        public int compareTo(Wire other) {
            return ORDER.compare(this, other);
        }
    }

    /** A rigid innerduct by size, with its cables sorted. */
    record Pipe(double outsideDiameterMm, double wallMm, List<Wire> wires) {
        double insideDiameterMm() {
            return outsideDiameterMm - 2 * wallMm;
        }

        double areaMm2() {
            return disc(outsideDiameterMm);
        }
    }

    /**
     * A sleeve already in.
     *
     * @param free cells that hold no cable and are promised to none
     * @param promised cells that hold no cable yet, but are promised
     * @param wires cables in its cells, sorted
     */
    record Fabric(int free, int promised, List<Wire> wires) implements Comparable<Fabric> {
        private static final Comparator<Fabric> ORDER = Comparator.comparingInt(Fabric::free)
                .thenComparingInt(Fabric::promised)
                .thenComparing(fabric -> fabric.wires().toString());

        @Override
        public int compareTo(Fabric other) {
            return ORDER.compare(this, other);
        }
    }

    /** Returns the cross-section of a duct, by the rules in force. */
    static BoreContents of(Duct duct, RoomSettings settings) {
        boolean movingMatters = settings.oldCablesNeedCells();
        return new BoreContents(
                duct.boreShape(),
                duct.insideDiameterMm(),
                duct.condition() == Condition.OVAL,
                isBesideForbidden(duct, settings),
                pipes(duct.contents().innerductsByOrderOut(), movingMatters),
                duct.contents().sleeves().stream()
                        .map(BoreContents::fabric)
                        .sorted()
                        .toList(),
                wires(duct.contents().looseCables(), movingMatters));
    }

    /** Either forbids it: the owner's rule for all ducts, or what is recorded of this one. */
    private static boolean isBesideForbidden(Duct duct, RoomSettings settings) {
        return !duct.contents().innerducts().isEmpty()
                && (settings.besideInnerducts() == BesideRule.FORBIDDEN
                        || duct.circumstances().besideAllowed() == Answer.NO);
    }

    /** Its cables are in cells already, so that none must be moved into one. */
    private static Fabric fabric(Sleeve sleeve) {
        return new Fabric(sleeve.freeCells(), sleeve.promisedCells(), wires(sleeve.cables(), false));
    }

    private static List<Pipe> pipes(List<Innerduct> innerducts, boolean movingMatters) {
        var pipes = new ArrayList<Pipe>(innerducts.size());
        for (Innerduct innerduct : innerducts) {
            pipes.add(pipe(innerduct, movingMatters));
        }
        return List.copyOf(pipes);
    }

    private static Pipe pipe(Innerduct innerduct, boolean movingMatters) {
        return new Pipe(innerduct.outsideDiameterMm(), innerduct.wallMm(), wires(innerduct.cables(), movingMatters));
    }

    private static List<Wire> wires(List<Cable> cables, boolean movingMatters) {
        var wires = new ArrayList<Wire>(cables.size());
        for (Cable cable : cables) {
            wires.add(new Wire(
                    cable.outsideDiameterMm(), cable.service() == Service.DEAD, cable.mayMove() || !movingMatters));
        }
        wires.sort(Comparator.naturalOrder());
        return List.copyOf(wires);
    }

    double boreAreaMm2() {
        return shape == BoreShape.SQUARE ? insideDiameterMm * insideDiameterMm : disc(insideDiameterMm);
    }

    /** Returns how many cables are beside the innerducts, loose and in sleeves. */
    int cablesBeside() {
        return looseWires.size()
                + fabrics.stream().mapToInt(fabric -> fabric.wires().size()).sum();
    }

    static double areaMm2(List<Wire> wires) {
        return wires.stream().mapToDouble(Wire::areaMm2).sum();
    }

    static double disc(double diameterMm) {
        return Math.PI / 4 * diameterMm * diameterMm;
    }
}
