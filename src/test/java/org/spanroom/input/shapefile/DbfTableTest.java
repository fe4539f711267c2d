package org.spanroom.input.shapefile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.spanroom.input.ShapefileBytes.row;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.ShapefileBytes;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.testing.OpenData;

class DbfTableTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @CsvSource(
            nullValues = "null",
            ignoreLeadingAndTrailingWhitespace = false,
            value = {
                "N 8 0,      42,Long 42",
                "N 8 0,-4      ,Long -4",
                "N 8 0,        ,null",
                "N 8 0,********,null",
                "N 8 0,   **   ,null",
                "N 8 0,*4      ,String *4",
                "N 8 0,12.5    ,Double 12.5",
                "N 8 0,1e3     ,Double 1000.0",
                "N 8 0,-       ,String -",
                "N 8 0,4x      ,String 4x",
                "N 8 0,1d      ,String 1d",
                "N 19 0,9223372036854775807,Double 9.223372036854776E18",
                "N 18 0,-99999999999999999,Long -99999999999999999",
                "N 8 2,   42.00,Double 42.0",
                "F 8 0,      42,Double 42.0",
                "F 8 3,     nan,null",
                "F 8 3,    1e99,Double 1.0E99",
                "L 1 0,T,Boolean true",
                "L 1 0,n,Boolean false",
                "L 1 0,?,null",
                "D 8 0,20240229,String 2024-02-29",
                "D 8 0,        ,null",
                "D 8 0,00000000,null",
                "D 8 0,2024-2-9,String 2024-2-9",
                "C 8 0,  two   ,String   two",
                "C 8 0,        ,null",
                "M 10 0,       123,null",
                "Q 4 0,odd ,String odd"
            })
    void cellsBecomeValuesOfTheirType(String column, String cell, String expected) throws IOException {
        Object value = values(ShapefileBytes.dbf(3, List.of("F " + column), row(cell)))
                .get(0)
                .get(0);

        assertThat(value == null ? null : value.getClass().getSimpleName() + " " + value)
                .isEqualTo(expected);
    }

    @Test
    void binaryTypesOfLaterDialectsAreRead() throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
        byte[] whole = Arrays.copyOf(bytes.putInt(0, -5).array(), 4);
        byte[] real = bytes.putDouble(0, 0.1).array().clone();
        byte[] money = bytes.putLong(0, -123_456).array().clone();
        byte[] time = bytes.putInt(0, 2_451_545).putInt(4, 43_200_000).array().clone(); // J2000: noon of 1 January 2000

        assertThat(values(ShapefileBytes.dbf(
                        3,
                        List.of("I I 4 0", "O O 8 0", "B B 8 0", "Y Y 8 0", "T T 8 0"),
                        new byte[][] {whole, real, real, money, time})))
                .containsExactly(List.of(-5L, 0.1, 0.1, -12.3456, "2000-01-01T12:00"));
    }

    @Test
    void longTextFieldKeepsTheHighByteOfItsLengthWhereOthersHaveDecimals() throws IOException {
        String text = "x".repeat(300);

        assertThat(values(ShapefileBytes.dbf(3, List.of("T C 300 0", "N N 3 0"), row(text, "7"))))
                .containsExactly(List.of(text, 7L));
    }

    @ParameterizedTest
    @CsvSource({
        "UTF-8, UTF-8",
        "utf8, UTF-8",
        "65001, UTF-8",
        "1251, windows-1251",
        "CP1251, windows-1251",
        "ANSI 1252, windows-1252",
        "ISO-8859-15, ISO-8859-15",
        "ISO 8859-1, ISO-8859-1",
        "88592, ISO-8859-2",
        "8859_5, ISO-8859-5",
        "OEM 850, IBM850",
        "932, MS932",
        "Big5, Big5",
        "GBK, GBK",
        "UTF_8, UTF-8",
        "utf 8, UTF-8",
        "Latin-1, ISO-8859-1",
        "LATIN 9, ISO-8859-15",
        "WIN1250, windows-1250",
        "Windows-1253, windows-1253",
        "windows 1252, windows-1252",
        "EUC_KR, EUC-KR",
        "KOI8-R, KOI8-R",
        "Macintosh, x-MacRoman",
        "LDID/201, windows-1251"
    })
    void namedEncodingsAreKnown(String name, String charset) {
        byte[] bytes = {(byte) 0xC3, (byte) 0xA4, 'a', (byte) 0xB1, (byte) 0xA1};

        assertThat(DbfEncoding.named(name).orElseThrow().decode(bytes, 0, bytes.length))
                .isEqualTo(new String(bytes, Charset.forName(charset)));
    }

    @ParameterizedTest
    @CsvSource({"''", "no such thing", "LDID/0", "999"})
    void unknownEncodingsAreNotGuessedAt(String name) {
        assertThat(DbfEncoding.named(name)).isEmpty();
    }

    @Test
    void unstatedEncodingIsUtf8WhereValidAndWindows1252Elsewhere() {
        DbfEncoding encoding = DbfEncoding.unstated();
        assertThat(encoding.decode(new byte[] {'a', 'b'}, 0, 2)).isEqualTo("ab");
        assertThat(encoding.guessed()).isFalse();

        assertThat(encoding.decode(new byte[] {(byte) 0xC3, (byte) 0xA4}, 0, 2)).isEqualTo("ä");
        assertThat(encoding.decode(new byte[] {(byte) 0xE4, (byte) 0x80}, 0, 2)).isEqualTo("ä€");
        assertThat(encoding.guessed()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({
        "8, 0, header shorter than itself",
        "8, 30000, header longer than the file",
        "10, 0, rows without a byte",
        "10, 3, rows shorter than their fields",
        "10, 600, rows longer than their fields and the file",
        "4, 0, no row where there is room for one"
    })
    void headerThatCannotBeIsRefused(int at, short value, String why) throws IOException {
        byte[] dbf = ShapefileBytes.dbf(3, List.of("A C 5 0"), row("x"));
        Path file = Files.write(
                folder.resolve("a.dbf"),
                ByteBuffer.wrap(dbf)
                        .order(ByteOrder.LITTLE_ENDIAN)
                        .putShort(at, value)
                        .array());

        assertThatThrownBy(() -> open(file)).as(why).isInstanceOf(InputException.class);
    }

    /** Rows would begin in the midst of others, and every value would be wrong. */
    @ParameterizedTest
    @CsvSource({"8, 500, 100", "10, 7, 40"})
    void headerThatMovesTheRowsIsRefused(int at, short value, int rows) throws IOException {
        byte[][][] cells = Collections.nCopies(rows, row("x")).toArray(byte[][][]::new);
        byte[] dbf = ShapefileBytes.dbf(3, List.of("A C 5 0"), cells);
        assertThat(values(dbf)).hasSize(rows);
        ByteBuffer.wrap(dbf).order(ByteOrder.LITTLE_ENDIAN).putShort(at, value);
        Path file = Files.write(folder.resolve("a.dbf"), dbf);

        assertThatThrownBy(() -> open(file))
                .isInstanceOf(InputException.class)
                .hasMessageContaining("which does not match its size and its fields, 6 bytes in each row");
    }

    @Test
    void rowCountIsHeldAgainstTheFile() throws IOException {
        byte[] dbf = ShapefileBytes.dbf(3, List.of("A C 5 0"), row("x"), row("y"));
        Path file = Files.write(
                folder.resolve("a.dbf"),
                ByteBuffer.wrap(dbf)
                        .order(ByteOrder.LITTLE_ENDIAN)
                        .putInt(4, -1)
                        .array());

        try (DbfTable table = open(file)) {
            assertThat(table.rows()).isEqualTo(2);
        }
    }

    /** Damaged and odd tables of GDAL's autotest suite (MIT); what is in them as GDAL's ogrinfo 3.6.2 shows it. */
    @Test
    void oddTablesOfAPublicCollectionAreRead() throws IOException {
        Path odd = OpenData.at("odd-files/gdal/shp");

        assertThat(values(odd.resolve("chinese.dbf")).get(0)).contains("中国");
        assertThat(values(odd.resolve("date_empty_string.dbf")).get(0)).containsOnlyNulls();
        assertThat(values(odd.resolve("nan.dbf")).get(0)).containsNull();
        assertThat(values(odd.resolve("padding_after_field_defns.dbf"))).isNotEmpty();
        assertThat(values(odd.resolve("weird_header_length.dbf"))).isNotEmpty();
        assertThat(values(odd.resolve("sort_test.dbf"))).hasSizeGreaterThan(10);
        assertThat(values(odd.resolve("water_main_dist.dbf")).get(0)).contains(202L, "PVC", "04/25/1989");
        assertThat(values(odd.resolve("facility_surface_dd.dbf"))).isNotEmpty();
    }

    private List<List<Object>> values(byte[] dbf) throws IOException {
        return values(Files.write(folder.resolve("a.dbf"), dbf));
    }

    private static List<List<Object>> values(Path file) throws IOException {
        try (DbfTable table = open(file)) {
            var rows = new ArrayList<List<Object>>();
            for (long row = 0; row < table.rows(); row++) {
                var values = new ArrayList<Object>();
                for (DbfField field : table.fields()) {
                    values.add(field.value(table.row(row), table.encoding()));
                }
                rows.add(values);
            }
            return rows;
        }
    }

    private static DbfTable open(Path file) throws IOException {
        return DbfTable.open(file, Optional.empty(), new LayerLog("a", new FindingLog()));
    }
}
