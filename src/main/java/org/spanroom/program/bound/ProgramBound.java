package org.spanroom.program.bound;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPSolverParameters;
import com.google.ortools.linearsolver.MPVariable;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A lower bound by an integer program: the flow of each demand over slots, and a level of cost for each link.
 *
 * <p>The native library must be loaded. For small networks only.
 */
final class ProgramBound {
    /** Share of a bound that the solver's tolerances can amount to. */
    private static final double TOLERANCE_RATIO = 1e-6;

    private final ReducedNetwork network;
    private final List<RootedDemand> demands;
    private final MPSolver solver;
    private final MPObjective objective;
    private final MPVariable[][] passes;
    private final int groups;

    private ProgramBound(ReducedNetwork network, List<RootedDemand> demands, MPSolver solver) {
        this.network = network;
        this.demands = demands;
        this.solver = solver;
        objective = solver.objective();
        objective.setMinimization();
        passes = new MPVariable[demands.size()][2 * network.links().size()];
        groups = demands.isEmpty() ? 0 : demands.get(demands.size() - 1).group() + 1;
    }

    /**
     * What was proven.
     *
     * @param money the bound; empty where the solver proves none
     * @param isWhole whether it did not end by the limit of time
     */
    record Proven(OptionalDouble money, boolean isWhole) {
        private static final Proven NOTHING = new Proven(OptionalDouble.empty(), true);

        /** Returns the same with a bound that is at most some amount. */
        Proven upTo(double mostMoney) {
            return money.isEmpty()
                    ? this
                    : new Proven(OptionalDouble.of(Math.min(mostMoney, money.getAsDouble())), isWhole);
        }
    }

    /**
     * Proves a bound.
     *
     * @param far for each demand and slot whether it does not pass there
     * @param nodes most nodes of the search tree: the same limit gives the same bound on any machine
     * @param mostSeconds a limit of time in addition, or 0
     */
    static Proven of(
            ReducedNetwork network, List<RootedDemand> demands, boolean[][] far, long nodes, double mostSeconds) {
        MPSolver solver = MPSolver.createSolver("SCIP");
        if (solver == null || demands.isEmpty()) {
            return Proven.NOTHING;
        }
        try {
            solver.suppressOutput();
            solver.setSolverSpecificParametersAsString("limits/nodes = " + nodes);
            if (mostSeconds > 0) {
                solver.setTimeLimit((long) (1000 * mostSeconds));
            }
            var program = new ProgramBound(network, demands, solver);
            program.build(far);
            return program.solve(nodes);
        } finally {
            solver.delete();
        }
    }

    private Proven solve(long nodes) {
        var parameters = new MPSolverParameters();
        parameters.setDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, 0);
        MPSolver.ResultStatus status = solver.solve(parameters);
        parameters.delete();
        boolean isWhole = status == MPSolver.ResultStatus.OPTIMAL
                || status == MPSolver.ResultStatus.INFEASIBLE
                || solver.nodes() >= nodes;
        if (status != MPSolver.ResultStatus.OPTIMAL && status != MPSolver.ResultStatus.FEASIBLE) {
            return new Proven(OptionalDouble.empty(), isWhole);
        }
        double money = objective.bestBound();
        boolean isBound = Double.isFinite(money) && money > -1e15;
        double lowered = Math.max(0, money - TOLERANCE_RATIO * (1 + Math.abs(money)));
        return new Proven(isBound ? OptionalDouble.of(lowered) : OptionalDouble.empty(), isWhole);
    }

    private void build(boolean[][] far) {
        for (int d = 0; d < demands.size(); d++) {
            for (int slot = 0; slot < passes[d].length; slot++) {
                passes[d][slot] = solver.makeIntVar(0, far[d][slot] ? 0 : 1, "");
            }
            addFlow(d);
        }
        int[] demandsOfSize = new int[network.sizes().length];
        demands.forEach(demand -> demandsOfSize[demand.size()]++);
        for (int link = 0; link < network.links().size(); link++) {
            addLink(link, LinkLevels.of(network.links().get(link).cost(), network.sizes(), demandsOfSize));
        }
    }

    /** What leaves a place is what enters it, but for the root and the target of a demand that is served. */
    private void addFlow(int d) {
        RootedDemand demand = demands.get(d);
        var balances = new MPConstraint[network.places()];
        for (int slot = 0; slot < passes[d].length; slot++) {
            Link link = network.links().get(slot >> 1);
            int tail = (slot & 1) == 0 ? link.from() : link.to();
            balance(balances, tail).setCoefficient(passes[d][slot], 1);
            balance(balances, link.other(tail)).setCoefficient(passes[d][slot], -1);
        }
        balance(balances, demand.root()).setBounds(1, 1);
        balance(balances, demand.target()).setBounds(-1, -1);
        if (Double.isFinite(demand.prize())) {
            MPVariable unserved = solver.makeBoolVar("");
            objective.setCoefficient(unserved, demand.prize());
            balance(balances, demand.root()).setCoefficient(unserved, 1);
            balance(balances, demand.target()).setCoefficient(unserved, -1);
        }
    }

    private MPConstraint balance(MPConstraint[] balances, int place) {
        if (balances[place] == null) {
            balances[place] = solver.makeConstraint(0, 0);
        }
        return balances[place];
    }

    private void addLink(int link, LinkLevels levels) {
        LinkLevels.Level free = levels.levels().get(0);
        var chosen = new MPVariable[levels.levels().size()];
        MPConstraint oneLevel = solver.makeConstraint(-MPSolver.infinity(), 1);
        for (int l = 1; l < chosen.length; l++) {
            chosen[l] = solver.makeBoolVar("");
            objective.setCoefficient(chosen[l], levels.levels().get(l).money());
            oneLevel.setCoefficient(chosen[l], 1);
        }
        int[][] weights = LinkLevels.weights(network.sizes());
        for (int w = 0; w < weights.length; w++) {
            MPConstraint limit = solver.makeConstraint(-MPSolver.infinity(), free.most()[w]);
            for (int d = 0; d < demands.size(); d++) {
                int weight = weights[w][demands.get(d).size()];
                limit.setCoefficient(passes[d][2 * link], weight);
                limit.setCoefficient(passes[d][2 * link + 1], weight);
            }
            for (int l = 1; l < chosen.length; l++) {
                limit.setCoefficient(
                        chosen[l], free.most()[w] - levels.levels().get(l).most()[w]);
            }
        }
        addDirections(link, levels, chosen);
    }

    /** A group passes in one direction, and only where some level bears a demand of its size. */
    private void addDirections(int link, LinkLevels levels, MPVariable[] chosen) {
        var directions = new MPVariable[groups][2];
        for (int d = 0; d < demands.size(); d++) {
            RootedDemand demand = demands.get(d);
            MPVariable[] pair = directions[demand.group()];
            if (pair[0] == null) {
                pair[0] = solver.makeNumVar(0, 1, "");
                pair[1] = solver.makeNumVar(0, 1, "");
                boolean isFree = levels.levels().get(0).most()[demand.size() + 1] > 0;
                MPConstraint one = solver.makeConstraint(-MPSolver.infinity(), isFree ? 1 : 0);
                one.setCoefficient(pair[0], 1);
                one.setCoefficient(pair[1], 1);
                for (int l = 1; l < chosen.length && !isFree; l++) {
                    if (levels.levels().get(l).most()[demand.size() + 1] > 0) {
                        one.setCoefficient(chosen[l], -1);
                    }
                }
            }
            for (int direction = 0; direction < 2; direction++) {
                MPConstraint follows = solver.makeConstraint(-MPSolver.infinity(), 0);
                follows.setCoefficient(passes[d][2 * link + direction], 1);
                follows.setCoefficient(pair[direction], -1);
            }
        }
    }
}
