package org.spanroom.pull;

/**
 * Tension in something that is pulled through a straight or a bend; each method returns the tension after it.
 *
 * <p>All rest on Coulomb friction without effect of speed, and on a limp body that slips everywhere. The units are any that
 * agree; this package uses N, m and rad. The methods page lists the sources.
 */
final class PullFormulas {
    /** Up to here the power series is more exact than the difference of exponentials. */
    private static final double SMALL_EXPONENT = 1e-3;

    /** Keeps lines that are drawn absurdly from giving infinite tensions; the limit is far beyond any duct. */
    private static final double LARGEST_EXPONENT = 300;

    private PullFormulas() {}

    /**
     * Straight of constant load and wander: solves dT/ds = b T + a, so T e<sup>bL</sup> + a (e<sup>bL</sup> - 1)/b.
     *
     * @param loadNPerM a: friction of the weight and its pull along the slope
     * @param growthRad bL: friction coefficient times the angle that the straight wanders through; 0 for a true straight
     */
    static double afterStraight(double tensionN, double loadNPerM, double lengthM, double growthRad) {
        if (growthRad == 0) {
            return tensionN + loadNPerM * lengthM;
        }
        double growth = growth(growthRad);
        double mean = growthRad > SMALL_EXPONENT
                ? (growth - 1) / growthRad
                : 1 + growthRad / 2 * (1 + growthRad / 3 * (1 + growthRad / 4 * (1 + growthRad / 5)));
        return tensionN * growth + loadNPerM * lengthM * mean;
    }

    /** Load on a slope: friction of the weight across it, and the weight along it, which helps downhill. */
    static double slopeLoad(double frictionRatio, double pressNPerM, double alongNPerM, double sineRatio) {
        double cosine = Math.sqrt(1 - sineRatio * sineRatio);
        return frictionRatio * Math.abs(pressNPerM) * cosine + alongNPerM * sineRatio;
    }

    /** Bend, the weight left out: the capstan equation T e<sup>f&theta;</sup>. */
    static double afterBend(double tensionN, double frictionRatio, double turnRad) {
        return tensionN * growth(frictionRatio * turnRad);
    }

    /**
     * Level bend with weight: solves dT/d&theta; = f sqrt(T&sup2; + (wR)&sup2;).
     *
     * @param weightN weight per length times the radius, wR
     */
    static double afterLevelBend(double tensionN, double frictionRatio, double turnRad, double weightN) {
        double growth = growth(frictionRatio * turnRad);
        double cosh = (growth + 1 / growth) / 2;
        double sinh = (growth - 1 / growth) / 2;
        return tensionN * cosh + sinh * Math.sqrt(tensionN * tensionN + weightN * weightN);
    }

    /**
     * Vertical bend between two slopes: solves dT/d&psi; = f |T &plusmn; pR cos&phi;| + gR sin&phi;, plus on a crest and
     * minus in a sag. Exact on a crest, and in a sag where the body is on one wall all along: the upper one where its
     * tension lifts it (T &gt; pR cos&phi;), else the lower one. Where it changes walls inside the bend the result is a
     * little low, by less than the friction of its weight over the arc.
     *
     * @param pressN weight that presses on the wall, times the radius; of the sign of {@code alongN}
     * @param alongN weight that the slope pulls along, times the radius
     */
    static double afterVerticalBend(
            double tensionN,
            double frictionRatio,
            double fromSlopeRad,
            double toSlopeRad,
            double pressN,
            double alongN) {
        double onInnerWall = afterArc(tensionN, frictionRatio, fromSlopeRad, toSlopeRad, pressN, alongN);
        boolean weightHelpsTension = toSlopeRad < fromSlopeRad == pressN >= 0;
        if (weightHelpsTension) {
            return onInnerWall;
        }
        // On the outer wall tension and weight part: the same balance with the friction's sign turned.
        return Math.max(onInnerWall, afterArc(tensionN, -frictionRatio, fromSlopeRad, toSlopeRad, pressN, alongN));
    }

    private static double afterArc(
            double tensionN,
            double frictionRatio,
            double fromSlopeRad,
            double toSlopeRad,
            double pressN,
            double alongN) {
        double crest = toSlopeRad < fromSlopeRad ? 1 : -1;
        double square = 1 + frictionRatio * frictionRatio;
        double cosinePartN = crest * (alongN - frictionRatio * frictionRatio * pressN) / square;
        double sinePartN = -frictionRatio * (alongN + pressN) / square;
        double fromN = cosinePartN * Math.cos(fromSlopeRad) + sinePartN * Math.sin(fromSlopeRad);
        double toN = cosinePartN * Math.cos(toSlopeRad) + sinePartN * Math.sin(toSlopeRad);
        return (tensionN - fromN) * growth(frictionRatio * Math.abs(toSlopeRad - fromSlopeRad)) + toN;
    }

    /** Force per meter with which a tension presses on the inside of a bend. */
    static double sidewall(double tensionN, double insideRadiusM) {
        return tensionN / insideRadiusM;
    }

    /**
     * Factor on the friction of one of two equal bodies that are side by side on the floor of a round bore:
     * 1/sqrt(1 - (d/(D - d))&sup2;).
     */
    static double wedge(double bodyDiameterMm, double boreDiameterMm) {
        double sine = bodyDiameterMm / (boreDiameterMm - bodyDiameterMm);
        return 1 / Math.sqrt(1 - sine * sine);
    }

    private static double growth(double exponentRad) {
        return Math.exp(Math.min(exponentRad, LARGEST_EXPONENT));
    }
}
