package org.spanroom.program.bound;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.Spread;

/**
 * What no design of a problem can cost less than, whichever ways its demands take.
 *
 * <p>The larger one of two bounds: by prices ({@link LagrangeBound}) and cases ({@link Branching}), always; and by an integer program ({@link ProgramBound}), for small networks where
 * the native library is loaded. Infinite where a demand that must be served has no way on which it fits even alone; a problem that cannot be solved for
 * another reason has a finite bound. Amounts are lowered by what rounding can amount to.
 *
 * @param money the bound
 * @param pricesMoney the bound by prices and cases
 * @param programMoney the bound by an integer program; empty where there is none
 * @param steps how many steps were done on the prices
 * @param isWhole whether neither {@code stop} nor a limit of time ended the work; if one did, another run may find another bound
 */
public record DesignBound(double money, double pricesMoney, OptionalDouble programMoney, int steps, boolean isWhole) {
    /** Share of the way to the known cost that the first steps go. */
    static final double FIRST_STEP = 1.5;

    private static final double SETTLED_RATIO = 1e-7;

    /**
     * Calculates the bound.
     *
     * @param knownMoney total cost of a known design, with the prizes of what it does not serve, or infinite: it helps to find good prices, and leaves less to the integer program
     * @param hasLibrary whether the native library for integer programs is loaded
     * @param spread does work on several threads; the bound does not depend on how
     * @param stop ends the steps before their number is reached once it is true
     */
    public static DesignBound of(
            DesignProblem problem,
            BoundSettings settings,
            double knownMoney,
            boolean hasLibrary,
            Spread spread,
            BooleanSupplier stop) {
        ReducedNetwork reduced = Reduction.of(problem);
        List<RootedDemand> demands = RootedDemand.of(reduced);
        List<Trunk> trunks = Absorption.of(reduced, demands, settings.endsOfTrunk());
        var network = new TrunkNetwork(reduced, demands, trunks);
        var bound = new LagrangeBound(network, spread);
        boolean isWhole = bound.run(knownMoney, settings.steps(), FIRST_STEP, true, stop);
        double pricesMoney = bound.bestMoney();
        if (isWhole && isOpen(pricesMoney, knownMoney) && settings.cases() > 0) {
            var branching = new Branching(network, bound, knownMoney);
            isWhole = branching.run(settings.cases(), spread, stop);
            pricesMoney = branching.money();
        }
        ProgramBound.Proven proven = hasLibrary && settings.isSmall(reduced) && isOpen(pricesMoney, knownMoney)
                ? program(reduced, demands, settings, knownMoney, spread)
                : new ProgramBound.Proven(OptionalDouble.empty(), true);
        return new DesignBound(
                Math.max(pricesMoney, proven.money().orElse(0)),
                pricesMoney,
                proven.money(),
                bound.iterations(),
                isWhole && proven.isWhole());
    }

    /** Whether a bound can still rise: at the cost of a known design, but for rounding, it cannot. */
    static boolean isOpen(double money, double knownMoney) {
        return Double.isFinite(money) && money < knownMoney * (1 - SETTLED_RATIO);
    }

    /** Where the cost of a design is known, the program looks for a cheaper one only, so what it proves is at most that cost. */
    static ProgramBound.Proven program(
            ReducedNetwork reduced,
            List<RootedDemand> demands,
            BoundSettings settings,
            double knownMoney,
            Spread spread) {
        var network = new TrunkNetwork(reduced, demands, Absorption.of(reduced, demands, 0));
        var prices = new LagrangeBound(network, spread);
        prices.start();
        prices.run(knownMoney, settings.steps(), FIRST_STEP, true, () -> false);
        boolean[][] far = new FarSlots(network).find(prices.prices().best(), prices.bestMoney(), knownMoney);
        return ProgramBound.of(reduced, demands, far, settings.nodes(), settings.mostSecondsOfProgram())
                .upTo(knownMoney);
    }
}
