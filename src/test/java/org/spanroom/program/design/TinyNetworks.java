package org.spanroom.program.design;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/** Networks of a few places with loops, parallel pieces, dead ends and scarce room, and the best cost by looking at everything. */
final class TinyNetworks {
    private TinyNetworks() {}

    static DesignProblem drawn(long seed) {
        var random = new SplittableRandom(seed);
        int places = random.nextInt(2, 8);
        var pieces = new ArrayList<Piece>();
        int count = random.nextInt(places - 1, places + 4);
        for (int each = 0; each < count; each++) {
            int from = random.nextInt(places);
            int to = (from + 1 + random.nextInt(places - 1)) % places;
            pieces.add(new Piece(from, to, random.nextInt(1, 100), bins(random), more(random)));
        }
        List<Demand> demands = IntStream.range(0, random.nextInt(1, 5))
                .mapToObj(each -> {
                    int from = random.nextInt(places);
                    int to = (from + 1 + random.nextInt(places - 1)) % places;
                    double prize = random.nextInt(3) == 0 ? Double.POSITIVE_INFINITY : random.nextInt(0, 150);
                    return new Demand(from, to, random.nextInt(1, 4), prize);
                })
                .toList();
        return new DesignProblem(places, pieces, demands);
    }

    private static List<Bin> bins(SplittableRandom random) {
        return IntStream.range(0, random.nextInt(0, 4))
                .mapToObj(each -> {
                    int now = Math.max(0, random.nextInt(-2, 4));
                    int gained = random.nextInt(0, 5);
                    return new Bin(now, now + gained, gained == 0 ? 0 : random.nextInt(5, 60));
                })
                .toList();
    }

    private static NewDucts more(SplittableRandom random) {
        return random.nextInt(3) == 0
                ? new NewDucts(
                        random.nextInt(1, 5), random.nextInt(40, 200), random.nextInt(5, 40), random.nextInt(1, 3))
                : NewDucts.NONE;
    }

    /** The best of all designs: how many musts it misses, and its cost with the prizes missed. */
    record Best(int missingMusts, double money) {
        boolean isBetterThan(Best other) {
            return missingMusts != other.missingMusts ? missingMusts < other.missingMusts : money < other.money;
        }
    }

    /** Looks at every simple way of every demand in every combination, and at leaving each out. */
    static Best best(DesignProblem problem) {
        return new Enumeration(problem).run();
    }

    private static final class Enumeration {
        private final DesignProblem problem;
        private final List<PieceCost> costs;
        private final List<List<List<Integer>>> ways = new ArrayList<>();
        private final int[][] counts;
        private Best best = new Best(Integer.MAX_VALUE, Double.POSITIVE_INFINITY);

        private Enumeration(DesignProblem problem) {
            this.problem = problem;
            costs = problem.pieces().stream().map(PieceCost::new).toList();
            counts = new int[problem.pieces().size()][4];
            for (Demand demand : problem.demands()) {
                var found = new ArrayList<List<Integer>>();
                var seen = new boolean[problem.places()];
                follow(demand.from(), demand.to(), seen, new ArrayList<>(), found);
                ways.add(found);
            }
        }

        private void follow(int place, int goal, boolean[] seen, List<Integer> way, List<List<Integer>> found) {
            if (place == goal) {
                found.add(List.copyOf(way));
                return;
            }
            seen[place] = true;
            for (int number = 0; number < problem.pieces().size(); number++) {
                Piece piece = problem.pieces().get(number);
                if ((piece.from() == place || piece.to() == place) && !seen[piece.other(place)]) {
                    way.add(number);
                    follow(piece.other(place), goal, seen, way, found);
                    way.remove(way.size() - 1);
                }
            }
            seen[place] = false;
        }

        private Best run() {
            choose(0, 0, 0);
            return best;
        }

        private void choose(int next, int missing, double prizes) {
            double work = 0;
            for (int number = 0; number < counts.length; number++) {
                work += costs.get(number).money(counts[number]);
            }
            var now = new Best(missing, work + prizes);
            if (work == Double.POSITIVE_INFINITY || !now.isBetterThan(best)) {
                return;
            }
            if (next == problem.demands().size()) {
                best = now;
                return;
            }
            Demand demand = problem.demands().get(next);
            for (List<Integer> way : ways.get(next)) {
                way.forEach(piece -> counts[piece][demand.cables()]++);
                choose(next + 1, missing, prizes);
                way.forEach(piece -> counts[piece][demand.cables()]--);
            }
            choose(next + 1, missing + (demand.isMust() ? 1 : 0), prizes + (demand.isMust() ? 0 : demand.prize()));
        }
    }
}
