package org.spanroom.output.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.spanroom.output.Sample;

class CsvWriterTest {
    @TempDir
    Path folder;

    @Test
    void rowsFollowTheHeaderWithLineEndsOfRfc4180() throws IOException {
        Path file = write(List.of(Sample.of("one", 0, 0, 1, 1), Sample.EMPTY));

        assertThat(Files.readString(file)).isEqualTo("label,count,length_m,flooded\r\none,3,12.346,true\r\n,,,\r\n");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "plain",
                "comma, quote \" and\nbreak\r\nend",
                "\"\"",
                " blanks ",
                "Größe 東 \uD83D\uDEA7",
                "a;b|c",
                "'x",
                "-12.5",
                "+7"
            })
    void textsComeBackFromAReaderWeDidNotWrite(String text) throws IOException {
        assertThat(read(write(List.of(Sample.of(text, 0, 0, 1, 1)))).get(0).get("label"))
                .isEqualTo(text);
    }

    /** Cells that begin so are run by spreadsheets as formulas (OWASP, "CSV Injection", from memory). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+cmd|' /C calc'!A0",
                "-2+3",
                "@SUM(A1)",
                "\tx",
                "\rx",
                "\nx",
                "\u00A0=1",
                "\uFEFF-x",
                "\uFF20x",
                "=HYPERLINK(\"http://example.org\",\"x\")",
                "-1e5"
            })
    void formulasAreNeutralised(String text) throws IOException {
        assertThat(read(write(List.of(Sample.of(text, 0, 0, 1, 1)))).get(0).get("label"))
                .isEqualTo("'" + text);
    }

    @Test
    void negativeNumbersAreLeftAlone() throws IOException {
        var row = new Sample("x", -3L, -1.5, false, List.of());

        CSVRecord back = read(write(List.of(row))).get(0);

        assertThat(back.toList()).containsExactly("x", "-3", "-1.500", "false");
    }

    @Test
    void theHostsLocaleDoesNotShow() throws IOException {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertThat(Files.readString(write(List.of(Sample.of("one", 0, 0, 1, 1)))))
                    .contains("one,3,12.346,true");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void aVeryLongTextComesBackWhole() throws IOException {
        String text = "long \"text\" ".repeat(100_000) + "end";

        assertThat(read(write(List.of(Sample.of(text, 0, 0, 1, 1)))).get(0).get("label"))
                .isEqualTo(text);
    }

    private Path write(List<Sample> rows) {
        Path file = folder.resolve("rows.csv");
        try (var writer = new CsvWriter<>(file, Sample.LINES)) {
            rows.forEach(writer::write);
        }
        return file;
    }

    private static List<CSVRecord> read(Path file) throws IOException {
        try (var parser = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get()
                .parse(Files.newBufferedReader(file, StandardCharsets.UTF_8))) {
            return parser.getRecords();
        }
    }
}
