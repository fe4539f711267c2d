package org.spanroom.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.spanroom.config.ShippedConfig;
import org.spanroom.finding.FindingLog;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;

/**
 * Prints how long cutting takes on a street grid: {@code NetworkTiming ROUTES THREADS}, a million and all processors by
 * default. Not a test; run it from the test classes with {@code -Xmx6g}.
 *
 * <p>Each route follows a street over three blocks with 13 vertices; every crossing has a vault; a tenth of the routes is
 * drawn in two pieces that meet where no vault is.
 */
final class NetworkTiming {
    private static final double BLOCK_M = 140;
    private static final double LON_DEG = -33;
    private static final double LAT_DEG = 38;
    private static final int VERTICES = 13;

    private final Random random = new Random(1);
    private final int side;
    private final double perLonDeg = GroundStep.eastMPerDeg(LAT_DEG);
    private final double perLatDeg = GroundStep.northMPerDeg(LAT_DEG);
    private final List<Route> routes = new ArrayList<>();
    private final List<Vault> vaults = new ArrayList<>();

    private NetworkTiming(int routeCount) {
        side = (int) Math.ceil(Math.sqrt(routeCount * 0.6));
        for (int i = 0; i < side * side; i++) {
            int row = i / side;
            double x = (i - row * side) * BLOCK_M + random.nextGaussian() * 0.2;
            double y = row * BLOCK_M + random.nextGaussian() * 0.2;
            vaults.add(new Vault(i, "V" + i, lon(x), lat(y), List.of(), OptionalDouble.empty(), ""));
        }
        Duct duct = Sketch.duct("any", "HDPE", false);
        while (routes.size() < routeCount) {
            draw(duct);
        }
    }

    private double lon(double x) {
        return LON_DEG + x / perLonDeg;
    }

    private double lat(double y) {
        return LAT_DEG + y / perLatDeg;
    }

    private void draw(Duct duct) {
        boolean east = random.nextBoolean();
        double x = random.nextInt(side - 3) * BLOCK_M;
        double y = random.nextInt(side - 3) * BLOCK_M;
        double[] lonLat = new double[2 * VERTICES];
        for (int i = 0; i < VERTICES; i++) {
            double alongM = 3 * BLOCK_M * i / (VERTICES - 1);
            double asideM = i % 4 == 0 ? 0 : random.nextGaussian() * 0.3;
            lonLat[2 * i] = lon(x + (east ? alongM : asideM));
            lonLat[2 * i + 1] = lat(y + (east ? asideM : alongM));
        }
        if (random.nextInt(10) > 0) {
            add(duct, lonLat);
            return;
        }
        int split = 2 * 6;
        add(duct, Arrays.copyOfRange(lonLat, 0, split + 2));
        add(duct, Arrays.copyOfRange(lonLat, split, lonLat.length));
    }

    private void add(Duct template, double[] lonLat) {
        String id = "D" + routes.size();
        Duct duct = new Duct(
                id,
                "",
                template.boreShape(),
                100,
                "",
                "HDPE",
                false,
                template.contents(),
                false,
                template.condition(),
                "",
                "",
                template.installedYear(),
                lonLat.length == 2 * VERTICES ? template.assumed() : Set.of(Term.DUCT));
        Line line = Line.wrap(lonLat, false);
        routes.add(new Route(
                routes.size(), id, duct, line, OptionalDouble.empty(), Optional.empty(), Optional.empty(), ""));
    }

    private static double cpuS() {
        return ProcessHandle.current()
                .info()
                .totalCpuDuration()
                .map(spent -> spent.toNanos() / 1e9)
                .orElse(Double.NaN);
    }

    /** Prints three rounds. Arguments: number of routes, number of threads. */
    public static void main(String[] args) {
        int routeCount = args.length > 0 ? Integer.parseInt(args[0]) : 1_000_000;
        int threads = args.length > 1
                ? Integer.parseInt(args[1])
                : Runtime.getRuntime().availableProcessors();
        var city = new NetworkTiming(routeCount);
        System.out.printf("%d routes, %d vaults, %d threads%n", city.routes.size(), city.vaults.size(), threads);
        for (int round = 0; round < 3; round++) {
            var log = new FindingLog();
            long start = System.nanoTime();
            double startCpuS = cpuS();
            Network network = new SpanCutter(ShippedConfig.get().network(), threads).cut(city.routes, city.vaults, log);
            System.out.printf(
                    "%.2f s, %.2f s of processor: %d spans, %.0f m of %.0f m, %s%n",
                    (System.nanoTime() - start) / 1e9,
                    cpuS() - startCpuS,
                    network.spans().size(),
                    network.spanLengthM(),
                    network.routeLengthM(),
                    log.countByCode());
        }
    }
}
