package org.spanroom.output;

import java.util.List;
import java.util.Locale;

/** A line diagram of quantities along a span, from 0 at the bottom to a round number above the largest. */
final class Chart {
    private static final int TICKS = 4;

    private final Svg svg;
    private final double leftPx;
    private final double topPx;
    private final double widthPx;
    private final double heightPx;
    private final double lengthM;
    private final String name;

    Chart(Svg svg, double leftPx, double topPx, double widthPx, double heightPx, double lengthM, String name) {
        this.svg = svg;
        this.leftPx = leftPx;
        this.topPx = topPx;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.lengthM = lengthM;
        this.name = name;
    }

    /** Draws one line for each list of (distance along the span, quantity). */
    void draw(List<List<double[]>> profiles, List<Svg.Pen> pens) {
        double most = profiles.stream()
                .flatMap(List::stream)
                .mapToDouble(point -> point[1])
                .max()
                .orElse(0);
        double step = roundAbove(Math.max(most, 1e-3) / TICKS);
        axes(step);
        for (int i = 0; i < profiles.size(); i++) {
            double top = step * TICKS;
            svg.path(
                    profiles.get(i).stream()
                            .map(point -> new double[] {x(point[0]), y(point[1], top)})
                            .toList(),
                    pens.get(i));
        }
    }

    private void axes(double step) {
        for (int tick = 0; tick <= TICKS; tick++) {
            double yPx = y(tick * step, step * TICKS);
            svg.stroke(leftPx, yPx, leftPx + widthPx, yPx, tick == 0 ? Svg.Pen.AXIS : Svg.Pen.THIN);
            svg.label(leftPx - 8, yPx + 4, "end", 11, plain(tick * step));
        }
        double stepM = roundAbove(lengthM / 8);
        for (double atM = 0; atM <= lengthM + 1e-9; atM += stepM) {
            svg.stroke(x(atM), topPx + heightPx, x(atM), topPx + heightPx + 4, Svg.Pen.AXIS);
            svg.label(x(atM), topPx + heightPx + 17, "middle", 11, plain(atM));
        }
        svg.label(leftPx, topPx - 6, "start", 12, name);
    }

    private double x(double atM) {
        return leftPx + widthPx * atM / lengthM;
    }

    private double y(double quantity, double top) {
        return topPx + heightPx * (1 - quantity / top);
    }

    private static String plain(double value) {
        return value == Math.rint(value)
                ? String.format(Locale.ROOT, "%.0f", value)
                : String.format(Locale.ROOT, "%.2g", value);
    }

    /** Returns the smallest of 1, 2, 5 times a power of ten that is not below the value. */
    static double roundAbove(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        for (double factor : new double[] {1, 2, 5}) {
            if (factor * power >= value * (1 - 1e-9)) {
                return factor * power;
            }
        }
        return 10 * power;
    }

    /** Returns the largest of 1, 2, 5 times a power of ten that is not above the value. */
    static double roundBelow(double value) {
        double power = Math.pow(10, Math.floor(Math.log10(value)));
        for (double factor : new double[] {5, 2}) {
            if (factor * power <= value * (1 + 1e-9)) {
                return factor * power;
            }
        }
        return power;
    }
}
