package org.spanroom.program;

import java.util.List;
import java.util.Optional;
import org.spanroom.program.annual.YearPlan;
import org.spanroom.program.annual.YearProblem;

/** Solves year problems: the planner needs nothing else of a solver. */
@FunctionalInterface
public interface YearSolver {
    /** How much work to put into a problem. */
    enum Effort {
        /** The program itself: plan and bound. */
        FULL,
        /** The same problem with tighter limits, to repair a plan. */
        REPAIR,
        /** One of many what-ifs: a plan only. */
        QUICK
    }

    /**
     * What was found.
     *
     * @param plan the best plan; empty where none was found that holds the musts
     * @param boundValue what no plan can be worth more than; infinite where none was calculated
     * @param shortfalls why there is no plan, or which musts are not served, a line each
     * @param isWhole whether no limit of time ended the work
     */
    record Solved(Optional<YearPlan> plan, double boundValue, List<String> shortfalls, boolean isWhole) {
        public Solved {
            shortfalls = List.copyOf(shortfalls);
        }
    }

    Solved solve(YearProblem problem, Effort effort);
}
