package org.spanroom.bore;

import java.util.Arrays;

/**
 * How much circles overlap one another and the wall, as an energy: the sum of the squared depths; and of the squared stretches of the
 * joints between the cells of a sleeve ({@link Joints}).
 *
 * <p>Zero exactly where all circles lie clear and every sleeve hangs together; continuous with its first derivative, and a sum of squares near an
 * arrangement without overlap, so that a descent converges fast. The size of the bore is an argument: by the envelope
 * theorem the derivative of the least energy by the bore's half size is minus twice the depth through the wall, which
 * gives the size at which the energy would vanish ({@link #freeHalfMm}). Holds working state: one instance a thread.
 */
final class OverlapEnergy {
    private final PackingTask task;
    private final double[] radiiMm;
    private final Joints joints;
    private int[] pairs = new int[0];
    private double weight;
    private double wallDepthMm;

    OverlapEnergy(PackingTask task) {
        this.task = task;
        radiiMm = new double[task.size()];
        for (int i = 0; i < radiiMm.length; i++) {
            radiiMm[i] = task.radiusMm(i);
        }
        joints = new Joints(task);
    }

    PackingTask task() {
        return task;
    }

    /** Lets every circle weigh its area times this, downwards; 0 for none. */
    void weigh(double newWeight) {
        weight = newWeight;
    }

    /** Lets the cells of each sleeve that are neighbors in an arrangement hold together from now on. */
    void join(double[] centers) {
        if (!joints.isEmpty()) {
            pairs = joints.pairs(centers);
        }
    }

    Joints joints() {
        return joints;
    }

    /** Returns the energy in mm2 and fills in its gradient. */
    double at(double[] centers, double halfMm, double[] gradient) {
        wallDepthMm = 0;
        Arrays.fill(gradient, 0);
        double energy = weight == 0 ? 0 : gravity(centers, gradient);
        for (int i = 0; i < radiiMm.length; i++) {
            energy += task.isSquare() ? sides(centers, halfMm, gradient, i) : round(centers, halfMm, gradient, i);
            energy += pairs(centers, gradient, i);
        }
        for (int k = 0; k < pairs.length; k += 2) {
            energy += joint(centers, gradient, pairs[k], pairs[k + 1]);
        }
        return energy;
    }

    private double joint(double[] centers, double[] gradient, int i, int j) {
        double dx = centers[2 * i] - centers[2 * j];
        double dy = centers[2 * i + 1] - centers[2 * j + 1];
        double reach = radiiMm[i] + radiiMm[j] + task.slackMm();
        double square = dx * dx + dy * dy;
        if (square <= reach * reach) {
            return 0;
        }
        double apart = Math.sqrt(square);
        double pull = 2 * (apart - reach) / apart;
        gradient[2 * i] += pull * dx;
        gradient[2 * i + 1] += pull * dy;
        gradient[2 * j] -= pull * dx;
        gradient[2 * j + 1] -= pull * dy;
        return (apart - reach) * (apart - reach);
    }

    /**
     * Returns the half size of the bore in which the arrangement last looked at, itself at the least energy for its bore,
     * would be without overlap: one step of Newton's rule on the root of the energy, which is near to linear there.
     */
    double freeHalfMm(double energy, double halfMm) {
        return wallDepthMm > 0 ? halfMm + energy / wallDepthMm : Double.POSITIVE_INFINITY;
    }

    private double gravity(double[] centers, double[] gradient) {
        double energy = 0;
        double largestMm = radiiMm[0];
        for (int i = 0; i < radiiMm.length; i++) {
            double pull = weight * (radiiMm[i] / largestMm) * (radiiMm[i] / largestMm);
            energy += pull * centers[2 * i + 1];
            gradient[2 * i + 1] += pull;
        }
        return energy;
    }

    /** The gradient at the circle is summed up beside the array: a plain compiler would fetch it for each pair. */
    private double pairs(double[] centers, double[] gradient, int i) {
        double[] radii = radiiMm;
        double energy = 0;
        double radius = radii[i];
        double x = centers[2 * i];
        double y = centers[2 * i + 1];
        double pushX = gradient[2 * i];
        double pushY = gradient[2 * i + 1];
        for (int j = i + 1; j < radii.length; j++) {
            double dx = x - centers[2 * j];
            double dy = y - centers[2 * j + 1];
            double touch = radius + radii[j];
            double square = dx * dx + dy * dy;
            if (square < touch * touch) {
                double apart = Math.sqrt(square);
                double depth = touch - apart;
                energy += depth * depth;
                double push = apart > 0 ? 2 * depth / apart : 0;
                pushX -= push * dx;
                pushY -= push * dy;
                gradient[2 * j] += push * dx;
                gradient[2 * j + 1] += push * dy;
            }
        }
        gradient[2 * i] = pushX;
        gradient[2 * i + 1] = pushY;
        return energy;
    }

    private double round(double[] centers, double halfMm, double[] gradient, int i) {
        double x = centers[2 * i];
        double y = centers[2 * i + 1];
        double reach = halfMm - radiiMm[i];
        double square = x * x + y * y;
        if (reach > 0 && square <= reach * reach) {
            return 0;
        }
        double out = Math.sqrt(square);
        double depth = out - reach;
        wallDepthMm += depth;
        double push = out > 0 ? 2 * depth / out : 0;
        gradient[2 * i] += push * x;
        gradient[2 * i + 1] += push * y;
        return depth * depth;
    }

    private double sides(double[] centers, double halfMm, double[] gradient, int i) {
        double energy = 0;
        double reach = halfMm - radiiMm[i];
        for (int k = 2 * i; k < 2 * i + 2; k++) {
            double depth = Math.abs(centers[k]) - reach;
            if (depth > 0) {
                energy += depth * depth;
                wallDepthMm += depth;
                gradient[k] += 2 * depth * Math.signum(centers[k]);
            }
        }
        return energy;
    }
}
