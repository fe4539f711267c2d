package org.spanroom.output.style;

import java.util.List;

/**
 * Colors as eyes see them, for tests: CIE 1976 L*a*b* of sRGB under D65, the color difference CIEDE2000 (Sharma, Wu, Dalal 2005), and the
 * three dichromacies by the matrices of Machado, Oliveira, Fernandes 2009 at severity 1.0. All formulas and constants from memory.
 */
final class ColorMath {
    private static final double[][] TO_XYZ = {
        {0.4124564, 0.3575761, 0.1804375},
        {0.2126729, 0.7151522, 0.0721750},
        {0.0193339, 0.1191920, 0.9503041}
    };
    private static final double POWER = Math.pow(25, 7);

    private ColorMath() {}

    /** A color in L*a*b*. */
    record Lab(double light, double a, double b) {}

    /** Ways of seeing; of each the matrix by which it turns linear colors, row by row, which nothing changes. */
    @SuppressWarnings("ImmutableEnumChecker")
    enum Vision {
        NORMAL(List.of(1.0, 0.0, 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 1.0)),
        PROTANOPIA(
                List.of(0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998)),
        DEUTERANOPIA(
                List.of(0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881)),
        TRITANOPIA(
                List.of(1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900));

        private final List<Double> matrix;

        Vision(List<Double> matrix) {
            this.matrix = matrix;
        }

        private double[] see(double[] linear) {
            double[] seen = new double[3];
            for (int row = 0; row < 3; row++) {
                for (int column = 0; column < 3; column++) {
                    seen[row] += matrix.get(3 * row + column) * linear[column];
                }
                seen[row] = Math.max(0, Math.min(1, seen[row]));
            }
            return seen;
        }
    }

    /** Returns how a color {@code #rrggbb} is seen. */
    static Lab seen(String hex, Vision vision) {
        double[] linear = new double[3];
        for (int part = 0; part < 3; part++) {
            double value = Integer.parseInt(hex.substring(1 + 2 * part, 3 + 2 * part), 16) / 255.0;
            linear[part] = value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
        }
        double[] rgb = vision.see(linear);
        double[] root = new double[3];
        for (int row = 0; row < 3; row++) {
            double[] weights = TO_XYZ[row];
            double white = weights[0] + weights[1] + weights[2];
            double share = (weights[0] * rgb[0] + weights[1] * rgb[1] + weights[2] * rgb[2]) / white;
            root[row] = share > 216.0 / 24389 ? Math.cbrt(share) : (24389.0 / 27 * share + 16) / 116;
        }
        return new Lab(116 * root[1] - 16, 500 * (root[0] - root[1]), 200 * (root[1] - root[2]));
    }

    /** Returns the difference CIEDE2000 of two colors, with all weights 1. */
    static double difference(Lab one, Lab other) {
        double chroma = (Math.hypot(one.a(), one.b()) + Math.hypot(other.a(), other.b())) / 2;
        double stretch = 1.5 - 0.5 * Math.sqrt(Math.pow(chroma, 7) / (Math.pow(chroma, 7) + POWER));
        double a1 = stretch * one.a();
        double a2 = stretch * other.a();
        double c1 = Math.hypot(a1, one.b());
        double c2 = Math.hypot(a2, other.b());
        boolean gray = c1 * c2 == 0;
        double h1 = hueDeg(a1, one.b());
        double h2 = hueDeg(a2, other.b());
        double turn = gray ? 0 : h2 - h1 > 180 ? h2 - h1 - 360 : h2 - h1 < -180 ? h2 - h1 + 360 : h2 - h1;
        double middle = h1 + h2;
        if (!gray) {
            middle = Math.abs(h1 - h2) <= 180 ? middle / 2 : (middle < 360 ? middle + 360 : middle - 360) / 2;
        }
        double dh = 2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(turn / 2));
        double c = (c1 + c2) / 2;
        double light = (one.light() + other.light()) / 2 - 50;
        double t = 1
                - 0.17 * cosDeg(middle - 30)
                + 0.24 * cosDeg(2 * middle)
                + 0.32 * cosDeg(3 * middle + 6)
                - 0.20 * cosDeg(4 * middle - 63);
        double l = (other.light() - one.light()) / (1 + 0.015 * light * light / Math.sqrt(20 + light * light));
        double k = (c2 - c1) / (1 + 0.045 * c);
        double h = dh / (1 + 0.015 * c * t);
        double rotation = -2
                * Math.sqrt(Math.pow(c, 7) / (Math.pow(c, 7) + POWER))
                * Math.sin(Math.toRadians(60 * Math.exp(-Math.pow((middle - 275) / 25, 2))));
        return Math.sqrt(l * l + k * k + h * h + rotation * k * h);
    }

    private static double hueDeg(double a, double b) {
        return a == 0 && b == 0 ? 0 : (Math.toDegrees(Math.atan2(b, a)) + 360) % 360;
    }

    private static double cosDeg(double deg) {
        return Math.cos(Math.toRadians(deg));
    }
}
