package org.spanroom.output.table;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TableTest {
    /** Ten characters: the width of a name in a dBASE field descriptor. */
    @ParameterizedTest
    @CsvSource({"length_m, eleven_char", "length_m, Upper", "Length_m, length_m", "'', x", "length_m, ''", "a b, ab"})
    void namesThatSomeFormatCannotHoldAreRefused(String name, String shortName) {
        assertThatThrownBy(() -> Column.text(name, shortName, "x", row -> row))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void namesAreUniqueInBothFormsAndNotThoseOfTheFormats() {
        Column<String> first = Column.text("first", "one", "x", row -> row);

        for (Column<String> other : List.<Column<String>>of(
                Column.text("first", "two", "x", row -> row),
                Column.text("second", "one", "x", row -> row),
                Column.text("geom", "two", "x", row -> row),
                Column.text("fid", "two", "x", row -> row))) {
            assertThatThrownBy(() -> Table.plain("t", "x", List.of(first, other)))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining(other.name());
        }
    }

    @Test
    void emptyCellsAreOneWhateverTheyWere() {
        Object[] empties = {
            null,
            "",
            " \t",
            Optional.empty(),
            OptionalInt.empty(),
            OptionalDouble.empty(),
            Double.NaN,
            Double.NEGATIVE_INFINITY
        };
        for (Object empty : empties) {
            Column<String> column = empty instanceof Double
                    ? Column.real("x_m", "x_m", 1, "x", row -> empty)
                    : Column.text("x", "x", "x", row -> empty);

            assertThat(cell(column)).as(String.valueOf(empty)).isEqualTo("empty");
        }
    }

    @Test
    void valuesInOptionalsAreTakenOut() {
        assertThat(cell(Column.real("x_m", "x_m", 1, "x", row -> OptionalDouble.of(2.5))))
                .isEqualTo("2.5/1");
        assertThat(cell(Column.integer("x", "x", "x", row -> OptionalInt.of(3))))
                .isEqualTo("3");
        assertThat(cell(Column.text("x", "x", "x", row -> Optional.of("y")))).isEqualTo("y");
        assertThat(cell(Column.flag("x", "x", "x", row -> Optional.of(true)))).isEqualTo("true");
    }

    private static String cell(Column<String> column) {
        var text = new StringBuilder();
        column.put("row", new CellSink() {
            @Override
            public void empty() {
                text.append("empty");
            }

            @Override
            public void text(String value) {
                text.append(value);
            }

            @Override
            public void integer(long value) {
                text.append(value);
            }

            @Override
            public void real(double value, int decimals) {
                text.append(value).append('/').append(decimals);
            }

            @Override
            public void flag(boolean value) {
                text.append(value);
            }
        });
        return text.toString();
    }
}
