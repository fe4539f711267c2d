package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanroom.bore.RoomAssessorTest.holding;
import static org.spanroom.bore.RoomAssessorTest.round;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Duct;

class KnownPackingTest {
    private static final List<Duct> DUCTS = Stream.of(2.047, 3.042, 3.998, 4.05)
            .flatMap(boreIn -> Stream.of(
                    round(boreIn, holding(List.of(0.5), 1)),
                    round(boreIn, holding(List.of(0.5, 0.7, 0.6), 1)),
                    round(boreIn, holding(List.of(1.0, 1.1), 0))))
            .toList();

    @Test
    void whatAnEarlierRunFoundGivesTheSameAnswers() {
        var first = new RoomAssessor(ShippedConfig.get().room());
        var rooms = DUCTS.stream().map(first::assess).toList();
        var second = new RoomAssessor(ShippedConfig.get().room());

        assertThat(second.recall(first.known())).isEqualTo(first.known().size()).isPositive();

        assertThat(DUCTS.stream().map(second::assess).toList()).isEqualTo(rooms);
        assertThat(second.known()).isEqualTo(first.known());
    }

    @Test
    void anArrangementThatDoesNotFitIsNotTakenOver() {
        var first = new RoomAssessor(ShippedConfig.get().room());
        DUCTS.forEach(first::assess);
        List<KnownPacking> tooNarrow =
                first.known().stream().map(known -> narrower(known, 0.001)).toList();

        assertThat(tooNarrow).isNotEmpty();
        assertThat(new RoomAssessor(ShippedConfig.get().room()).recall(tooNarrow))
                .isZero();
    }

    @Test
    void anArrangementThatTearsASleeveApartIsNotTakenOver() {
        var apart = List.of(-10.0, 0.0, 10.0, 0.0);

        assertThat(recalled(11, List.of(1, 1), apart)).isOne();
        assertThat(recalled(9, List.of(0, 0), apart)).isOne();
        assertThat(recalled(9, List.of(1, 1), apart)).isZero();
    }

    private static int recalled(double slackMm, List<Integer> sleeves, List<Double> centersMm) {
        var found = new KnownPacking.Found(0, 40, centersMm);
        return new Packer()
                .recall(List.of(
                        new KnownPacking(BoreShape.ROUND, slackMm, List.of(10.0, 10.0), sleeves, 0, List.of(found))));
    }

    /** The search goes on where the earlier run left off, and comes to what it would have come to. */
    @Test
    void aSearchThatWasBegunIsContinued() {
        double[] diametersMm =
                IntStream.rangeClosed(1, 9).mapToDouble(r -> 2.0 * r).toArray();
        var wide = PackingTask.of(BoreShape.ROUND, 2 * 19.2331939 * 1.01, diametersMm);
        var narrow = PackingTask.of(BoreShape.ROUND, 2 * 19.2331939 * 1.0002, diametersMm);
        Packed alone = new Packer().pack(narrow);
        var first = new Packer();
        first.pack(wide);
        var second = new Packer();

        assertThat(second.recall(first.known())).isOne();

        assertThat(second.pack(narrow).leastBoreMm()).isEqualTo(alone.leastBoreMm());
        assertThat(second.pack(narrow).centersMm()).isEqualTo(alone.centersMm());
    }

    private static KnownPacking narrower(KnownPacking known, double byMm) {
        return new KnownPacking(
                known.shape(),
                known.slackMm(),
                known.diametersMm(),
                known.sleeves(),
                known.moves(),
                known.found().stream()
                        .map(one -> new KnownPacking.Found(one.move(), one.leastBoreMm() - byMm, one.centersMm()))
                        .toList());
    }
}
