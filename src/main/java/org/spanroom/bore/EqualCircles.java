package org.spanroom.bore;

import java.util.stream.IntStream;

/**
 * The least bores of equal circles, where they are proved to be the least, and a bound for all other numbers.
 *
 * <p>Round, 1 to 14 and 19: ratios by E. G. Birgin and J. M. Gentil, New and improved results for packing identical unitary
 * radius circles within triangles, rectangles and strips (2009), Table 1; survey by R. L. Graham, B. D. Lubachevsky,
 * K. J. Nurmela and P. R. J. Ostergard, Dense packings of congruent circles in a circle, Discrete Mathematics 181 (1998)
 * 139-154; proofs to 7 Graham 1968, 8 to 10 Pirl 1969, 11 Melissen 1994, 12 and 13 Fodor 2000 and 2003, 14 Ekanayake and
 * LaFountain 2024, 19 Fodor 1999 (from memory). Square, 1 to 16: the same paper, Table 2; proofs to 9 by Schaer and Meir,
 * from 10 by R. Peikert, D. Wuertz, M. Monagan and C. de Groot 1992 (from memory).
 */
final class EqualCircles {
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
        4.328428554861
    };
    private static final int ALSO_PROVED = 19;
    private static final double ROUND_NINETEEN = 4.863703305156;

    private static final double[] SQUARE_SIDES = {
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

    private static final int HALVINGS = 60;

    /** Those of usual numbers, found once; crowded bores ask for all of them again and again. */
    private static final double[] DISC_REACHES =
            IntStream.range(0, 160).mapToDouble(EqualCircles::discReach).toArray();

    private EqualCircles() {}

    /** Returns whether the least bore of this many equal circles is proved. */
    static boolean isProved(boolean square, int count) {
        return square ? count < SQUARE_SIDES.length : count < ROUND.length || count == ALSO_PROVED;
    }

    /** Returns the least half size of a bore for this many circles of radius 1, only where it is proved. */
    static double provedHalfRatio(boolean square, int count) {
        if (!isProved(square, count)) {
            throw new IllegalArgumentException("no proved optimum for " + count + " circles");
        }
        if (square) {
            return SQUARE_SIDES[count] / 2;
        }
        return count == ALSO_PROVED ? ROUND_NINETEEN : ROUND[count];
    }

    /**
     * Returns a lower bound of the half size of a bore for this many circles of radius 1.
     *
     * <p>N. Oler, An inequality in the geometry of numbers, Acta Mathematica 105 (1961) 19-48 (from memory): points no
     * closer than 1 in a compact convex set of area A and perimeter P number at most 2 A / sqrt(3) + P / 2 + 1. Here the
     * points are the centers. In a square bore the set is the bore less the radius all around. In a round one it is the convex hull of
     * the centers ({@link #mostInDisc}).
     */
    static double olerHalfRatio(boolean square, int count) {
        if (square) {
            return 1 + squareReach(count) / 2;
        }
        return 1 + 2 * (count < DISC_REACHES.length ? DISC_REACHES[count] : discReach(count));
    }

    private static double squareReach(int count) {
        double square2 = 1 / Math.sqrt(3);
        return (-1 + Math.sqrt(1 + 4 * square2 * (count - 1))) / (2 * square2);
    }

    /** The least radius of a disc that the bound allows to hold this many points no closer than 1, from below. */
    private static double discReach(int count) {
        double low = 0.5;
        double high = count;
        for (int halving = 0; halving < HALVINGS; halving++) {
            double middle = (low + high) / 2;
            if (mostInDisc(middle) < count) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /**
     * Returns how many points no closer than 1 a disc of a radius holds at most by Oler's inequality.
     *
     * <p>Derived here: their convex hull is a polygon of k corners whose sides are 1 or longer. Of all convex polygons of k corners in a
     * disc the regular one has both the largest area and the largest perimeter, 2 k r sin(pi / k), which must reach k: so
     * sin(pi / k) is 1 / (2 r) or more. Area and perimeter rise with k; the largest k allowed bounds them, more tightly than the disc does.
     */
    private static double mostInDisc(double radius) {
        double corners = Math.floor(Math.PI / Math.asin(Math.min(1, 1 / (2 * radius))) + 1e-9);
        double area = corners / 2 * radius * radius * Math.sin(2 * Math.PI / corners);
        double perimeter = 2 * corners * radius * Math.sin(Math.PI / corners);
        return 2 * area / Math.sqrt(3) + perimeter / 2 + 1 + 1e-9;
    }
}
