package org.spanroom.output.report;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReportPageTest {
    /** The template's library wraps what a file throws, wherever in the page the disk is full; the caller gets the failure of the file. */
    @ParameterizedTest
    @ValueSource(ints = {0, 10, 500, 20_000, 100_000, 300_000})
    void aFullDiskIsAFailureOfTheFile(int roomChars) {
        var page = new ReportPage(texts(), Optional.empty());
        var chunks = List.of(new Chunk("core", "QUJD".repeat(100_000)));

        assertThatThrownBy(() -> page.write(new Full(roomChars), chunks))
                .isExactlyInstanceOf(IOException.class)
                .hasMessage("No space left on device");
    }

    private static PageTexts texts() {
        return new PageTexts(
                "Room to recover in demo",
                "demo",
                "2027-01-15",
                "1",
                List.of(),
                List.of("One sentence."),
                List.of(),
                List.of(),
                "",
                List.of(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /** A file on a disk with this much room. */
    private static final class Full extends Writer {
        private int roomChars;

        Full(int roomChars) {
            this.roomChars = roomChars;
        }

        @Override
        public void write(char[] buffer, int offset, int length) throws IOException {
            roomChars -= length;
            if (roomChars < 0) {
                throw new IOException("No space left on device");
            }
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
    }
}
