package org.spanroom.effort;

/**
 * Arithmetic on amounts of all draws at once: one array element for each draw. The plain loops over arrays are what a compiler
 * turns into instructions for several elements; each element is rounded as if it were calculated alone.
 */
final class Lanes {
    private Lanes() {}

    /** Sets amounts to a quantity times its rate. */
    static void set(double[] into, double quantity, double[] rate) {
        for (int i = 0; i < into.length; i++) {
            into[i] = quantity * rate[i];
        }
    }

    /** Sets amounts to a quantity over its rate. */
    static void setOver(double[] into, double quantity, double[] rate) {
        for (int i = 0; i < into.length; i++) {
            into[i] = quantity / rate[i];
        }
    }

    static void set(double[] into, double[] quantity, double[] rate) {
        for (int i = 0; i < into.length; i++) {
            into[i] = quantity[i] * rate[i];
        }
    }

    /** Adds amounts. */
    static void add(double[] into, double[] amount) {
        for (int i = 0; i < into.length; i++) {
            into[i] += amount[i];
        }
    }

    /** Adds a quantity times its rate. */
    static void add(double[] into, double quantity, double[] rate) {
        for (int i = 0; i < into.length; i++) {
            into[i] += quantity * rate[i];
        }
    }

    static void add(double[] into, double[] quantity, double[] rate) {
        for (int i = 0; i < into.length; i++) {
            into[i] += quantity[i] * rate[i];
        }
    }

    /** Adds a quantity over its rate. */
    static void addOver(double[] into, double quantity, double[] rate) {
        for (int i = 0; i < into.length; i++) {
            into[i] += quantity / rate[i];
        }
    }

    /** Adds a quantity times its rate, of which a share counts. */
    static void add(double[] into, double quantity, double[] rate, double[] factor) {
        for (int i = 0; i < into.length; i++) {
            into[i] += quantity * rate[i] * factor[i];
        }
    }
}
