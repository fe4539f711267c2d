package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.Arrangement;
import org.spanroom.model.bore.Packing;
import org.spanroom.model.bore.PackingOutcome;
import org.spanroom.model.bore.PlacedCircle;
import org.spanroom.model.bore.PlacedCircle.Kind;
import org.spanroom.model.bore.PullChoice;
import org.spanroom.model.network.BoreShape;

/** Every arrangement that is said to fit holds each sleeve together: its cells in a row, neighbors no farther apart than the slack. */
class SleevesHangTogetherTest {
    private static final double SLACK_MM = 2;

    private final ContentsPacker packer = new ContentsPacker(new Packer(), SLACK_MM);

    /** Cells beside innerducts and cables, from loose to crowded, in round and square bores. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void whatFitsIsInOnePiece(long seed) {
        var random = new SplittableRandom(seed);
        int cellsPerSleeve = 2 + random.nextInt(3);
        List<Item> items = items(random, 1 + random.nextInt(3), cellsPerSleeve);
        double squares = items.stream()
                .mapToDouble(item -> item.outsideDiameterMm() * item.outsideDiameterMm())
                .sum();
        double boreMm = Math.sqrt(squares / (0.35 + 0.35 * random.nextDouble()));
        BoreShape shape = random.nextInt(4) == 0 ? BoreShape.SQUARE : BoreShape.ROUND;

        Packing packing = packer.pack(shape, boreMm, boreMm - 1, items, Work.ofSection());

        if (packing.outcome() == PackingOutcome.FITS) {
            Arrangement drawn = packing.arrangement().orElseThrow();
            assertThat(drawn.overlapMm()).isLessThanOrEqualTo(1e-6);
            assertInOnePiece(drawn, cellsPerSleeve, SLACK_MM);
        }
        assertThat(packer.outcome(shape, boreMm - 1, items, Work.ofSection())).isEqualTo(packing.outcome());
    }

    /**
     * Circles of 60, 60, 40 and 40 mm go into 120 mm (the Apollonian gasket -1, 2, 2, 3), the smaller ones in the two gaps on
     * either side: a sleeve of two cells of 39 mm would have to reach through.
     */
    @Test
    void anArrangementThatTearsASleeveApartDoesNotCount() {
        double[] diametersMm = {60, 60, 39, 39};
        var loose = PackingTask.of(BoreShape.ROUND, 120.01, diametersMm);
        var oneSleeve = PackingTask.jointed(BoreShape.ROUND, 120.01, diametersMm, new int[] {0, 0, 1, 1}, SLACK_MM);
        var longFabric = PackingTask.jointed(BoreShape.ROUND, 120.01, diametersMm, new int[] {0, 0, 1, 1}, 42);

        assertThat(new Packer().pack(loose).outcome()).isEqualTo(PackingOutcome.FITS);
        assertThat(new Packer().pack(oneSleeve).outcome()).isEqualTo(PackingOutcome.UNDECIDED);
        assertThat(new Packer().pack(longFabric).outcome()).isEqualTo(PackingOutcome.FITS);
    }

    /** A proof that takes no notice of sleeves is a proof with them. */
    @Test
    void whatDoesNotFitLooseDoesNotFitInSleeves() {
        double[] diametersMm = {20, 20, 20, 20, 20, 20, 20};
        var seven = PackingTask.jointed(BoreShape.ROUND, 59.9, diametersMm, new int[] {1, 1, 1, 2, 2, 2, 0}, SLACK_MM);

        assertThat(new Packer().pack(seven).outcome()).isEqualTo(PackingOutcome.DOES_NOT_FIT);
        assertThat(new Packer().pack(seven.in(60.001)).outcome()).isEqualTo(PackingOutcome.FITS);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theOrderAndTheNumbersOfSleevesDoNotMatter(long seed) {
        var random = new SplittableRandom(seed);
        List<Item> items = items(random, 3, 3);
        var renumbered = new ArrayList<>(items.stream()
                .map(item -> item.sleeve() > 0 ? item.inSleeve(9 - item.sleeve()) : item)
                .toList());
        Collections.shuffle(renumbered, new Random(seed));

        assertThat(packer.pack(BoreShape.ROUND, 110, 108, renumbered, Work.ofSection()))
                .isEqualTo(new ContentsPacker(new Packer(), SLACK_MM)
                        .pack(BoreShape.ROUND, 110, 108, items, Work.ofSection()));
    }

    @Test
    void everyChoiceOfADuctIsDrawnInOnePiece() {
        var settings = ShippedConfig.get().room();
        var assessor = new RoomAssessor(settings);
        for (double boreIn : new double[] {2.047, 3.042, 3.998, 4.05, 4.289}) {
            for (int empty = 0; empty < 3; empty++) {
                var duct = RoomAssessorTest.round(boreIn, RoomAssessorTest.holding(List.of(0.5, 0.75), empty));
                for (PullChoice choice :
                        assessor.assess(duct).crossSection().orElseThrow().choices()) {
                    if (choice.after().outcome() == PackingOutcome.FITS) {
                        assertInOnePiece(
                                choice.after().arrangement().orElseThrow(),
                                settings.cellsPerSleeve(),
                                settings.sleeveSlackMm());
                    }
                }
            }
        }
    }

    private static List<Item> items(SplittableRandom random, int sleeves, int cellsPerSleeve) {
        var items = new ArrayList<Item>();
        for (int i = random.nextInt(4); i > 0; i--) {
            items.add(new Item(Kind.INNERDUCT, 25 + 25 * random.nextDouble(), 20, List.of(), 0));
        }
        for (int i = random.nextInt(4); i > 0; i--) {
            items.add(new Item(Kind.CABLE, 10 + 15 * random.nextDouble(), 0, List.of(), 0));
        }
        for (int cell = 0; cell < sleeves * cellsPerSleeve; cell++) {
            double cableMm = random.nextInt(4) == 0 ? 18 : 12.7;
            items.add(Item.inCell(Kind.NEW_CABLE, cableMm, 0.5).inSleeve(1 + cell / cellsPerSleeve));
        }
        return items;
    }

    /** Calculated here by trying every row, so that the verdict does not rest on the code that it judges. */
    private static void assertInOnePiece(Arrangement drawn, int cellsPerSleeve, double slackMm) {
        Map<Integer, List<PlacedCircle>> sleeves = new TreeMap<>();
        for (PlacedCircle circle : drawn.circles()) {
            if (circle.sleeve() > 0) {
                sleeves.computeIfAbsent(circle.sleeve(), number -> new ArrayList<>())
                        .add(circle);
            }
        }
        for (List<PlacedCircle> cells : sleeves.values()) {
            assertThat(cells).hasSize(cellsPerSleeve);
            assertThat(hasRow(cells, new boolean[cells.size()], -1, 0, slackMm + 1e-6))
                    .as("%s", cells)
                    .isTrue();
        }
        assertThat(drawn.joints())
                .hasSize(sleeves.size() * (cellsPerSleeve - 1))
                .allSatisfy(joint -> assertThat(joint.gapMm()).isLessThanOrEqualTo(slackMm + 1e-6));
        assertThat(Arrays.asList(sleeves.keySet().toArray())).hasSize(sleeves.size());
    }

    private static boolean hasRow(List<PlacedCircle> cells, boolean[] used, int end, int count, double slackMm) {
        boolean has = count == cells.size();
        for (int next = 0; !has && next < cells.size(); next++) {
            if (!used[next] && (end < 0 || gapMm(cells.get(end), cells.get(next)) <= slackMm)) {
                used[next] = true;
                has = hasRow(cells, used, next, count + 1, slackMm);
                used[next] = false;
            }
        }
        return has;
    }

    private static double gapMm(PlacedCircle one, PlacedCircle other) {
        double dx = one.xMm() - other.xMm();
        double dy = one.yMm() - other.yMm();
        return Math.sqrt(dx * dx + dy * dy) - (one.outsideDiameterMm() + other.outsideDiameterMm()) / 2;
    }

    static LongStream seeds() {
        return LongStream.range(0, 60);
    }
}
