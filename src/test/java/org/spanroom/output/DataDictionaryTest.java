package org.spanroom.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.spanroom.model.rank.CriterionInfo;
import org.spanroom.output.columns.ConnectColumns;
import org.spanroom.output.columns.CorridorColumns;
import org.spanroom.output.columns.MoveColumns;
import org.spanroom.output.columns.PathColumns;
import org.spanroom.output.columns.SpanColumns;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Column;
import org.spanroom.output.table.Table;
import org.spanroom.rank.Ranking;

class DataDictionaryTest {
    private static final Path DOCUMENT = Path.of("src/site/markdown/data-dictionary.md");
    private static final SpanLayout LAYOUT = new SpanLayout(Ranking.criteria(), false);

    @Test
    void theDocumentIsWhatTheColumnsSay() throws IOException {
        if (Boolean.getBoolean("spanroom.regenerate")) {
            Files.writeString(DOCUMENT, DataDictionary.text(LAYOUT));
        }

        assertThat(Files.readString(DOCUMENT))
                .as("regenerate with: mvn test -Dtest=DataDictionaryTest -Dspanroom.regenerate=true")
                .isEqualTo(DataDictionary.text(LAYOUT));
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

    /** A score calculated from the columns is the same: quantities are judged as their columns show them. */
    @ParameterizedTest
    @MethodSource("criteria")
    void everyCriterionHasTheColumnOfItsQuantity(CriterionInfo criterion) {
        assertThat(SpanColumns.table(LAYOUT).columns())
                .filteredOn(column -> column.name().equals(criterion.quantityColumn()))
                .extracting(Column::decimals)
                .containsExactly(criterion.decimals());
    }

    /** Whatever groups a run is asked for, another scoring can be tried on it. */
    @ParameterizedTest
    @MethodSource("criteria")
    void everyCriterionHasItsQuantityInTheFileForLaterCommands(CriterionInfo criterion) {
        var lean = new SpanLayout(Ranking.criteria(), false, List.of(), Set.of());

        assertThat(SpanColumns.forLater(lean).columns())
                .filteredOn(column -> column.name().equals(criterion.quantityColumn()))
                .extracting(Column::decimals)
                .containsExactly(criterion.decimals());
    }

    /** No column of the spans is in two groups, and each core column is in one. */
    @Test
    void everyColumnOfTheSpansHasOneGroup() {
        List<String> grouped = Stream.concat(
                        SpanColumns.identity().stream(),
                        SpanColumns.byGroup(LAYOUT).values().stream().flatMap(List::stream))
                .map(Column::name)
                .toList();
        var lean = new SpanLayout(Ranking.criteria(), false, List.of(), Set.of());
        List<String> core =
                SpanColumns.table(lean).columns().stream().map(Column::name).toList();

        assertThat(grouped).doesNotHaveDuplicates().containsAll(core);
        assertThat(SpanColumns.table(LAYOUT).columns())
                .extracting(Column::name)
                .containsExactlyInAnyOrderElementsOf(grouped);
        assertThat(core).hasSizeBetween(38, 46).allMatch(name -> SpanColumns.isCore(column(name)));
    }

    private static Column<?> column(String name) {
        return SpanColumns.table(LAYOUT).columns().stream()
                .filter(column -> column.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    static List<CriterionInfo> criteria() {
        return Ranking.criteria();
    }

    static Stream<Arguments> tables() {
        return Stream.concat(
                ResultTables.ALL.stream().map(entry -> Arguments.of(entry.name(), entry.table(LAYOUT))),
                Stream.concat(
                                Stream.of(
                                        MoveColumns.TABLE,
                                        PathColumns.PATHS,
                                        PathColumns.SECTIONS,
                                        CorridorColumns.CORRIDORS,
                                        CorridorColumns.SECTIONS,
                                        ConnectColumns.CONNECTIONS,
                                        ConnectColumns.SECTIONS),
                                Stream.concat(AnnualWriter.tables().stream(), LearnWriter.tables().stream()))
                        .map(table -> Arguments.of(table.name(), table)));
    }
}
