package org.spanroom.program.annual;
import java.util.Arrays;
final class Probe {
    public static void main(String[] a) {
        YearProblem p = InventedTasks.drawn(Integer.parseInt(a[0]), 5, 1);
        var levels = new SetUpLevels(p);
        var acc = new YearAccount(p, levels);
        var b = new PriceBound(p, levels, new YearOptions(p, acc));
        System.out.println(p.tasks().size() + " tasks, levels " + levels.count());
        long t = System.nanoTime();
        var ps = new PriceSearch(p, levels, new YearOptions(p, acc), b);
        for (int i = 0; i < 4; i++) {
        ps.run(500, 1e-5, () -> false);
        System.out.printf("%d %.2f  %.1f s%n", ps.iterations(), b.bestValue(), (System.nanoTime() - t) / 1e9);
        }
        if (a.length == 1) return;
        var w = new WorkingPlan(p, acc.empty());
        // musts first year that fits
        for (int i = 0; i < p.tasks().size(); i++) if (p.tasks().get(i).isMust()) for (int y = 0; y < 5; y++) if (p.tasks().get(i).isPossibleIn(y) && w.account().fits(i, y)) { w.put(i, y); break; }
        var s = new TaskSearch(p, levels, new YearOptions(p, acc), acc.empty(), w.years(), b.bestPrices(), 1);
        s.fill();
        System.out.printf("fill %.2f  %.1f s%n", s.bestValue(), (System.nanoTime() - t) / 1e9);
        for (int n : new int[] {30_000, 300_000, 1_000_000}) {
            var q = new TaskSearch(p, levels, new YearOptions(p, acc), acc.empty(), s.best(), b.bestPrices(), 1);
            t = System.nanoTime();
            q.run(n, () -> false);
            System.out.printf("%d %.2f  %.1f s%n", n, q.bestValue(), (System.nanoTime() - t) / 1e9);
            w = new WorkingPlan(p, acc.empty()); w.set(q.best());
            System.out.println(YearPlanChecker.problems(p, w.plan()));
            System.out.printf("%.2f  %.1f s, gap %.3f %%%n", b.bestValue(), (System.nanoTime() - t) / 1e9, 100 * (1 - q.bestValue() / b.bestValue()));
            var r = b.reduced(q.bestValue());
            int[] c = new int[8]; for (int i = 0; i < p.tasks().size(); i++) c[r.count(i) + (r.is(i, -1) ? 1 : 0)]++;
            System.out.println("options " + Arrays.toString(c));
        }
    }
}
