package org.spanroom.permit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ForkJoinPool;
import org.spanroom.model.network.Span;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.Zone;

/**
 * Prints how long it takes to find the zones of many spans: {@code PermitTiming SPANS ZONES THREADS}, 100 000, 2 000 and all
 * processors by default. Not a test; run it from the test classes.
 *
 * <p>A city of 15 km by 15 km: spans of 4 to 12 steps anywhere in it; nine zones in ten are streets and lots of up to 300 m with
 * some twenty vertices, one in ten is an area of up to 2 km with 2 000.
 */
final class PermitTiming {
    private static final double SIDE_M = 15_000;
    private static final List<String> KINDS = List.of("cut_ban", "night_only", "heritage", "water", "school");

    private PermitTiming() {}

    /** Prints three rounds. Arguments: number of spans, of zones, of threads. */
    public static void main(String[] args) throws InterruptedException, ExecutionException {
        int spanCount = args.length > 0 ? Integer.parseInt(args[0]) : 100_000;
        int zoneCount = args.length > 1 ? Integer.parseInt(args[1]) : 2_000;
        int threads = args.length > 2
                ? Integer.parseInt(args[2])
                : Runtime.getRuntime().availableProcessors();
        var random = new Random(1);
        var spans = new ArrayList<Span>();
        for (int i = 0; i < spanCount; i++) {
            spans.add(GridMap.span(shifted(random, PermitLawsTest.way(random))));
        }
        List<Zone> zones = zones(random, zoneCount);
        var pool = new ForkJoinPool(threads);
        for (int round = 0; round < 3; round++) {
            long start = System.nanoTime();
            double startCpuS = cpuS();
            var assessor = GridMap.assessor(zones, GridMap.settings("", false, 0.5, 0.5));
            List<Permits> permits = pool.submit(
                            () -> spans.parallelStream().map(assessor::assess).toList())
                    .get();
            System.out.printf(
                    Locale.ROOT,
                    "%d spans by %d zones, %d threads: %.2f s, %.2f s of processor; %d touches, %.0f m%n",
                    spanCount,
                    zoneCount,
                    threads,
                    (System.nanoTime() - start) / 1e9,
                    cpuS() - startCpuS,
                    permits.stream().mapToInt(one -> one.touches().size()).sum(),
                    permits.stream().mapToDouble(Permits::lengthM).sum());
        }
        pool.shutdown();
    }

    private static double cpuS() {
        return ProcessHandle.current()
                .info()
                .totalCpuDuration()
                .map(spent -> spent.toNanos() / 1e9)
                .orElse(Double.NaN);
    }

    private static List<Zone> zones(Random random, int count) {
        var zones = new ArrayList<Zone>();
        for (int i = 0; i < count; i++) {
            double x = random.nextDouble() * SIDE_M;
            double y = random.nextDouble() * SIDE_M;
            boolean large = i % 10 == 0;
            double[] ring = large
                    ? circle(random, x, y)
                    : PermitLawsTest.star(random, x, y, PermitLawsTest.between(random, 20, 300), 1);
            zones.add(GridMap.zone("Z" + i, KINDS.get(i % KINDS.size()), ring));
        }
        return zones;
    }

    private static double[] circle(Random random, double x, double y) {
        double[] ring = new double[2 * 2_000];
        double sizeM = PermitLawsTest.between(random, 500, 2_000);
        for (int i = 0; i < ring.length; i += 2) {
            double angle = Math.PI * 2 * i / ring.length;
            double radiusM = sizeM * (1 + 0.01 * random.nextGaussian());
            ring[i] = x + radiusM * Math.cos(angle);
            ring[i + 1] = y + radiusM * Math.sin(angle);
        }
        return ring;
    }

    private static double[] shifted(Random random, double[] xy) {
        double x = random.nextDouble() * SIDE_M;
        double y = random.nextDouble() * SIDE_M;
        for (int i = 0; i < xy.length; i += 2) {
            xy[i] += x;
            xy[i + 1] += y;
        }
        return xy;
    }
}
