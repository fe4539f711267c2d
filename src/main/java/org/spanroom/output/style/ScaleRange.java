package org.spanroom.output.style;

/**
 * The scales at which something is drawn, by their denominators: 4000 is 1 : 4 000.
 *
 * @param nearest the least denominator; 0 for no limit
 * @param farthest the largest denominator; 0 for no limit
 */
record ScaleRange(int nearest, int farthest) {
    static final ScaleRange ALL = new ScaleRange(0, 0);

    static ScaleRange upTo(int farthest) {
        return new ScaleRange(0, farthest);
    }

    static ScaleRange between(int nearest, int farthest) {
        return new ScaleRange(nearest, farthest);
    }
}
