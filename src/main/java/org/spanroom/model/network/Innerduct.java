package org.spanroom.model.network;

import java.util.List;
import org.spanroom.model.Answer;
import org.spanroom.model.Check;

/**
 * A rigid pipe inside a duct, with the cables that are in it: mostly one, or none.
 *
 * @param wallMm minimum wall thickness
 * @param color as recorded, or empty
 * @param uncutAtA whether it runs uncut through the vault at end A into the next duct: of a span, through the vault where the span's
 *     line begins; unknown where nothing is recorded
 * @param uncutAtB the same at end B
 */
public record Innerduct(
        String id,
        double outsideDiameterMm,
        double wallMm,
        List<Cable> cables,
        String color,
        Answer uncutAtA,
        Answer uncutAtB) {
    public Innerduct {
        Check.positive("outsideDiameterMm", outsideDiameterMm);
        Check.positive("wallMm", wallMm);
        if (2 * wallMm >= outsideDiameterMm) {
            throw new IllegalArgumentException(
                    "wallMm must be less than half of outsideDiameterMm " + outsideDiameterMm + ", was " + wallMm);
        }
        cables = List.copyOf(cables);
    }

    /** An innerduct of whose color and ends nothing is recorded. */
    public Innerduct(String id, double outsideDiameterMm, double wallMm, List<Cable> cables) {
        this(id, outsideDiameterMm, wallMm, cables, "", Answer.UNKNOWN, Answer.UNKNOWN);
    }

    /** Returns the same innerduct of another size, with other cables in it. */
    public Innerduct withSizes(double otherOutsideMm, double otherWallMm, List<Cable> otherCables) {
        return new Innerduct(id, otherOutsideMm, otherWallMm, otherCables, color, uncutAtA, uncutAtB);
    }

    /** Returns the same innerduct with other answers to whether it runs uncut through the vaults. */
    public Innerduct withUncut(Answer otherAtA, Answer otherAtB) {
        return new Innerduct(id, outsideDiameterMm, wallMm, cables, color, otherAtA, otherAtB);
    }

    /** Returns whether it runs uncut through the vault at one end. */
    public Answer uncutAt(SpanEnd end) {
        return end == SpanEnd.A ? uncutAtA : uncutAtB;
    }

    public double insideDiameterMm() {
        return outsideDiameterMm - 2 * wallMm;
    }

    /** Returns the area that the pipe closes off, its outside diameter taken as solid. */
    public double areaMm2() {
        return Math.PI / 4 * outsideDiameterMm * outsideDiameterMm;
    }

    /**
     * Returns the wall that the pipe's mass is based on: the minimum and half the tolerance on it, which is the larger of
     * 0.508 mm and 12 % (ASTM D3035 as reprinted in a data sheet; the use of the average wall is that of PPI TR-7). A pipe without a bore
     * is solid, and no thicker.
     */
    public double averageWallMm() {
        return Math.min(outsideDiameterMm / 2, wallMm + Math.max(0.254, 0.06 * wallMm));
    }

    /** Returns the mass per meter of the pipe alone, of a material of the given density. */
    public double massKgPerM(double densityKgPerM3) {
        double average = averageWallMm();
        return Math.PI * (outsideDiameterMm - average) * average * 1e-6 * densityKgPerM3;
    }

    /** Returns the same pipe of another size. */
    public Innerduct resized(double otherOutsideMm, double otherWallMm) {
        return withSizes(otherOutsideMm, otherWallMm, cables);
    }

    /** Returns the same pipe with other cables in it. */
    public Innerduct holding(List<Cable> others) {
        return withSizes(outsideDiameterMm, wallMm, others);
    }

    /** Returns the same pipe of another color. */
    public Innerduct colored(String other) {
        return new Innerduct(id, outsideDiameterMm, wallMm, cables, other, uncutAtA, uncutAtB);
    }

    public boolean isEmpty() {
        return cables.isEmpty();
    }
}
