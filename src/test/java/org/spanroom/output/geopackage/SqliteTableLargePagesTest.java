package org.spanroom.output.geopackage;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;
import org.spanroom.output.Sample;
import org.spanroom.output.table.LayerOptions;

/** The same trees on the pages of a file with many rows. */
class SqliteTableLargePagesTest extends SqliteTableTest {
    @Override
    int pageBytes() {
        return SqlitePages.LARGE_PAGE_BYTES;
    }

    @Test
    void aFileOfManyRowsHasLargePagesAndOneOfFewSmallOnes() throws SQLException {
        assertThat(pageBytes(9_999)).isEqualTo(SqlitePages.SMALL_PAGE_BYTES);
        assertThat(pageBytes(10_000)).isEqualTo(SqlitePages.LARGE_PAGE_BYTES);
    }

    private int pageBytes(long rows) throws SQLException {
        Path file = folder.resolve(rows + ".gpkg");
        try (var gpkg = new GeoPackageWriter(file, LayerOptions.lonLat(Sample.WRITTEN), rows);
                var layer = gpkg.layer(Sample.LINES)) {
            layer.write(Sample.of("x", -30, 40, -29.9, 40));
        }
        try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                var statement = connection.createStatement()) {
            assertThat(statement.executeQuery("PRAGMA integrity_check").getString(1))
                    .isEqualTo("ok");
            return statement.executeQuery("PRAGMA page_size").getInt(1);
        }
    }
}
