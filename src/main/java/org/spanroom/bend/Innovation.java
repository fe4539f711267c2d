package org.spanroom.bend;

import java.util.Arrays;

/** Adds vertices of wandering noise to normal equations: each less what the one before it lets expect. */
final class Innovation {
    private static final int MOST_UNKNOWNS = 8;

    private final Noise noise;
    private final int from;
    private final double[] slope = new double[MOST_UNKNOWNS];
    private final double[] lastSlope = new double[MOST_UNKNOWNS];
    private int lastFirst;
    private int lastCount;
    private double lastOffM;

    Innovation(Noise noise, int from) {
        this.noise = noise;
        this.from = from;
    }

    /** Adds a vertex whose offset changes by {@code own[i]} with unknown {@code first + i}. */
    void add(BandedSystem system, int vertex, int first, double[] own, int count, double offM) {
        if (vertex == from) {
            system.add(first, own, count, offM);
        } else {
            addPair(system, vertex, first, own, count, offM);
        }
        System.arraycopy(own, 0, lastSlope, 0, count);
        lastFirst = first;
        lastCount = count;
        lastOffM = offM;
    }

    private void addPair(BandedSystem system, int vertex, int first, double[] own, int count, double offM) {
        int base = Math.min(first, lastFirst);
        int reach = Math.max(first + count, lastFirst + lastCount) - base;
        double gain = noise.gain[vertex];
        double last = gain * noise.memory[vertex];
        double fresh = gain * offM - last * lastOffM;
        Arrays.fill(slope, 0);
        if (reach > MOST_UNKNOWNS) {
            // The two are a whole bend apart: what they share is left out of the step, not of the sum.
            add(0, own, count, gain);
            system.add(first, slope, count, fresh);
            return;
        }
        add(first - base, own, count, gain);
        add(lastFirst - base, lastSlope, lastCount, -last);
        system.add(base, slope, reach, fresh);
    }

    private void add(int at, double[] slopes, int count, double times) {
        for (int i = 0; i < count; i++) {
            slope[at + i] += times * slopes[i];
        }
    }
}
