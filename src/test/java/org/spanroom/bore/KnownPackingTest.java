package org.spanroom.bore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.spanroom.bore.RoomAssessorTest.holding;
import static org.spanroom.bore.RoomAssessorTest.round;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.spanroom.config.ShippedConfig;
import org.spanroom.model.bore.KnownPacking;
import org.spanroom.model.bore.PackingOutcome;
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
        List<KnownPacking> tooNarrow = first.known().stream()
                .filter(known -> known.outcome() == PackingOutcome.FITS)
                .map(known -> new KnownPacking(
                        known.shape(),
                        known.boreMm(),
                        known.diametersMm(),
                        known.outcome(),
                        known.leastBoreMm() - 0.001,
                        known.centresMm()))
                .toList();

        assertThat(tooNarrow).isNotEmpty();
        assertThat(new RoomAssessor(ShippedConfig.get().room()).recall(tooNarrow))
                .isZero();
    }
}
