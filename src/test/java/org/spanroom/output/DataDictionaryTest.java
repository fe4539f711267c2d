package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class DataDictionaryTest {
    private static final Path DOCUMENT = Path.of("src/site/markdown/data-dictionary.md");

    @Test
    void theDocumentIsWhatTheColumnsSay() throws IOException {
        if (Boolean.getBoolean("spanroom.regenerate")) {
            Files.writeString(DOCUMENT, DataDictionary.text());
        }

        assertThat(Files.readString(DOCUMENT))
                .as("regenerate with: mvn test -Dtest=DataDictionaryTest -Dspanroom.regenerate=true")
                .isEqualTo(DataDictionary.text());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("tables")
    void everyNumberWithDecimalsNamesItsUnit(String name, Table<?> table) {
        assertThat(table.columns())
                .filteredOn(column -> column.type() == Column.Type.REAL)
                .allSatisfy(column -> assertThat(DataDictionary.unit(column))
                        .as("unit of %s", column.name())
                        .isNotEmpty());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("tables")
    void everyColumnIsExplainedInASentence(String name, Table<?> table) {
        assertThat(table.columns())
                .allSatisfy(column -> assertThat(column.meaning()).endsWith(".").doesNotContain("|", "\n"));
    }

    @Test
    void criteriaThatNobodyForesawGetColumnsToo() {
        Table<?> table = SpanColumns.table(new SpanLayout(List.of("room_gained", "a_criterion_to_come"), false));

        assertThat(table.columns())
                .extracting(Column::name, Column::shortName)
                .contains(org.assertj.core.groups.Tuple.tuple("a_criterion_to_come_points", "part1_pts"));
    }

    static Stream<Arguments> tables() {
        return ResultTables.ALL.stream().map(entry -> Arguments.of(entry.name(), entry.table(SpanLayout.KNOWN)));
    }
}
