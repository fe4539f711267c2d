package org.spanroom.input.fields;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.Connection;

/** Tables of connections as people export them. */
class ConnectionsReaderTest {
    @TempDir
    Path folder;

    private List<Connection> read(String text) throws IOException {
        return read(text, StandardCharsets.UTF_8);
    }

    private List<Connection> read(String text, Charset charset) throws IOException {
        return ConnectionsReader.read(Files.writeString(folder.resolve("connections.csv"), text, charset));
    }

    private Connection row(String cells) throws IOException {
        return read("name,from,to,cables,value,needed_by,must\n" + cells + "\n").get(0);
    }

    @Test
    void aWholeRow() throws IOException {
        Connection row = row("Depot, V1 ,V2,3,\"1,250,000.50\",2027-03-31,Yes");

        assertThat(row.name()).isEqualTo("Depot");
        assertThat(row.from()).isEqualTo("V1");
        assertThat(row.to()).isEqualTo("V2");
        assertThat(row.cables()).isEqualTo(3);
        assertThat(row.value()).hasValue(1_250_000.5);
        assertThat(row.neededBy()).contains(LocalDate.of(2027, 3, 31));
        assertThat(row.must()).isTrue();
        assertThat(row.problem()).isEmpty();
        assertThat(row.line()).isEqualTo(2);
    }

    /** What German spreadsheets export: byte order mark, semicolons; and the old Windows code page. Columns in any order and case. */
    @Test
    void marksSeparatorsAndCodePages() throws IOException {
        String table = "To;From;Name;Cables;Needed by;Comment\r\nV2;V1;S\u00fcd;2;2027-01-02;x\r\n";

        for (Charset charset : List.of(StandardCharsets.UTF_8, Charset.forName("windows-1252"))) {
            assertThat(read(table, charset).get(0).name()).isEqualTo("S\u00fcd");
        }
        Connection row = read("\ufeff" + table).get(0);
        assertThat(row.name()).isEqualTo("S\u00fcd");
        assertThat(row.from()).isEqualTo("V1");
        assertThat(row.neededBy()).contains(LocalDate.of(2027, 1, 2));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u00a7',
            value = {
                "A,V1,V2,0,,,          | cables is '0', not a whole number from 1 to 10000",
                "A,V1,V2,10001,,,      | cables is '10001', not a whole number from 1 to 10000",
                "A,V1,V2,2.5,,,        | cables is '2.5', not a whole number from 1 to 10000",
                "A,V1,V2,-1,,,         | cables is '-1', not a whole number from 1 to 10000",
                "A,V1,V2,,,,           | cables is '', not a whole number from 1 to 10000",
                "A,V1,V2,2,-5,,        | value is '-5', not an amount of money of 0 or more",
                "A,V1,V2,2,12k,,       | value is '12k', not an amount of money of 0 or more",
                "A,V1,V2,2,100d,,      | value is '100d', not an amount of money of 0 or more",
                "A,V1,V2,2,NaN,,       | value is 'NaN', not an amount of money of 0 or more",
                "A,V1,V2,2,1e9,,       | value is '1e9', not an amount of money of 0 or more",
                "A,V1,V2,2,$5,,        | value is '$5', not an amount of money of 0 or more",
                "A,V1,V2,2,\"1,25\",,  | value is '1,25', not an amount of money of 0 or more",
                "A,V1,V2,2,100.000,,   | value is '100.000', which could mean two amounts; write it without a mark of thousands",
                "A,V1,V2,2,100,50,,no  | it has 8 cells, and the header 7. Put a cell that contains the separator into quotes (\"), or remove separators at the end of the row; needed_by is '50', not a date in the form 2027-03-31, in the years 1900 to 2200",
                "A,V1,V2,2,,31.3.2027, | needed_by is '31.3.2027', not a date in the form 2027-03-31, in the years 1900 to 2200",
                "A,V1,V2,2,,2027-02-30,| needed_by is '2027-02-30', not a date in the form 2027-03-31, in the years 1900 to 2200",
                "A,V1,V2,2,,-0044-03-15,| needed_by is '-0044-03-15', not a date in the form 2027-03-31, in the years 1900 to 2200",
                "A,V1,V2,2,,9999-12-31,| needed_by is '9999-12-31', not a date in the form 2027-03-31, in the years 1900 to 2200",
                "A,V1,V2,2,,,,         | it has 8 cells, and the header 7. Put a cell that contains the separator into quotes (\"), or remove separators at the end of the row",
                "A,V1,V2,2,,,perhaps   | must is 'perhaps', neither yes nor no",
                ",V1,V2,2,,,           | it has no name",
                "A,,V2,2,,,            | it needs two vaults, in the columns from and to",
                "A,V1                  | it needs two vaults, in the columns from and to; cables is '', not a whole number from 1 to 10000",
                "A,V1,V2,x,y,z,w       | cables is 'x', not a whole number from 1 to 10000; value is 'y', not an amount of money of 0 or more; needed_by is 'z', not a date in the form 2027-03-31, in the years 1900 to 2200; must is 'w', neither yes nor no"
            })
    void aRowThatCannotBeUsedIsKeptWithAllItsReasons(String cells, String expected) throws IOException {
        assertThat(row(cells).problem()).contains(expected);
    }

    @ParameterizedTest
    @CsvSource({"7, 7", "0, 0", "1234.5, 1234.5", "12., 12", "'1,000', 1000", "' 5 ', 5"})
    void amountsOfMoney(String text, double expected) throws IOException {
        assertThat(row("A,V1,V2,2,\"" + text + "\",,").value()).hasValue(expected);
    }

    /** Lines are those of the file, whatever is skipped; a name that was used before is the problem of the later row. */
    @Test
    void linesAndNamesThatRepeat() throws IOException {
        List<Connection> rows = read("name,from,to,cables\nA,V1,V2,1\n\n,,,\nB,V1,V2,1\nA,V2,V3,1");

        assertThat(rows).extracting(Connection::line).containsExactly(2L, 5L, 6L);
        assertThat(rows.get(0).problem()).isEmpty();
        assertThat(rows.get(2).problem()).contains("line 2 has a connection of the same name");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\u00a7',
            value = {
                "''                              | the table of connections is empty",
                "name,from,to,cables             | the table of connections has no rows",
                "name,from,to,cables~,,,~        | the table of connections has no rows",
                "name,form,to,cables~A,V1,V2,1   | the column 'from' is missing; is it 'form'?",
                "name,from,to,Cable~A,V1,V2,1    | the column 'cables' is missing; is it 'Cable'?",
                "from,to,cables~V1,V2,1          | the column 'name' is missing",
                "name,from,to,cables,valu~A,V1,V2,1,9       | it has no column 'value'; did you mean 'value' by 'valu'?",
                "name,from,to,cables,Need by~A,V1,V2,1,9    | it has no column 'needed_by'; did you mean 'needed_by' by 'Need by'?",
                "name,from,to,cables,need_by~A,V1,V2,1,9    | it has no column 'needed_by'",
                "name,from,to,cables,muts~A,V1,V2,1,yes     | it has no column 'must'; did you mean 'must' by 'muts'?",
                "name,from,to,cables,To~A,B,C,1,D| two columns are called to"
            })
    void aFileThatIsNoTableOfConnections(String text, String expected) {
        String table = text.equals("''") ? "" : text.replace('~', '\n');

        assertThatThrownBy(() -> read(table))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("connections.csv")
                .hasMessageContaining(expected)
                .hasMessageNotContaining("\n");
    }

    /** What a quote swallows is one row with a reason, and the others are read. */
    @Test
    void aQuoteThatIsNotClosed() throws IOException {
        List<Connection> rows = read("name,from,to,cables\nA,V1,V2,1\nB,\"V1,V2,1\nC,V1,V2,1\nD,V1,V2,1\n");

        assertThat(rows).extracting(Connection::name).containsExactly("A", "B");
        assertThat(rows.get(0).problem()).isEmpty();
        assertThat(rows.get(1).problem().orElseThrow()).startsWith("it and 2 rows after it are one; close the quote");
    }

    @Test
    void aRowWithoutEndIsRefusedInPlainWords() {
        assertThatThrownBy(() -> read("name,from,to,cables\nA,\"" + "x".repeat(1_100_000)))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("is a quote not closed?")
                .hasMessageNotContaining("Exception");
    }

    @Test
    void theSeparatorMayBeStatedAndWorkbooksAreNamed() throws IOException {
        Connection row = read("sep=;\r\nname;from;to;cables\r\nA;V1;V2;2\r\n").get(0);

        assertThat(row.problem()).isEmpty();
        assertThat(row.line()).isEqualTo(3);
        assertThatThrownBy(() -> read("PK\u0003\u0004xl")).hasMessageContaining("Save it as CSV");
    }

    /** Copied from a web page: an id must not differ from that of the layer in what cannot be seen. */
    @Test
    void blanksThatCannotBeSeenAreNoPartOfAName() throws IOException {
        Connection row = read("name,\u00a0from,to\u200b,cables\nA,V1\u00a0,\u202fV2,\u00a03\n")
                .get(0);

        assertThat(row.problem()).isEmpty();
        assertThat(row.from()).isEqualTo("V1");
        assertThat(row.to()).isEqualTo("V2");
        assertThat(row.cables()).isEqualTo(3);
    }

    @Test
    void aFileThatIsNotThereIsNamed() {
        assertThatThrownBy(() -> ConnectionsReader.read(folder.resolve("missing.csv")))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("missing.csv");
    }
}
