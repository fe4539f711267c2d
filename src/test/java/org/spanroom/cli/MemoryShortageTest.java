package org.spanroom.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;

/** What Java 17 says of a lack of memory, and what becomes of it. */
class MemoryShortageTest {
    private static final long MEBIBYTE = 1L << 20;

    @Test
    void theLineTellsStageHeapAndRemedy() {
        assertThat(MemoryShortage.message("Java heap space", "assess spans", 512 * MEBIBYTE))
                .isEqualTo(
                        "not enough memory during 'assess spans': the 512 MiB that Java may use are full. No results"
                                + " were written; earlier ones are as they were. Give it more: java -Xmx1024m -jar spanroom.jar ...");
    }

    @Test
    void threadsAreNotMendedByMoreHeap() {
        assertThat(MemoryShortage.message("unable to create native thread: possibly out of memory", "", MEBIBYTE))
                .contains("--threads")
                .doesNotContain("-Xmx");
    }

    @Test
    void itIsFoundBehindWhateverItCameThrough() {
        var error = new OutOfMemoryError("Java heap space");

        assertThat(MemoryShortage.find(error)).contains("Java heap space");
        assertThat(MemoryShortage.find(new IllegalStateException(new ExecutionException(error))))
                .isPresent();
        // As a class fails whose preparation ran out of memory once before.
        assertThat(MemoryShortage.find(new NoClassDefFoundError("Could not initialize class A")
                        .initCause(new ExceptionInInitializerError(
                                "Exception java.lang.OutOfMemoryError: Java heap space [in thread \"main\"]"))))
                .isPresent();
        assertThat(MemoryShortage.find(new IllegalStateException("something else")))
                .isEmpty();
    }

    @Test
    void lessThanAnyRunNeedsIsToldAtOnce() {
        assertThatThrownBy(() -> MemoryShortage.demandLeast(16 * MEBIBYTE)).isInstanceOf(OutOfMemoryError.class);
        assertThatCode(() -> MemoryShortage.demandLeast(32 * MEBIBYTE)).doesNotThrowAnyException();
    }
}
