package org.spanroom.pipeline;

import java.util.List;
import org.spanroom.program.YearSolver;
import org.spanroom.program.annual.AnnualResult;
import org.spanroom.program.annual.AnnualSettings;
import org.spanroom.program.annual.AnnualSolver;
import org.spanroom.program.annual.YearProblem;
import org.spanroom.program.design.Spread;

/** Solves the year problems of a program, each with the work that fits its purpose. */
final class YearSolving implements YearSolver {
    /** Of the full work: for what-ifs. */
    private static final int QUICK_DIVISOR = 8;

    private static final int REPAIR_DIVISOR = 2;

    private final long seed;
    private final boolean hasLibrary;
    private final Spread spread;
    private final YearWords words;

    YearSolving(long seed, boolean hasLibrary, int threads, YearWords words) {
        this.words = words;
        this.seed = seed;
        this.hasLibrary = hasLibrary;
        this.spread = Spreading.over(threads);
    }

    @Override
    public Solved solve(YearProblem problem, Effort effort) {
        AnnualSettings full = AnnualSettings.of(problem).withSeed(seed);
        AnnualSettings settings = switch (effort) {
            case FULL -> full;
            case REPAIR -> full.quick(REPAIR_DIVISOR);
            case QUICK -> full.quick(QUICK_DIVISOR);
        };
        AnnualResult result = AnnualSolver.solve(problem, settings, hasLibrary, spread, () -> false);
        List<String> shortfalls = result.shortages().stream().map(words::of).toList();
        return new Solved(result.plan(), result.bound(), shortfalls, result.isWhole());
    }
}
