package org.spanroom.program.design;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.TinyNetworks.Best;

/** Against enumeration of all designs. */
class DesignSearchTinyTest {
    private static final int NETWORKS = 1000;
    private static final double LEAST_RATE = 0.99;
    private static final SearchSettings SHORT = new SearchSettings(1, 300, 2);

    @Test
    void reachesTheBestInNearlyAllNetworksAndNeverGoesBelow() {
        int reached = 0;
        int partly = 0;
        for (int seed = 0; seed < NETWORKS; seed++) {
            DesignProblem problem = TinyNetworks.drawn(seed);
            Best best = TinyNetworks.best(problem);

            Design design = new DesignSearch(problem).run(SHORT).design();

            assertThat(DesignChecker.problems(problem, design))
                    .as("network %d", seed)
                    .isEmpty();
            Best found = found(problem, design);
            assertThat(found.missingMusts()).as("network %d", seed).isGreaterThanOrEqualTo(best.missingMusts());
            if (found.missingMusts() == best.missingMusts()) {
                assertThat(found.money()).as("network %d", seed).isGreaterThanOrEqualTo(best.money() - 1e-9);
                reached += found.money() <= best.money() + 1e-9 ? 1 : 0;
            }
            long served =
                    design.ways().stream().filter(Predicate.not(List::isEmpty)).count();
            partly += served > 0 && served < design.ways().size() ? 1 : 0;
        }
        assertThat(reached).isGreaterThanOrEqualTo((int) (LEAST_RATE * NETWORKS));
        assertThat(partly).as("networks in which something is left out").isGreaterThan(NETWORKS / 10);
    }

    private static Best found(DesignProblem problem, Design design) {
        List<Demand> left = IntStream.range(0, problem.demands().size())
                .filter(demand -> design.ways().get(demand).isEmpty())
                .mapToObj(problem.demands()::get)
                .toList();
        double prizes = left.stream()
                .filter(Predicate.not(Demand::isMust))
                .mapToDouble(Demand::prize)
                .sum();
        return new Best((int) left.stream().filter(Demand::isMust).count(), design.workMoney() + prizes);
    }
}
