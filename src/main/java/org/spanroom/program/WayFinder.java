package org.spanroom.program;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import org.jgrapht.Graph;
import org.jgrapht.GraphPath;
import org.jgrapht.alg.interfaces.ShortestPathAlgorithm.SingleSourcePaths;
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
 * <p>Where several ducts of a section could be recovered, each that some objective may prefer comes into question. The way of least cost,
 * of least length, and of the least weighted sum of both is a shortest path (Dijkstra's method, by JGraphT). The days of a way are those
 * of its last step: the best way is the best of the shortest ones within each number of days. The chance of a way is no sum over its
 * sections, so that the best for it, and for weighted sums with it, is the best of the ways considered: the shortest ones for each
 * figure, and their alternatives.
 */
public final class WayFinder {
    /** Breaks ties between ways of one cost by their length, and the other way around: less than a cent for a million meters. */
    private static final double TIE = 1e-9;

    private static final int ROUNDS_FOR_EACH = 6;
    private static final int MOST_ROUNDS = 120;
    private static final double MOST_SHARED_RATIO = 0.5;

    private final DuctNetwork network;
    private final int cables;
    /** The edges of the graph: several for a section where several of its ducts could be recovered. */
    private final List<Option> options = new ArrayList<>();

    private final WeightedMultigraph<Integer, Integer> graph = new WeightedMultigraph<>(Integer.class);

    /** Prepares for ways of so many cables. */
    public WayFinder(DuctNetwork network, int cables) {
        this.network = network;
        this.cables = cables;
        for (int vault = 0; vault < network.vaults().size(); vault++) {
            graph.addVertex(vault);
        }
        for (int number = 0; number < network.sections().size(); number++) {
            SectionOffer section = network.sections().get(number);
            for (WayStep step : SectionSteps.options(section, cables)) {
                graph.addEdge(section.from(), section.to(), options.size());
                options.add(new Option(number, step));
            }
        }
    }

    /** A section and one of the ways to get through it. */
    private record Option(int section, WayStep step) {}

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

    /**
     * Finds the cheapest way to each of several vaults, the same as one by one, in one pass over the network.
     *
     * @return in the order of the vaults; empty where nothing joins them
     */
    public List<Optional<Way>> findCheapest(int from, List<Integer> to) {
        SingleSourcePaths<Integer, Integer> paths =
                new DijkstraShortestPath<>(weighted(this::tiedMoney)).getPaths(from);
        return to.stream()
                .map(vault -> found(from, edges(paths.getPath(vault))))
                .toList();
    }

    /** Returns what the objective makes of a way; the smaller, the better. */
    public double value(Way way, PathObjective objective) {
        // What was not simulated is not relied upon; without a simulation no way is better than another.
        double missingPercent = network.samples() == 0
                ? 0
                : 100 * (1 - way.feasibleRatio(network.samples()).orElse(0));
        double days = network.onDate().until(way.earliest(network.onDate()), ChronoUnit.DAYS);
        return objective.weightPerMoney() * way.costs().money()
                + objective.weightPerM() * way.lengthM()
                + objective.weightPerDays() * days
                + objective.weightPerPercent() * missingPercent;
    }

    private List<Way> candidates(int from, int to, PathObjective objective, int most) {
        var ways = new ArrayList<Way>();
        var weights = new ArrayList<IntToDoubleFunction>();
        if (objective.weightPerMoney() > 0 || objective.weightPerDays() > 0 || objective.weightPerPercent() > 0) {
            weights.add(this::tiedMoney);
        }
        if (objective.weightPerM() > 0 || objective.weightPerPercent() > 0) {
            weights.add(this::tiedLengthM);
        }
        if (objective.weightPerPercent() > 0) {
            weights.add(number -> 1000 * risk(number) + 1e-6 * tiedMoney(number));
        }
        weights.add(number -> sum(number, objective)
                + objective.weightPerDays() * days(number)
                + objective.weightPerPercent() * 100 * risk(number));
        for (IntToDoubleFunction weight : weights) {
            alternatives(from, to, weight, most, ways);
        }
        if (objective.weightPerDays() > 0) {
            withinDays(from, to, objective, ways);
        }
        return ways;
    }

    /** Returns the part of an objective that is a sum over sections; ties are broken by money and length. */
    private double sum(int number, PathObjective objective) {
        return objective.weightPerMoney() * money(number)
                + objective.weightPerM() * section(number).lengthM()
                + TIE * (money(number) + section(number).lengthM());
    }

    /** The shortest way, then the shortest while sections that were passed weigh more, round after round. */
    private void alternatives(int from, int to, IntToDoubleFunction weight, int most, List<Way> ways) {
        int[] passed = new int[network.sections().size()];
        double perM = 0;
        double usualPerM = usualPerM(weight);
        int last = Math.min(ROUNDS_FOR_EACH * (most - 1), MOST_ROUNDS);
        for (int round = 0; round <= last; round++) {
            double added = Math.max(perM, usualPerM * round / ROUNDS_FOR_EACH);
            List<Integer> way = shortest(from, to, number -> {
                int times = passed[options.get(number).section()];
                double own = weight.applyAsDouble(number);
                return times == 0 ? own : (own + added * section(number).lengthM()) * (1 + times);
            });
            if (way.isEmpty()) {
                return;
            }
            ways.add(way(from, way));
            double total = 0;
            double lengthM = 0;
            for (int number : way) {
                passed[options.get(number).section()]++;
                total += weight.applyAsDouble(number);
                lengthM += section(number).lengthM();
            }
            perM = Math.max(perM, total / Math.max(1, lengthM));
        }
    }

    /** Returns what a meter of the network weighs, over all its sections: where a way costs nothing, passing it again must. */
    private double usualPerM(IntToDoubleFunction weight) {
        double total = 0;
        double lengthM = 0;
        for (int number = 0; number < options.size(); number++) {
            total += weight.applyAsDouble(number);
            lengthM += section(number).lengthM();
        }
        return total / Math.max(1, lengthM);
    }

    /** For each number of days within which a way is possible, the best one; none that cannot be better than those before it. */
    private void withinDays(int from, int to, PathObjective objective, List<Way> ways) {
        var all = new TreeSet<Integer>();
        for (int number : graph.edgeSet()) {
            all.add(days(number));
        }
        int[] days = all.stream().mapToInt(Integer::intValue).toArray();
        int first = fewestDays(from, to, days);
        double leastSum =
                first < days.length ? length(shortest(from, to, number -> sum(number, objective)), objective) : 0;
        double best = Double.POSITIVE_INFINITY;
        for (int place = first; place < days.length; place++) {
            int most = days[place];
            if (leastSum + objective.weightPerDays() * most >= best) {
                return;
            }
            List<Integer> numbers = shortest(
                    from, to, number -> days(number) <= most ? sum(number, objective) : Double.POSITIVE_INFINITY);
            Way way = way(from, numbers);
            ways.add(way);
            best = Math.min(best, value(way, objective));
        }
    }

    private double length(List<Integer> numbers, PathObjective objective) {
        return numbers.stream().mapToDouble(number -> sum(number, objective)).sum();
    }

    /** Returns the place of the fewest days within which a way is possible; the number of places where none is. */
    private int fewestDays(int from, int to, int[] days) {
        int low = 0;
        int high = days.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            int most = days[middle];
            boolean isPossible = !shortest(from, to, number -> days(number) <= most ? 1 : Double.POSITIVE_INFINITY)
                    .isEmpty();
            if (isPossible) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }

    /** Returns the numbers of the sections; none where nothing joins the vaults. */
    private List<Integer> shortest(int from, int to, IntToDoubleFunction weight) {
        return edges(new DijkstraShortestPath<>(weighted(weight)).getPath(from, to));
    }

    private Graph<Integer, Integer> weighted(IntToDoubleFunction weight) {
        return new AsWeightedGraph<>(graph, weight::applyAsDouble, false, false);
    }

    private static List<Integer> edges(@Nullable GraphPath<Integer, Integer> path) {
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
        return options.get(number).step();
    }

    private SectionOffer section(int number) {
        return step(number).section();
    }

    private double money(int number) {
        return step(number).costs().money();
    }

    private double tiedMoney(int number) {
        return money(number) + TIE * section(number).lengthM();
    }

    private double tiedLengthM(int number) {
        return section(number).lengthM() + TIE * money(number);
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
                .orElse(0);
        return -Math.log(Math.max(ratio, 0.5 / network.samples()));
    }
}
