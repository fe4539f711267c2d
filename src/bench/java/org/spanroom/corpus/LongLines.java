package org.spanroom.corpus;

import java.lang.management.ManagementFactory;
import java.util.List;
import java.util.Locale;
import org.spanroom.bend.BendFinder;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.Line;

/** How long bends of very long lines take: the time must grow in proportion to the vertices. */
public final class LongLines {
    private static final double BORE_MM = 102.26;
    private static final int[] VERTICES = {250_000, 500_000, 1_000_000};

    private LongLines() {}

    /** Prints processor time by shape and number of vertices; arguments, if any: the largest number of vertices, and shapes. */
    public static void main(String[] args) {
        var finder = new BendFinder(ShippedConfig.get().bend());
        int most = args.length == 0 ? VERTICES[VERTICES.length - 1] : Integer.parseInt(args[0]);
        for (HostileLine shape : HostileLine.values()) {
            if (args.length > 1 && !List.of(args).contains(shape.name())) {
                continue;
            }
            for (int vertices : VERTICES) {
                int count = (int) ((long) vertices * most / VERTICES[VERTICES.length - 1]);
                measure(finder, shape, count);
            }
        }
    }

    private static void measure(BendFinder finder, HostileLine shape, int vertices) {
        Line line = shape.line(vertices);
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        int bends = finder.find(line, BORE_MM).list().size();
        double seconds = 1e-9 * (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before);
        System.out.printf(
                Locale.ROOT,
                "%-22s %,9d vertices: %6.2f s, %d bends%n",
                shape.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                vertices,
                seconds,
                bends);
    }
}
