package org.spanroom.bore;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.BoreShape;
import org.spanroom.model.Cable;
import org.spanroom.model.Condition;
import org.spanroom.model.Duct;
import org.spanroom.model.Innerduct;
import org.spanroom.model.Service;

/**
 * A cross-section of a duct by its sizes alone, its contents sorted: what many ducts share, and the key under which the
 * answer is kept.
 *
 * @param insideDiameterMm diameter of a round bore, side of a square one
 * @param oval true where the duct is recorded as oval
 */
record Section(BoreShape shape, double insideDiameterMm, boolean oval, List<Pipe> pipes, List<Wire> looseWires) {
    /** A cable by size and service. */
    record Wire(double outsideDiameterMm, Service service) implements Comparable<Wire> {
        private static final Comparator<Wire> ORDER =
                Comparator.comparingDouble(Wire::outsideDiameterMm).reversed().thenComparing(Wire::service);

        double areaMm2() {
            return disc(outsideDiameterMm);
        }

        @Override
        public int compareTo(Wire other) {
            return ORDER.compare(this, other);
        }
    }

    /** A rigid innerduct by size, with its cables sorted. */
    record Pipe(double outsideDiameterMm, double wallMm, List<Wire> wires) implements Comparable<Pipe> {
        private static final Comparator<Pipe> ORDER = Comparator.comparingDouble(Pipe::outsideDiameterMm)
                .reversed()
                .thenComparingDouble(Pipe::wallMm)
                .thenComparing(pipe -> pipe.wires().toString());

        double insideDiameterMm() {
            return outsideDiameterMm - 2 * wallMm;
        }

        double areaMm2() {
            return disc(outsideDiameterMm);
        }

        @Override
        public int compareTo(Pipe other) {
            return ORDER.compare(this, other);
        }
    }

    static Section of(Duct duct) {
        return new Section(
                duct.boreShape(),
                duct.insideDiameterMm(),
                duct.condition() == Condition.OVAL,
                duct.contents().innerducts().stream()
                        .map(Section::pipe)
                        .sorted()
                        .toList(),
                wires(duct.contents().looseCables()));
    }

    private static Pipe pipe(Innerduct innerduct) {
        return new Pipe(innerduct.outsideDiameterMm(), innerduct.wallMm(), wires(innerduct.cables()));
    }

    private static List<Wire> wires(List<Cable> cables) {
        return cables.stream()
                .map(cable -> new Wire(cable.outsideDiameterMm(), cable.service()))
                .sorted()
                .toList();
    }

    double boreAreaMm2() {
        return shape == BoreShape.SQUARE ? insideDiameterMm * insideDiameterMm : disc(insideDiameterMm);
    }

    /** Returns every cable, largest first. */
    List<Wire> wires() {
        var all = new ArrayList<>(looseWires);
        pipes.forEach(pipe -> all.addAll(pipe.wires()));
        return all.stream().sorted().toList();
    }

    /** Returns the area that innerducts, taken as solid, and loose cables close off. */
    double closedBeforeMm2() {
        return pipes.stream().mapToDouble(Pipe::areaMm2).sum() + areaMm2(looseWires);
    }

    static double areaMm2(List<Wire> wires) {
        return wires.stream().mapToDouble(Wire::areaMm2).sum();
    }

    private static double disc(double diameterMm) {
        return Math.PI / 4 * diameterMm * diameterMm;
    }
}
