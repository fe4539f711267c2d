package org.spanroom.corpus;

import java.lang.management.ManagementFactory;
import java.util.Locale;
import java.util.Random;
import org.spanroom.bend.BendFinder;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;

/** How long bends of very long lines take: the time must grow in proportion to the vertices. */
public final class LongLines {
    private static final double BORE_MM = 102.26;
    private static final double NOISE_M = 0.05;
    private static final double ARC_RADIUS_M = 50_000;
    private static final int[] VERTICES = {250_000, 500_000, 1_000_000};

    /** Lines that make a finder work hard, each in its own way. */
    private enum Shape {
        ZIGZAG,
        NOISY_STRAIGHT,
        SPIRAL,
        BACK_AND_FORTH,
        ONE_PLACE,

        /** Last, since it still takes minutes beyond half a turn: 500 000 vertices. */
        NOISY_ARC;

        Line line(int vertices) {
            var random = new Random(5);
            double[] xy = new double[2 * vertices];
            double alongM = 0;
            for (int vertex = 0; vertex < vertices; vertex++) {
                alongM += 0.1 + 0.9 * random.nextDouble();
                place(vertex, alongM, NOISE_M * random.nextGaussian(), xy);
            }
            return Line.ofXy(xy);
        }

        private void place(int vertex, double alongM, double offM, double[] xy) {
            double x = 0;
            double y = 0;
            switch (this) {
                case ZIGZAG -> {
                    x = vertex;
                    y = vertex % 2;
                }
                case NOISY_STRAIGHT -> {
                    x = alongM;
                    y = offM;
                }
                case NOISY_ARC -> {
                    x = (ARC_RADIUS_M + offM) * Math.sin(alongM / ARC_RADIUS_M);
                    y = (ARC_RADIUS_M + offM) * Math.cos(alongM / ARC_RADIUS_M);
                }
                case SPIRAL -> {
                    double turnRad = 2 * Math.sqrt(vertex);
                    x = 0.25 * turnRad * Math.cos(turnRad);
                    y = 0.25 * turnRad * Math.sin(turnRad);
                }
                case BACK_AND_FORTH -> x = 10 * (vertex % 2);
                default -> {
                    // all in one place
                }
            }
            xy[2 * vertex] = x;
            xy[2 * vertex + 1] = y;
        }
    }

    private LongLines() {}

    /** Prints processor time by shape and number of vertices. */
    public static void main(String[] args) {
        var finder = new BendFinder(ShippedConfig.get().bend());
        for (Shape shape : Shape.values()) {
            for (int vertices : VERTICES) {
                Line line = shape.line(vertices);
                long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
                int bends = finder.find(line, BORE_MM).list().size();
                double seconds = 1e-9 * (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before);
                System.out.printf(
                        Locale.ROOT,
                        "%-14s %,9d vertices: %6.2f s, %d bends%n",
                        shape.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                        vertices,
                        seconds,
                        bends);
            }
        }
    }
}
