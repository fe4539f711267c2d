package org.spanroom.input.layer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.Iterator;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

class RecordLimitTest {
    private static final String ROWS = "a,b\n".repeat(50_000);

    private static long records(String text) throws IOException {
        try (var limited = new RecordLimit(new StringReader(text), 20_000);
                CSVParser parser = CSVParser.parse(limited, CSVFormat.RFC4180)) {
            long records = 0;
            for (Iterator<CSVRecord> rows = parser.iterator(); rows.hasNext(); limited.next()) {
                rows.next();
                records++;
            }
            return records;
        }
    }

    @Test
    void tableOfAnyLengthIsReadWhereRowsAreShort() throws IOException {
        assertThat(records(ROWS)).isEqualTo(50_000);
    }

    @Test
    void quoteThatIsNotClosedEndsTheReading() {
        assertThatThrownBy(() -> records("a,b\n\"a,b\n" + ROWS))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessageContaining("a row of more than 20000 characters: is a quote not closed?");
    }
}
