package org.spanroom.program.bound;

import java.io.*;
import java.nio.file.*;
import java.util.*;
import org.spanroom.program.design.*;

final class Trial {
    static DesignProblem served; static double cost; static List<List<Integer>> ways;
    static void load(int spans, int conn, long seed, int iterations) throws Exception {
        DesignProblem problem = InventedCity.drawn(spans, conn, seed);
        Path file = Path.of("/tmp/trial-" + spans + "-" + conn + "-" + seed + ".ways");
        if (!Files.exists(file)) {
            long start = System.nanoTime();
            SearchSettings s = SearchSettings.forDemands(conn);
            if (iterations > 0) s = s.withIterations(iterations);
            Design design = new DesignSearch(problem).run(s, ManyThreads.SPREAD, () -> false).design();
            System.out.printf("search %.1f s%n", (System.nanoTime() - start) / 1e9);
            double missed = 0;
            for (int d = 0; d < conn; d++) {
                missed += design.ways().get(d).isEmpty() && !problem.demands().get(d).isMust() ? problem.demands().get(d).prize() : 0;
            }
            var lines = new ArrayList<String>();
            lines.add("" + (design.workMoney() + missed));
            for (var way : design.ways()) lines.add(way.toString().replaceAll("[\\[\\] ]", ""));
            Files.write(file, lines);
        }
        List<String> lines = Files.readAllLines(file);
        cost = Double.parseDouble(lines.get(0));
        var demands = new ArrayList<Demand>();
        ways = new ArrayList<>();
        for (int d = 0; d < conn; d++) {
            String l = lines.get(d + 1);
            if (!l.isEmpty() || !problem.demands().get(d).isMust()) {
                demands.add(problem.demands().get(d));
                ways.add(l.isEmpty() ? List.of() : Arrays.stream(l.split(",")).map(Integer::valueOf).toList());
            }
        }
        served = new DesignProblem(problem.places(), problem.pieces(), demands);
    }

    static void sample() {
        var counts = new java.util.concurrent.ConcurrentHashMap<String, Integer>();
        var t = new Thread(() -> {
            try {
                while (true) {
                    Thread.sleep(5);
                    for (var e : Thread.getAllStackTraces().values()) {
                        for (var f : e) {
                            if (f.getClassName().startsWith("org.spanroom") && !f.getClassName().contains("Trial")) {
                                counts.merge(f.getClassName().replaceAll(".*\\.", "") + "." + f.getMethodName(), 1, Integer::sum);
                                break;
                            }
                        }
                    }
                }
            } catch (InterruptedException e) { }
        });
        t.setDaemon(true);
        t.start();
        Runtime.getRuntime().addShutdownHook(new Thread(() -> counts.entrySet().stream().sorted((x, y) -> y.getValue() - x.getValue()).limit(16).forEach(System.out::println)));
    }

    static double[] fair(List<RootedDemand> demands) {
        var passing = new TreeMap<Integer, Map<Integer, Integer>>();
        for (int d = 0; d < ways.size(); d++) for (int piece : ways.get(d)) passing.computeIfAbsent(piece, n -> new TreeMap<>()).put(d, served.demands().get(d).cables());
        double[] share = new double[ways.size()];
        passing.forEach((piece, cablesOf) -> {
            double money = new PieceCost(served.pieces().get(piece)).use(cablesOf).money();
            int sum = cablesOf.values().stream().mapToInt(c -> c).sum();
            cablesOf.forEach((d, c) -> share[d] += money * c / sum);
        });
        for (int d = 0; d < ways.size(); d++) if (ways.get(d).isEmpty()) share[d] = served.demands().get(d).prize();
        return demands.stream().mapToDouble(d -> share[d.number()]).toArray();
    }

    public static void main(String[] a) throws Exception {
        if (Boolean.getBoolean("sample")) sample();
        load(Integer.parseInt(a[0]), Integer.parseInt(a[1]), Long.parseLong(a[2]), Integer.getInteger("iterations", 0));
        ReducedNetwork reduced = Reduction.of(served);
        List<RootedDemand> demands = RootedDemand.of(reduced);
        List<Trunk> trunks = Absorption.of(reduced, demands, Integer.getInteger("ends", 3));
        System.out.printf("%d pieces, %d links, %d trunks, %d demands, %d groups, cost %.0f, ends %s%n", served.pieces().size(), reduced.links().size(), trunks.size(), demands.size(),
           demands.get(demands.size() - 1).group() + 1, cost, Arrays.toString(trunks.stream().mapToInt(t -> t.ends().size()).sorted().toArray()).replaceAll("(\\b\\d, )\\1+", "$1.."));
        var network = new TrunkNetwork(reduced, demands, trunks);
        var bound = new LagrangeBound(network, ManyThreads.SPREAD);
        long start = System.nanoTime();
        System.out.printf("%.1f s start %.0f%n", (System.nanoTime() - start) / 1e9, bound.evaluate());
        int[] n = {0};
        bound.run(cost, Integer.parseInt(a[3]), Double.parseDouble(System.getProperty("step", "1")), true, () -> {
            if (Integer.bitCount(n[0]++ + 1) == 1 || n[0] % 1000 == 0) System.out.printf("%d steps %.1f s gap %.2f %%%n", bound.iterations(), (System.nanoTime() - start) / 1e9, 100 * (1 - bound.bestMoney() / cost));
            return false;
        });
        System.out.printf("cpu %.1f s%n", java.lang.management.ManagementFactory.getPlatformMXBean(com.sun.management.OperatingSystemMXBean.class).getProcessCpuTime() / 1e9);
        long states = 0, sides = 0, act = 0, box = 0;
        for (int t = 0; t < trunks.size(); t++) {
            TrunkTable table = bound.tables()[t];
            sides += table.sides().size();
            box += table.box().size();
            for (int k = 0; k < table.sides().size(); k++) states += table.states(k).size();
        }
        for (IntList l : bound.prices().active()) act += l.size();
        System.out.printf("sides %d states %d box %d active %d%n", sides, states, box, act);
        System.out.printf("%d steps %.1f s gap %.2f %%%n", bound.iterations(), (System.nanoTime() - start) / 1e9, 100 * (1 - bound.bestMoney() / cost));
    }
}
