package org.spanroom.output.geopackage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Tables made page by page, judged by SQLite itself. */
class SqliteTableTest {
    @TempDir
    Path folder;

    private Path file;

    int pageBytes() {
        return SqlitePages.SMALL_PAGE_BYTES;
    }

    @ParameterizedTest(name = "{0} rows, at most {1} children")
    @CsvSource({"0, 256", "1, 256", "500, 256", "1000, 3", "1001, 3", "5000, 4", "300000, 256"})
    void treesOfAnyDepthAreSound(int rows, int mostChildren) throws SQLException {
        int root = createTable();
        try (var pages = new SqlitePages(file, pageBytes())) {
            var table = new SqliteTable(pages, root, mostChildren);
            IntStream.rangeClosed(1, rows).forEach(row -> table.add(row, record("row " + row, row)));
            table.close();
            pages.settle();
        }

        assertThat(one("PRAGMA integrity_check")).isEqualTo("ok");
        assertThat(one("SELECT count(*) FROM t")).isEqualTo(Integer.toString(rows));
        assertThat(one("SELECT count(*) FROM t WHERE label = 'row ' || id AND number = id"))
                .isEqualTo(Integer.toString(rows));
        assertThat(one("SELECT label FROM t WHERE id = " + rows)).isEqualTo(rows == 0 ? "" : "row " + rows);
    }

    /** Sizes around the places where a record begins to overflow and where its last overflow page is just full. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void recordsOfAnySizeComeBack(long seed) throws SQLException {
        var random = new Random(seed);
        int page = pageBytes();
        int[] around = {0, 127, 128, page / 8 - 23, page - 35, page - 4, 2 * page - 39, 3 * page - 43, 25 * page};
        int root = createTable();
        var texts = new ArrayList<String>();
        try (var pages = new SqlitePages(file, pageBytes())) {
            var table = new SqliteTable(pages, root);
            for (int row = 1; row <= 60; row++) {
                int size = Math.max(0, around[random.nextInt(around.length)] + random.nextInt(40) - 20);
                texts.add((row % 3 == 0 ? "é" : "x").repeat(size));
                table.add(row, record(texts.get(row - 1), row));
            }
            table.close();
            pages.settle();
        }

        assertThat(one("PRAGMA integrity_check")).isEqualTo("ok");
        for (int row = 1; row <= 60; row++) {
            assertThat(one("SELECT label FROM t WHERE id = " + row)).isEqualTo(texts.get(row - 1));
        }
    }

    @ParameterizedTest
    @ValueSource(
            longs = {
                0,
                1,
                -1,
                2,
                127,
                128,
                -128,
                -129,
                32767,
                32768,
                -32768,
                -32769,
                8388607,
                8388608,
                -8388609,
                2147483647L,
                2147483648L,
                -2147483649L,
                140737488355327L,
                140737488355328L,
                -140737488355329L,
                Long.MAX_VALUE,
                Long.MIN_VALUE
            })
    void wholeNumbersOfEveryWidthComeBack(long number) throws SQLException {
        int root = createTable();
        try (var pages = new SqlitePages(file, pageBytes())) {
            var table = new SqliteTable(pages, root);
            table.add(7, record("x", number));
            table.close();
            pages.settle();
        }

        assertThat(one("SELECT number FROM t")).isEqualTo(Long.toString(number));
        assertThat(one("SELECT typeof(number) || typeof(real) || typeof(data) || typeof(none) FROM t"))
                .isEqualTo("integerrealblobnull");
        assertThat(one("SELECT real || hex(data) FROM t")).isEqualTo("-0.500FF");
        assertThat(one("PRAGMA integrity_check")).isEqualTo("ok");
    }

    @Test
    void sqliteMayGoOnWritingWhereWeStopped() throws SQLException {
        int root = createTable();
        try (var pages = new SqlitePages(file, pageBytes())) {
            var table = new SqliteTable(pages, root);
            IntStream.rangeClosed(1, 20_000).forEach(row -> table.add(row, record("row " + row, row)));
            table.close();
            pages.settle();
        }

        execute("DELETE FROM t WHERE id % 7 = 0");
        execute("INSERT INTO t(label, number) SELECT label || label, number FROM t");
        execute("UPDATE t SET label = printf('%500d', id) WHERE id % 5 = 0");

        assertThat(one("PRAGMA integrity_check")).isEqualTo("ok");
        assertThat(one("SELECT count(*) FROM t")).isEqualTo(Integer.toString(2 * (20_000 - 2857)));
    }

    /** SQLite never uses the page at 1 GiB ("Database File Format", section 1.6); the file below it is a hole here. */
    @ParameterizedTest(name = "record of {0} bytes on the smallest pages, {1} pages before the lock page")
    @CsvSource({"100, 1", "3000, 3", "20000, 3", "20000, 4", "20000, 5", "9000, 2"})
    void thePageOfTheLocksIsLeftOut(int size, int pagesBefore) throws SQLException, IOException {
        int root = createTable();
        int lockPage = (1 << 30) / pageBytes() + 1;
        String label = "x".repeat(size * (pageBytes() / 4096));
        try (var hole = new RandomAccessFile(file.toFile(), "rw")) {
            hole.setLength((lockPage - 1L - pagesBefore) * pageBytes());
        }
        try (var pages = new SqlitePages(file, pageBytes())) {
            var table = new SqliteTable(pages, root);
            IntStream.rangeClosed(1, 30).forEach(row -> table.add(row, record(label, row)));
            table.close();
            pages.settle();
        }

        assertThat(one("SELECT count(*) FROM t WHERE label = '" + label + "'")).isEqualTo("30");
        // The check finds the pages in the hole unused, but none that is used twice, wrong or missing.
        assertThat(all("PRAGMA integrity_check(1000000)"))
                .allSatisfy(
                        complaint -> assertThat(complaint).containsPattern("^(\\*\\*\\*.*\n)?Page \\d+: never used"));
    }

    @Test
    void rowsMustAscend() throws SQLException {
        int root = createTable();
        try (var pages = new SqlitePages(file, pageBytes())) {
            var table = new SqliteTable(pages, root);
            table.add(5, record("x", 1));

            assertThatThrownBy(() -> table.add(5, record("x", 1))).isInstanceOf(IllegalArgumentException.class);
        }
    }

    static LongStream seeds() {
        return LongStream.range(0, 10);
    }

    private int createTable() throws SQLException {
        file = folder.resolve("t.db");
        execute(
                "CREATE TABLE t (id INTEGER PRIMARY KEY, label TEXT, number INTEGER, real DOUBLE, data BLOB, none TEXT)");
        return Integer.parseInt(one("SELECT rootpage FROM sqlite_master WHERE name = 't'"));
    }

    private static SqliteRecord record(String label, long number) {
        var record = new SqliteRecord();
        record.nothing();
        record.text(label);
        record.integer(number);
        record.real(-0.5);
        record.blob(new byte[] {0, -1});
        record.nothing();
        return record;
    }

    private void execute(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file + "?page_size=" + pageBytes());
                var statement = connection.createStatement()) {
            statement.executeUpdate(sql);
        }
    }

    private List<String> all(String sql) throws SQLException {
        var answers = new ArrayList<String>();
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            while (rows.next()) {
                answers.add(rows.getString(1));
            }
        }
        return answers;
    }

    private String one(String sql) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var statement = connection.createStatement();
                var rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getString(1) : "";
        }
    }
}
