package org.spanroom.sample;

import java.util.Arrays;
import java.util.function.DoubleBinaryOperator;
import org.spanroom.model.Line;

/**
 * A line as it is being drawn, immutable: meters in the city's plane, with a height for each vertex that is 0 until it is
 * given one.
 */
final class DrawnLine {
    private static final double NEAR_M = 2;

    /** A cut so near a vertex is made at it, so that no vertex is drawn twice by chance. */
    private static final double ON_VERTEX_M = 0.02;

    /** Offsets at sharp corners are cut off at twice the distance, so that no spike is drawn. */
    private static final double LEAST_COSINE = 0.5;

    private static final double HEIGHT_STEPS = 1000;

    /** A turn of a tenth of a degree is none. */
    private static final double NO_TURN_SINE = 0.0017;

    private final double[] xyz;

    private DrawnLine(double[] xyz) {
        this.xyz = xyz;
    }

    static DrawnLine of(double[] xy) {
        double[] xyz = new double[xy.length / 2 * 3];
        for (int i = 0; i < xy.length / 2; i++) {
            xyz[3 * i] = xy[2 * i];
            xyz[3 * i + 1] = xy[2 * i + 1];
        }
        return new DrawnLine(xyz);
    }

    int size() {
        return xyz.length / 3;
    }

    double x(int i) {
        return xyz[3 * i];
    }

    double y(int i) {
        return xyz[3 * i + 1];
    }

    double lengthM() {
        double total = 0;
        for (int i = 1; i < size(); i++) {
            total += stepM(i);
        }
        return total;
    }

    /** Returns the length on the ground, heights included. */
    double groundLengthM() {
        double eastRatio = CityPlane.eastRatio(y(0));
        double northRatio = CityPlane.northRatio(y(0));
        double total = 0;
        for (int i = 1; i < size(); i++) {
            double dx = (x(i) - x(i - 1)) * eastRatio;
            double dy = (y(i) - y(i - 1)) * northRatio;
            double dz = xyz[3 * i + 2] - xyz[3 * i - 1];
            total += Math.sqrt(dx * dx + dy * dy + dz * dz);
        }
        return total;
    }

    /** Returns the least distance from a point to the line. */
    double distance(double x, double y) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < size(); i++) {
            least = Math.min(least, distanceToStep(i, x, y));
        }
        return least;
    }

    private double distanceToStep(int i, double x, double y) {
        double dx = x(i) - x(i - 1);
        double dy = y(i) - y(i - 1);
        double squared = dx * dx + dy * dy;
        double along = squared == 0 ? 0 : ((x - x(i - 1)) * dx + (y - y(i - 1)) * dy) / squared;
        double share = Math.max(0, Math.min(1, along));
        double offX = x(i - 1) + share * dx - x;
        double offY = y(i - 1) + share * dy - y;
        return Math.sqrt(offX * offX + offY * offY);
    }

    /** Returns the parts before and after a place along the line, which must be inside it; a vertex there is used. */
    DrawnLine[] cutAt(double alongM) {
        int i = 1;
        double left = alongM;
        while (i < size() - 1 && left > stepM(i) - ON_VERTEX_M) {
            left -= stepM(i++);
        }
        if (i > 1 && left < ON_VERTEX_M) {
            return new DrawnLine[] {
                new DrawnLine(Arrays.copyOf(xyz, 3 * i)), new DrawnLine(Arrays.copyOfRange(xyz, 3 * i - 3, xyz.length))
            };
        }
        double share = left / stepM(i);
        double[] cut = new double[3];
        for (int k = 0; k < 3; k++) {
            cut[k] = xyz[3 * i - 3 + k] + share * (xyz[3 * i + k] - xyz[3 * i - 3 + k]);
        }
        double[] before = Arrays.copyOf(xyz, 3 * i + 3);
        System.arraycopy(cut, 0, before, 3 * i, 3);
        double[] after = Arrays.copyOfRange(xyz, 3 * i - 3, xyz.length);
        System.arraycopy(cut, 0, after, 0, 3);
        return new DrawnLine[] {new DrawnLine(before), new DrawnLine(after)};
    }

    /** Returns the line without its last meters. */
    DrawnLine shortened(double byM) {
        return cutAt(lengthM() - byM)[0];
    }

    /** Returns the line with a straight of this many meters more at its end, in the direction of its last step. */
    DrawnLine extended(double byM) {
        double[] longer = Arrays.copyOf(xyz, xyz.length + 3);
        int last = size() - 1;
        double ratio = byM / stepM(last);
        for (int k = 0; k < 3; k++) {
            longer[3 * last + 3 + k] = xyz[3 * last + k] + ratio * (xyz[3 * last + k] - xyz[3 * last - 3 + k]);
        }
        return new DrawnLine(longer);
    }

    DrawnLine reversed() {
        double[] back = new double[xyz.length];
        for (int i = 0; i < size(); i++) {
            System.arraycopy(xyz, 3 * i, back, xyz.length - 3 * i - 3, 3);
        }
        return new DrawnLine(back);
    }

    /** Returns the line with a vertex drawn twice. */
    DrawnLine withVertexTwice(int i) {
        double[] more = new double[xyz.length + 3];
        System.arraycopy(xyz, 0, more, 0, 3 * i + 3);
        System.arraycopy(xyz, 3 * i, more, 3 * i + 3, xyz.length - 3 * i);
        return new DrawnLine(more);
    }

    /** Returns a line of two vertices in one place: one of this line's. */
    DrawnLine dot(int i) {
        double[] twice = new double[6];
        System.arraycopy(xyz, 3 * i, twice, 0, 3);
        System.arraycopy(xyz, 3 * i, twice, 3, 3);
        return new DrawnLine(twice);
    }

    DrawnLine movedBy(double dx, double dy) {
        double[] moved = xyz.clone();
        for (int i = 0; i < size(); i++) {
            moved[3 * i] += dx;
            moved[3 * i + 1] += dy;
        }
        return new DrawnLine(moved);
    }

    /** Returns the line that runs beside this one, to the left if the distance is positive. */
    DrawnLine beside(double distanceM) {
        if (distanceM == 0) {
            return this;
        }
        double[] moved = xyz.clone();
        for (int i = 0; i < size(); i++) {
            int before = Math.max(1, i);
            int after = Math.min(size() - 1, i + 1);
            double leftX = -(y(before) - y(before - 1)) / stepM(before) - (y(after) - y(after - 1)) / stepM(after);
            double leftY = (x(before) - x(before - 1)) / stepM(before) + (x(after) - x(after - 1)) / stepM(after);
            double halfSum = Math.sqrt(leftX * leftX + leftY * leftY);
            // Half the sum of two unit normals is the cosine of half the turn.
            double cosine = Math.max(LEAST_COSINE, halfSum / 2);
            if (halfSum > 0) {
                moved[3 * i] += distanceM * leftX / halfSum / cosine;
                moved[3 * i + 1] += distanceM * leftY / halfSum / cosine;
            }
        }
        return new DrawnLine(moved);
    }

    /** Returns the line as an unsteady hand draws it; vertices close to each other are placed as one. */
    DrawnLine shaken(double deviationM, Chance chance) {
        double[] shaken = xyz.clone();
        double dx = 0;
        double dy = 0;
        for (int i = 0; i < size(); i++) {
            if (i == 0 || stepM(i) > NEAR_M) {
                dx = chance.wobble(deviationM);
                dy = chance.wobble(deviationM);
            }
            shaken[3 * i] += dx;
            shaken[3 * i + 1] += dy;
        }
        return new DrawnLine(shaken);
    }

    /** Returns the line with heights, given each vertex's place in the plane. */
    DrawnLine lifted(DoubleBinaryOperator heightM) {
        double[] lifted = xyz.clone();
        for (int i = 0; i < size(); i++) {
            lifted[3 * i + 2] = heightM.applyAsDouble(x(i), y(i));
        }
        return new DrawnLine(lifted);
    }

    /** Returns this line and the next as one; the vertex that they share is kept, or left out where it draws nothing. */
    DrawnLine joined(DrawnLine next, boolean keepJoint) {
        int kept = keepJoint || turnsInto(next) ? size() : size() - 1;
        double[] both = Arrays.copyOf(xyz, 3 * kept + next.xyz.length - 3);
        System.arraycopy(next.xyz, 3, both, 3 * kept, next.xyz.length - 3);
        return new DrawnLine(both);
    }

    private boolean turnsInto(DrawnLine next) {
        int last = size() - 1;
        double dx = x(last) - x(last - 1);
        double dy = y(last) - y(last - 1);
        double nextX = next.x(1) - next.x(0);
        double nextY = next.y(1) - next.y(0);
        double sine = (dx * nextY - dy * nextX) / (stepM(last) * next.stepM(1));
        return Math.abs(sine) > NO_TURN_SINE || dx * nextX + dy * nextY < 0;
    }

    /** Returns the line in degrees of longitude and latitude, and meters of height if wanted. */
    Line lonLat(boolean withHeights) {
        int dimension = withHeights ? 3 : 2;
        double[] ordinates = new double[dimension * size()];
        for (int i = 0; i < size(); i++) {
            ordinates[dimension * i] = CityPlane.lonDeg(x(i));
            ordinates[dimension * i + 1] = CityPlane.latDeg(y(i));
            if (withHeights) {
                ordinates[dimension * i + 2] = Math.rint(xyz[3 * i + 2] * HEIGHT_STEPS) / HEIGHT_STEPS;
            }
        }
        return Line.wrap(ordinates, withHeights);
    }

    private double stepM(int i) {
        double dx = x(i) - x(i - 1);
        double dy = y(i) - y(i - 1);
        return Math.sqrt(dx * dx + dy * dy);
    }
}
