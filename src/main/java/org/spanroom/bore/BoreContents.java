package org.spanroom.bore;

import java.util.Comparator;
import java.util.List;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;

/**
 * A cross-section of a duct by its sizes alone, its contents in order: what many ducts share, and the key under which the
 * answer is kept.
 *
 * @param insideDiameterMm diameter of a round bore, side of a square one
 * @param oval true where the duct is recorded as oval
 * @param pipes the rigid innerducts in the order in which they are chosen to come out
 */
record BoreContents(BoreShape shape, double insideDiameterMm, boolean oval, List<Pipe> pipes, List<Wire> looseWires) {
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
     * Returns the cross-section of a duct.
     *
     * @param movingMatters whether cables that may not be moved make a difference by the rules in force
     */
    static BoreContents of(Duct duct, boolean movingMatters) {
        return new BoreContents(
                duct.boreShape(),
                duct.insideDiameterMm(),
                duct.condition() == Condition.OVAL,
                duct.contents().innerductsByOrderOut().stream()
                        .map(innerduct -> pipe(innerduct, movingMatters))
                        .toList(),
                wires(duct.contents().looseCables(), movingMatters));
    }

    private static Pipe pipe(Innerduct innerduct, boolean movingMatters) {
        return new Pipe(innerduct.outsideDiameterMm(), innerduct.wallMm(), wires(innerduct.cables(), movingMatters));
    }

    private static List<Wire> wires(List<Cable> cables, boolean movingMatters) {
        return cables.stream()
                .map(cable -> new Wire(
                        cable.outsideDiameterMm(), cable.service() == Service.DEAD, cable.mayMove() || !movingMatters))
                .sorted()
                .toList();
    }

    double boreAreaMm2() {
        return shape == BoreShape.SQUARE ? insideDiameterMm * insideDiameterMm : disc(insideDiameterMm);
    }

    /** Returns the area that innerducts, taken as solid, and loose cables close off. */
    double closedBeforeMm2() {
        return pipes.stream().mapToDouble(Pipe::areaMm2).sum() + areaMm2(looseWires);
    }

    static double areaMm2(List<Wire> wires) {
        return wires.stream().mapToDouble(Wire::areaMm2).sum();
    }

    static double disc(double diameterMm) {
        return Math.PI / 4 * diameterMm * diameterMm;
    }
}
