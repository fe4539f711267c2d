package org.spanroom.corpus;

import java.util.Arrays;
import java.util.List;

/**
 * Published least bores of circle packings.
 *
 * <p>Equal circles, round (container radius over circle radius) for 1 to 20 and 37, and square (side over circle radius)
 * for 1 to 16: E. G. Birgin and J. M. Gentil, New and improved results for packing identical unitary radius circles within
 * triangles, rectangles and strips (2009), Tables 1 and 2; survey by Graham, Lubachevsky, Nurmela and Ostergard, Discrete
 * Mathematics 181 (1998) 139-154. Round, 21 to 36: from memory, to six digits.
 *
 * <p>Radii 1, 2, ..., n: T. Ye, W. Huang and Z. Lu, Iterated Tabu Search Algorithm for Packing Unequal Circles in a Circle,
 * arXiv:1306.0694 (2013), Table 4; 1 to 4 in closed form.
 */
public final class PublishedPackings {
    /** The most equal circles that a round bore is known for here. */
    public static final int MOST_ROUND = 37;

    /** The most equal circles that a square bore is known for here. */
    public static final int MOST_SQUARE = 16;

    private static final double[] ROUND = {
        0,
        1,
        2,
        2.154700538379,
        2.414213562373,
        2.701301616704,
        3,
        3,
        3.304764870962,
        3.613125929753,
        3.813025631398,
        3.923804400163,
        4.029601930116,
        4.236067977500,
        4.328428554861,
        4.521356964706,
        4.615425594873,
        4.792033748311,
        4.863703305156,
        4.863703305156,
        5.122320736992,
        5.252317,
        5.439719,
        5.545204,
        5.651661,
        5.752824,
        5.828177,
        5.906397,
        6.014938,
        6.138598,
        6.197741,
        6.291502,
        6.429463,
        6.486703,
        6.610957,
        6.697171,
        6.746753,
        6.758770483144
    };

    /** Numbers of equal circles whose least round bore is proved. */
    private static final List<Integer> PROVED = List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 19);

    private static final double[] SQUARE = {
        0,
        2,
        3.414213562,
        3.931851653,
        4,
        4.828427125,
        5.328201177,
        5.732050808,
        5.863703305,
        6,
        6.747441523,
        7.022509503,
        7.144957554,
        7.463047829,
        7.732050808,
        7.863703305,
        8
    };

    /** n and container radius. */
    private static final double[][] ONE_TO_N = {
        {1, 1},
        {2, 3},
        {3, 5},
        {4, 7},
        {5, 9.00139774},
        {6, 11.05704039},
        {7, 13.46211067},
        {8, 16.22174667},
        {9, 19.2331939},
        {10, 22.00019301},
        {12, 28.37138943},
        {15, 38.8379955},
        {20, 58.40056747}
    };

    private PublishedPackings() {}

    /** Returns the radius of the least known round bore for so many circles of radius 1. */
    public static double roundRatio(int count) {
        return ROUND[count];
    }

    /** Returns whether that bore is proved to be the least. */
    public static boolean isProved(int count) {
        return PROVED.contains(count);
    }

    /** Returns the side of the least square bore for so many circles of radius 1, all proved. */
    public static double squareRatio(int count) {
        return SQUARE[count];
    }

    /** Returns n and the radius of the least known round bore for circles of radii 1 to n, for some n. */
    public static List<double[]> oneToN() {
        return Arrays.stream(ONE_TO_N).map(double[]::clone).toList();
    }
}
