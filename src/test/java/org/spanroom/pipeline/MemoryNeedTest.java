package org.spanroom.pipeline;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.model.Duct;
import org.spanroom.model.Network;
import org.spanroom.model.Span;
import org.spanroom.model.SpanList;

/** A network that surely does not fit is refused with what it needs and the remedy; one that may just fit is let through. */
class MemoryNeedTest {
    private static final long MEBIBYTE = 1L << 20;

    /** So many spans that nobody asks for one by one. */
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
        public boolean hasElevations() {
            return false;
        }
    }

    private static Network of(int spans) {
        return new Network(new Many(spans), List.of(), 0, 0, 0);
    }

    @Test
    void aMillionSpansAreRefusedInAQuarterOfAGibibyteWithTheRemedy() {
        assertThatThrownBy(() -> MemoryNeed.demand(List.of(), of(2_623_807), 256 * MEBIBYTE))
                .isInstanceOf(NotEnoughMemoryException.class)
                .hasMessageContaining("2,623,807 spans need at least 540 MiB, and Java may use 256 MiB")
                .hasMessageContaining("java -Xmx1080m");
    }

    @Test
    void whatMayJustDoIsLetThrough() {
        assertThatCode(() -> MemoryNeed.demand(List.of(), of(2_623_807), 541 * MEBIBYTE))
                .doesNotThrowAnyException();
        assertThatCode(() -> MemoryNeed.demand(List.of(), of(49_999), 30 * MEBIBYTE))
                .doesNotThrowAnyException();
    }
}
