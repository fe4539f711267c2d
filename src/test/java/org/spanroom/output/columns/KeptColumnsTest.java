package org.spanroom.output.columns;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.spanroom.output.table.Column;

class KeptColumnsTest {
    /** Names as layers have them: other alphabets, signs, blanks, upper and lower case, alike in their first letters, our own. */
    private static final List<String> ODD = List.of(
            "street",
            "Street",
            "STREET ",
            "str-eet",
            "district name",
            "district-nam",
            "district code",
            "Straße №",
            "улица",
            "Улица",
            "街",
            "1",
            "42 %",
            "fid",
            "geom",
            "rank",
            "span_id",
            "src_street",
            "x".repeat(300),
            "x".repeat(299) + "y");

    @Test
    void everyFieldHasAColumnWhoseNamesAreItsOwnInEveryFormat() {
        List<Column<org.spanroom.model.rank.RankedSpan>> columns = KeptColumns.all(ODD);
        List<String> own = SpanColumns.table(SpanLayout.PLAIN).columns().stream()
                .flatMap(column -> java.util.stream.Stream.of(column.name(), column.shortName()))
                .toList();

        assertThat(columns).hasSize(ODD.size());
        assertThat(columns).extracting(Column::name).doesNotHaveDuplicates().allMatch(name -> name.startsWith("src_"));
        assertThat(columns)
                .extracting(Column::shortName)
                .doesNotHaveDuplicates()
                .allMatch(name -> name.length() <= 10 && name.startsWith("src_"));
        assertThat(own).noneMatch(name -> name.startsWith("src_"));
        assertThat(columns.get(0).name()).isEqualTo("src_street");
        assertThat(columns.get(1).name()).isEqualTo("src_street2");
        assertThat(columns.get(4).shortName()).isEqualTo("src_distri");
        assertThat(columns.get(5).shortName()).isEqualTo("src_distr2");
    }
}
