package org.spanroom.program.bound;

import org.spanroom.pipeline.NativeSolver;
import org.spanroom.program.design.*;

final class TrialScip {
    public static void main(String[] a) throws Exception {
        Trial.load(Integer.parseInt(a[0]), Integer.parseInt(a[1]), Long.parseLong(a[2]), 0);
        System.out.println(NativeSolver.load());
        ReducedNetwork reduced = Reduction.of(Trial.served);
        long start = System.nanoTime();
        var p = DesignBound.program(reduced, RootedDemand.of(reduced), new BoundSettings(1000, 3, 500, Long.parseLong(a[3]), 0), Trial.cost, ManyThreads.SPREAD);
        System.out.printf("%d links %.1f s %s gap %.2f%n", reduced.links().size(), (System.nanoTime() - start) / 1e9, p, 100 * (1 - p.money().orElse(0) / Trial.cost));
    }
}
