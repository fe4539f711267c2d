package org.spanroom.program.bound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.spanroom.program.design.Bin;
import org.spanroom.program.design.Demand;
import org.spanroom.program.design.DesignProblem;
import org.spanroom.program.design.NewDucts;
import org.spanroom.program.design.Piece;
import org.spanroom.program.design.Spread;

/** Thousands of equal requests get fewer steps and no integer program, and their bound still holds. */
class EqualRequestsTest {
    private static final int REQUESTS = 2000;

    /** A square with one diagonal: each section has one position free, and new ducts of 1000 positions at a price. */
    private static DesignProblem square(List<Demand> demands) {
        var pieces = new ArrayList<Piece>();
        int[][] ends = {{0, 1}, {1, 2}, {2, 3}, {3, 0}, {1, 3}};
        for (int[] end : ends) {
            pieces.add(new Piece(end[0], end[1], 100, List.of(new Bin(1, 1, 0)), new NewDucts(1000, 700, 300, 8)));
        }
        return new DesignProblem(4, pieces, demands);
    }

    private static List<Demand> equal(int count) {
        return Collections.nCopies(count, new Demand(0, 2, 1, Double.POSITIVE_INFINITY));
    }

    private static DesignProblem largeNetwork(List<Demand> demands) {
        var pieces = new ArrayList<Piece>();
        for (int i = 0; i < 600; i++) {
            pieces.add(new Piece(i, i + 1, 100, List.of(new Bin(1, 1, 0)), NewDucts.NONE));
        }
        return new DesignProblem(601, pieces, demands);
    }

    @Test
    void equalRequestsGetFewerStepsThanAsManyDifferentOnes() {
        List<Demand> different = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            for (int j = 0; j < REQUESTS / 60; j++) {
                different.add(new Demand(i, 100 + j, 1, 1));
            }
        }

        assertThat(BoundSettings.of(largeNetwork(equal(60))).steps()).isEqualTo(BoundSettings.DEFAULT.steps());
        assertThat(BoundSettings.of(largeNetwork(different)).steps()).isEqualTo(BoundSettings.DEFAULT.steps());
        assertThat(BoundSettings.of(largeNetwork(equal(REQUESTS))).steps()).isBetween(100, 200);
    }

    /**
     * By hand: 1 + 1 requests go free (by 0-1-2 and by 0-3-2), the other 1998 need two new ducts on each of two sections in a row: at
     * least 2 (700 + 300) = 2000, or one new duct in each of the four sections, 2800.
     */
    @Test
    void theBoundOfEqualRequestsHolds() {
        DesignProblem problem = square(equal(REQUESTS));

        BoundSettings settings = BoundSettings.of(problem);
        DesignBound bound = DesignBound.of(problem, settings, 2000, false, Spread.ON_ONE_THREAD, () -> false);

        assertThat(settings.isSmall(Reduction.of(problem))).isFalse();
        assertThat(settings.isSmall(Reduction.of(square(equal(20))))).isTrue();
        assertThat(bound.isWhole()).isTrue();
        assertThat(bound.steps()).isLessThanOrEqualTo(settings.steps());
        assertThat(bound.money()).isPositive().isLessThanOrEqualTo(2000);
    }

    @Test
    void longListsAreSortedAsAnySortDoes() {
        var random = new Random(5);
        var list = new PriceList();
        record Entry(double price, int code) {}
        var entries = new ArrayList<Entry>();
        for (int code = 0; code < 50_000; code++) {
            var entry = new Entry(random.nextInt(1000), code);
            entries.add(entry);
            list.add(entry.price(), entry.code());
        }
        entries.sort(Comparator.comparingDouble(Entry::price).reversed().thenComparingInt(Entry::code));

        list.sort();

        for (int i = 0; i < entries.size(); i++) {
            assertThat(list.code(i)).isEqualTo(entries.get(i).code());
        }
    }
}
