package org.spanroom.sample;

/** Turns a lattice of straight streets into a district's plan: meters from its center for a place in the lattice. */
interface Warp {
    double east(double u, double v);

    double north(double u, double v);

    /** Returns whether streets of constant v are curved. */
    default boolean hasCurvedRows() {
        return true;
    }

    /** Returns whether streets of constant u are curved. */
    default boolean hasCurvedColumns() {
        return false;
    }

    /** Draws the way in which a kind of district is bent. */
    static Warp of(DistrictKind kind, Chance chance) {
        return switch (kind) {
            case OLD_QUARTER -> turned(StrictMath.toRadians(chance.between(-14, 14)));
            case HARBOR -> alongAnArc(chance.between(900, 1200));
            case RINGS -> polar();
            case HILLSIDE -> winding(chance.between(0, 6), chance.between(0, 6));
        };
    }

    private static Warp turned(double angleRad) {
        double cos = StrictMath.cos(angleRad);
        double sin = StrictMath.sin(angleRad);
        return new Warp() {
            @Override
            public double east(double u, double v) {
                return u * cos - v * sin;
            }

            @Override
            public double north(double u, double v) {
                return u * sin + v * cos;
            }

            @Override
            public boolean hasCurvedRows() {
                return false;
            }
        };
    }

    /** Quays follow a wide bay; the streets between them point to its middle. */
    private static Warp alongAnArc(double radiusM) {
        return new Warp() {
            @Override
            public double east(double u, double v) {
                return (radiusM + v) * StrictMath.sin(u / radiusM);
            }

            @Override
            public double north(double u, double v) {
                return (radiusM + v) * StrictMath.cos(u / radiusM) - radiusM;
            }
        };
    }

    /** Rings round a square; u is the bearing in radians, v the distance from the middle. */
    private static Warp polar() {
        return new Warp() {
            @Override
            public double east(double u, double v) {
                return v * StrictMath.cos(u);
            }

            @Override
            public double north(double u, double v) {
                return v * StrictMath.sin(u);
            }
        };
    }

    /** Streets wind along the hill and, less so, up it. */
    private static Warp winding(double phaseRad, double otherPhaseRad) {
        return new Warp() {
            @Override
            public double east(double u, double v) {
                return u + 9 * StrictMath.sin(v / 52 + otherPhaseRad);
            }

            @Override
            public double north(double u, double v) {
                return v + 16 * StrictMath.sin(u / 45 + phaseRad + v / 300);
            }

            @Override
            public boolean hasCurvedColumns() {
                return true;
            }
        };
    }
}
