package org.spanroom.program;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import org.jgrapht.GraphPath;
import org.jgrapht.alg.shortestpath.DijkstraShortestPath;
import org.jgrapht.graph.AsWeightedGraph;
import org.jgrapht.graph.WeightedMultigraph;
import org.jspecify.annotations.Nullable;
import org.spanroom.model.program.DuctNetwork;
import org.spanroom.model.program.PathObjective;
import org.spanroom.model.program.SectionOffer;
import org.spanroom.model.program.Way;
import org.spanroom.model.program.WayStep;

/**
 * Finds ways for cables that go together.
 *
 * <p>The way of least cost, and of least length, is a shortest path (Dijkstra's method, by JGraphT). That of the fewest days is the
 * cheapest one below the smallest number of days that still joins the vaults. The chance of a way is no sum over its sections, so that
 * the best for it, and for weighted sums, is the best of the ways considered: the shortest ones for each figure, and their alternatives.
 */
public final class WayFinder {
    /** Breaks ties between ways of one cost by their length: no two costs that differ are as close as this, times a length. */
    private static final double TIE_MONEY_PER_M = 1e-6;

    private static final int ROUNDS_FOR_EACH = 6;
    private static final double MOST_SHARED_RATIO = 0.5;

    private final DuctNetwork network;
    private final int cables;
    private final @Nullable WayStep[] steps;
    private final WeightedMultigraph<Integer, Integer> graph = new WeightedMultigraph<>(Integer.class);

    /** Prepares for ways of so many cables. */
    public WayFinder(DuctNetwork network, int cables) {
        this.network = network;
        this.cables = cables;
        this.steps = new WayStep[network.sections().size()];
        for (int vault = 0; vault < network.vaults().size(); vault++) {
            graph.addVertex(vault);
        }
        for (int number = 0; number < steps.length; number++) {
            SectionOffer section = network.sections().get(number);
            Optional<WayStep> step = SectionSteps.find(section, cables, SectionSteps.RecoveryFilter.ALL);
            if (step.isPresent()) {
                steps[number] = step.get();
                graph.addEdge(section.from(), section.to(), number);
            }
        }
    }

    /** Returns how the cables get through a section; empty where nothing takes them. */
    public Optional<WayStep> findStep(int section) {
        return Optional.ofNullable(steps[section]);
    }

    /**
     * Finds ways from one vault to another, the best first; none where nothing joins them for so many cables.
     *
     * @param most how many ways are wanted; each shares at most half of its length with every better one
     */
    public List<Way> find(int from, int to, PathObjective objective, int most) {
        if (from == to) {
            throw new IllegalArgumentException("the way would go from a vault to itself");
        }
        List<Way> considered = candidates(from, to, objective, most);
        considered.sort(Comparator.comparingDouble((Way way) -> value(way, objective))
                .thenComparingDouble(way -> way.costs().money())
                .thenComparingDouble(Way::lengthM));
        var chosen = new ArrayList<Way>();
        for (Way way : considered) {
            if (chosen.size() < most
                    && chosen.stream().allMatch(better -> way.sharedM(better) <= MOST_SHARED_RATIO * way.lengthM())) {
                chosen.add(way);
            }
        }
        return chosen;
    }

    /** Finds the cheapest way; among ways of one cost the shortest. */
    public Optional<Way> findCheapest(int from, int to) {
        return found(from, shortest(from, to, this::tiedMoney));
    }

    /** Returns what the objective makes of a way; the smaller, the better. */
    public double value(Way way, PathObjective objective) {
        double missingPercent = 100 * (1 - way.feasibleRatio(network.samples()).orElse(1));
        double days = network.onDate().until(way.earliest(network.onDate()), ChronoUnit.DAYS);
        return objective.costWeight() * way.costs().money()
                + objective.lengthWeightPerM() * way.lengthM()
                + objective.daysWeight() * days
                + objective.chanceWeight() * missingPercent;
    }

    private List<Way> candidates(int from, int to, PathObjective objective, int most) {
        var ways = new ArrayList<Way>();
        var weights = new ArrayList<IntToDoubleFunction>();
        if (objective.costWeight() > 0 || objective.daysWeight() > 0 || objective.chanceWeight() > 0) {
            weights.add(this::tiedMoney);
        }
        if (objective.lengthWeightPerM() > 0) {
            weights.add(number -> section(number).lengthM() + TIE_MONEY_PER_M * money(number));
        }
        if (objective.chanceWeight() > 0) {
            weights.add(number -> 1000 * risk(number) + 1e-6 * tiedMoney(number));
        }
        weights.add(number -> objective.costWeight() * tiedMoney(number)
                + objective.lengthWeightPerM() * section(number).lengthM()
                + objective.daysWeight() * days(number)
                + objective.chanceWeight() * 100 * risk(number)
                + TIE_MONEY_PER_M * tiedMoney(number));
        for (IntToDoubleFunction weight : weights) {
            alternatives(from, to, weight, most, ways);
        }
        if (objective.daysWeight() > 0) {
            fewestDays(from, to).ifPresent(ways::add);
        }
        return ways;
    }

    /** The shortest way, then the shortest while sections that were passed weigh more, round after round. */
    private void alternatives(int from, int to, IntToDoubleFunction weight, int most, List<Way> ways) {
        int[] passed = new int[steps.length];
        double perM = 0;
        for (int round = 0; round <= ROUNDS_FOR_EACH * (most - 1); round++) {
            double added = perM;
            List<Integer> way = shortest(
                    from,
                    to,
                    number -> passed[number] == 0
                            ? weight.applyAsDouble(number)
                            : (weight.applyAsDouble(number)
                                            + added * section(number).lengthM())
                                    * (1 + passed[number]));
            if (way.isEmpty()) {
                return;
            }
            ways.add(way(from, way));
            double total = 0;
            double lengthM = 0;
            for (int number : way) {
                passed[number]++;
                total += weight.applyAsDouble(number);
                lengthM += section(number).lengthM();
            }
            perM = Math.max(perM, total / Math.max(1, lengthM));
        }
    }

    private Optional<Way> fewestDays(int from, int to) {
        var all = new TreeSet<Integer>();
        for (int number : graph.edgeSet()) {
            all.add(days(number));
        }
        int[] days = all.stream().mapToInt(Integer::intValue).toArray();
        int low = 0;
        int high = days.length - 1;
        Optional<Way> best = Optional.empty();
        while (low <= high) {
            int middle = (low + high) >>> 1;
            Optional<Way> way = within(from, to, days[middle]);
            if (way.isPresent()) {
                best = way;
                high = middle - 1;
            } else {
                low = middle + 1;
            }
        }
        return best;
    }

    private Optional<Way> within(int from, int to, int mostDays) {
        return found(
                from,
                shortest(from, to, number -> days(number) <= mostDays ? tiedMoney(number) : Double.POSITIVE_INFINITY));
    }

    /** Returns the numbers of the sections; none where nothing joins the vaults. */
    private List<Integer> shortest(int from, int to, IntToDoubleFunction weight) {
        var weighted = new AsWeightedGraph<>(graph, weight::applyAsDouble, false, false);
        GraphPath<Integer, Integer> path = new DijkstraShortestPath<>(weighted).getPath(from, to);
        return path == null || Double.isInfinite(path.getWeight()) ? List.of() : path.getEdgeList();
    }

    private Optional<Way> found(int from, List<Integer> sections) {
        return sections.isEmpty() ? Optional.empty() : Optional.of(way(from, sections));
    }

    private Way way(int from, List<Integer> sections) {
        var way = new ArrayList<WayStep>();
        int at = from;
        for (int number : sections) {
            WayStep step = step(number);
            boolean forward = step.section().from() == at;
            way.add(new WayStep(step.section(), forward, step.action(), step.duct(), step.newDuct()));
            at = step.section().other(at);
        }
        return new Way(cables, way);
    }

    private WayStep step(int number) {
        WayStep step = steps[number];
        if (step == null) {
            throw new IllegalStateException("section " + number + " takes no cables");
        }
        return step;
    }

    private SectionOffer section(int number) {
        return network.sections().get(number);
    }

    private double money(int number) {
        return step(number).costs().money();
    }

    private double tiedMoney(int number) {
        return money(number) + TIE_MONEY_PER_M * section(number).lengthM();
    }

    private int days(int number) {
        return (int) network.onDate().until(step(number).earliest(network.onDate()), ChronoUnit.DAYS);
    }

    /** Returns what a section adds to the improbability of a way that has only it: the negative logarithm of its chance. */
    private double risk(int number) {
        if (network.samples() == 0) {
            return 0;
        }
        double ratio = new Way(cables, List.of(step(number)))
                .feasibleRatio(network.samples())
                .orElse(1);
        return -Math.log(Math.max(ratio, 0.5 / network.samples()));
    }
}
