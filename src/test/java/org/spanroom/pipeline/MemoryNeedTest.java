package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.spanroom.model.Line;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanList;

/** A network that surely does not fit is refused with what it needs and the remedy; one that may just fit is let through. */
class MemoryNeedTest {
    private static final long MEBIBYTE = 1L << 20;

    /** More spans than are requested one by one. */
    private static final class Many extends SpanList {
        private final int size;

        Many(int size) {
            this.size = size;
        }

        @Override
        public Span get(int number) {
            throw new AssertionError("only their count is needed");
        }

        @Override
        public int size() {
            return size;
        }

        @Override
        public String id(int number) {
            throw new AssertionError("only their count is needed");
        }

        @Override
        public Duct duct(int number) {
            throw new AssertionError("only their count is needed");
        }

        @Override
        public int fromVault(int number) {
            throw new AssertionError("only their count is needed");
        }

        @Override
        public int toVault(int number) {
            throw new AssertionError("only their count is needed");
        }

        @Override
        public double lengthM(int number) {
            throw new AssertionError("only their count is needed");
        }

        @Override
        public boolean hasElevations() {
            return false;
        }
    }

    private static Network of(int spans) {
        return new Network(new Many(spans), List.of(), 0, 0, 0);
    }

    @Test
    void aMillionSpansAreRefusedInAQuarterOfAGibibyteWithTheRemedy() {
        assertThatThrownBy(() -> MemoryNeed.demand(List.of(), of(2_623_807), false, 256 * MEBIBYTE))
                .isInstanceOf(NotEnoughMemoryException.class)
                .hasMessageContaining("2,623,807 spans need at least 450 MiB, but the Java heap limit is 256 MiB")
                .hasMessageContaining("java -Xmx900m");
    }

    /** Of a simulation each span keeps a mask of eight bytes, four numbers of four, two marks, and nine numbers of money. */
    @Test
    void whatASimulationKeepsCountsToo() {
        assertThatCode(() -> MemoryNeed.demand(List.of(), of(1 << 20), false, 204 * MEBIBYTE))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> MemoryNeed.demand(List.of(), of(1 << 20), false, 203 * MEBIBYTE))
                .isInstanceOf(NotEnoughMemoryException.class);
        assertThatCode(() -> MemoryNeed.demand(List.of(), of(1 << 20), true, (204 + 62) * MEBIBYTE))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> MemoryNeed.demand(List.of(), of(1 << 20), true, (203 + 62) * MEBIBYTE))
                .isInstanceOf(NotEnoughMemoryException.class);
    }

    /** A quarter of a million vertices a line, in banks of twelve. */
    @Test
    void lineThatManyDuctsShareIsCountedOnce() {
        List<Route> apart = new ArrayList<>();
        List<Route> banked = new ArrayList<>();
        for (int bank = 0; bank < 4; bank++) {
            Line shared = longLine();
            for (int duct = 0; duct < 12; duct++) {
                banked.add(route(shared));
                apart.add(route(longLine()));
            }
        }

        assertThatCode(() -> MemoryNeed.demand(banked, of(50_000), false, 63 * MEBIBYTE))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> MemoryNeed.demand(apart, of(50_000), false, 63 * MEBIBYTE))
                .isInstanceOf(NotEnoughMemoryException.class);
    }

    private static Line longLine() {
        double[] ordinates = new double[2 * 250_000];
        for (int i = 0; i < ordinates.length; i++) {
            ordinates[i] = i * 1e-5;
        }
        return Line.wrap(ordinates, false);
    }

    private static Route route(Line line) {
        var duct = new Duct(
                "d",
                "",
                BoreShape.ROUND,
                100,
                "",
                "HDPE",
                false,
                Contents.UNKNOWN,
                false,
                Condition.SOUND,
                "",
                "",
                OptionalInt.empty(),
                Set.of());
        return new Route(0, "r", duct, line, OptionalDouble.empty(), Optional.empty(), Optional.empty(), "");
    }

    /** Ten million short routes in 11 GiB of heap: their rows go into a file on a machine of 24 GiB, and are made again on one of 16. */
    @Test
    void rowsGoIntoAFileOnlyWhereTheSystemCanHoldIt() {
        long gibibyte = 1L << 30;

        assertThat(MemoryNeed.mayUseFile((24 - 11) * gibibyte, 100 * gibibyte, 26_500_000))
                .isTrue();
        assertThat(MemoryNeed.mayUseFile((16 - 11) * gibibyte, 100 * gibibyte, 26_500_000))
                .isFalse();
        assertThat(MemoryNeed.mayUseFile((24 - 11) * gibibyte, 35 * gibibyte, 26_500_000))
                .isFalse();
    }

    /** Which is why {@code PackedRowsOfRunTest} runs in this heap. */
    @Test
    void fortySixMebibytesHaveNoRoomForRows() {
        assertThat(MemoryNeed.demand(List.of(), of(1), false, 46 * MEBIBYTE)).isFalse();
    }

    @Test
    void whatMayJustDoIsLetThrough() {
        assertThatCode(() -> MemoryNeed.demand(List.of(), of(2_623_807), false, 631 * MEBIBYTE))
                .doesNotThrowAnyException();
        assertThatCode(() -> MemoryNeed.demand(List.of(), of(49_999), false, 30 * MEBIBYTE))
                .doesNotThrowAnyException();
    }
}
