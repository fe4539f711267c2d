package org.spanroom.program.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jgrapht.alg.flow.EdmondsKarpMFImpl;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.Unserved.Reason;

/** What the search says cannot be served, against JGraphT's greatest flow. */
class DesignSearchFlowTest {
    private static final int NETWORKS = 300;
    private static final double LEAST_RATE = 0.98;
    private static final double MUST = Double.POSITIVE_INFINITY;

    /** Demands of one cable between the same places: as many can be served as the greatest flow says, no more. */
    @Test
    void asManyMustsAreServedAsTheGreatestFlow() {
        int reached = 0;
        int scarce = 0;
        for (int seed = 0; seed < NETWORKS; seed++) {
            var random = new SplittableRandom(seed);
            int places = random.nextInt(4, 12);
            List<Piece> pieces = pieces(random, places);
            int count = random.nextInt(1, 9);
            List<Demand> demands = IntStream.range(0, count)
                    .mapToObj(each -> each % 2 == 0 ? new Demand(0, 1, 1, MUST) : new Demand(1, 0, 1, MUST))
                    .toList();
            var problem = new DesignProblem(places, pieces, demands);

            var result = new DesignSearch(problem).run(new SearchSettings(seed, 500, 2));

            double flow = flow(problem, 0, 1, DesignSearchFlowTest::positions);
            int served = count - result.unserved().size();
            assertThat(DesignChecker.problems(problem, result.design())).isEmpty();
            assertThat((double) served).as("network %d", seed).isLessThanOrEqualTo(flow);
            assertThat(result.unserved().values())
                    .as("network %d", seed)
                    .allMatch(unserved -> unserved.reason() == (flow == 0 ? Reason.NO_WAY : Reason.CROWDED_OUT));
            reached += served == Math.min(count, flow) ? 1 : 0;
            scarce += flow > 0 && flow < count ? 1 : 0;
        }
        assertThat(reached).isGreaterThanOrEqualTo((int) (LEAST_RATE * NETWORKS));
        assertThat(scarce).as("networks with room for some only").isGreaterThan(NETWORKS / 5);
    }

    /** No way, or none for so many cables, if and only if nothing flows through pieces that take any, or so many. */
    @Test
    void whatHasNoWayHasNoFlow() {
        var seen = new EnumMap<Reason, Integer>(Reason.class);
        for (int seed = 0; seed < NETWORKS; seed++) {
            DesignProblem problem = TinyNetworks.drawn(seed);

            Map<Integer, Unserved> unserved = new DesignSearch(problem)
                    .run(new SearchSettings(seed, 20, 1))
                    .unserved();

            for (int number = 0; number < problem.demands().size(); number++) {
                Demand demand = problem.demands().get(number);
                double any = flow(problem, demand.from(), demand.to(), piece -> takes(piece, 1));
                double all = flow(problem, demand.from(), demand.to(), piece -> takes(piece, demand.cables()));
                Unserved found = unserved.get(number);
                Reason reason = found == null ? null : found.reason();
                assertThat(reason == Reason.NO_WAY)
                        .as("network %d, %s", seed, demand)
                        .isEqualTo(any == 0);
                assertThat(reason == Reason.TOO_MANY_CABLES)
                        .as("network %d, %s", seed, demand)
                        .isEqualTo(any > 0 && all == 0);
                if (reason != null) {
                    seen.merge(reason, 1, Integer::sum);
                }
            }
        }
        assertThat(seen).containsOnlyKeys(Reason.values());
    }

    private static List<Piece> pieces(SplittableRandom random, int places) {
        var pieces = new ArrayList<Piece>();
        for (int each = 0; each < 2 * places; each++) {
            int from = random.nextInt(places);
            int to = (from + 1 + random.nextInt(places - 1)) % places;
            var bins = new ArrayList<Bin>();
            for (int bin = random.nextInt(3); bin > 0; bin--) {
                int now = random.nextInt(2);
                int gained = random.nextInt(2);
                bins.add(new Bin(now, now + gained, gained * random.nextInt(1, 50)));
            }
            var more = random.nextInt(8) == 0 ? new NewDucts(1, 200, 50, 1) : NewDucts.NONE;
            pieces.add(new Piece(from, to, random.nextInt(1, 100), bins, more));
        }
        return pieces;
    }

    private static double positions(Piece piece) {
        return piece.bins().stream().mapToInt(Bin::after).sum()
                + piece.more().positions() * piece.more().most();
    }

    private static double takes(Piece piece, int cables) {
        boolean isTaken = piece.bins().stream().anyMatch(bin -> bin.after() >= cables)
                || (piece.more().most() > 0 && piece.more().positions() >= cables);
        return isTaken ? 1 : 0;
    }

    private static double flow(DesignProblem problem, int from, int to, ToDoubleFunction<Piece> capacity) {
        var graph = new SimpleWeightedGraph<Integer, DefaultWeightedEdge>(DefaultWeightedEdge.class);
        IntStream.range(0, problem.places()).forEach(graph::addVertex);
        for (Piece piece : problem.pieces()) {
            DefaultWeightedEdge edge = graph.getEdge(piece.from(), piece.to());
            double before = edge == null ? 0 : graph.getEdgeWeight(edge);
            DefaultWeightedEdge whole = edge == null ? graph.addEdge(piece.from(), piece.to()) : edge;
            graph.setEdgeWeight(whole, before + capacity.applyAsDouble(piece));
        }
        return new EdmondsKarpMFImpl<>(graph).calculateMaximumFlow(from, to);
    }
}
