package org.spanroom.output.geopackage;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.spanroom.output.folder.OutputException;
import org.spanroom.output.style.LayerStyle;
import org.spanroom.output.style.LayerStyles;
import org.spanroom.output.table.Extent;
import org.spanroom.output.table.LayerOptions;
import org.spanroom.output.table.OneFileWriter;
import org.spanroom.output.table.OutputCrs;
import org.spanroom.output.table.RowWriter;
import org.spanroom.output.table.Table;
import org.spanroom.output.table.TableFile;
import org.spanroom.unpack.SqliteLibrary;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConfig;

/**
 * Writes layers and tables into one GeoPackage, OGC 12-128r18 (version 1.3), with a spatial index for each layer.
 * Where the options say what the file is about, it also has the names and meanings of all columns, that record, and styles.
 *
 * <p>SQLite itself creates the tables and writes what the standard wants to know of them; rows and indexes go into the file
 * past it, as finished pages. There is no journal: what is left after a failure is worthless, and its owner must delete it.
 * Several layers may be open at once, from one thread.
 */
public final class GeoPackageWriter implements AutoCloseable {
    /** "GPKG" in ASCII (requirement 2). */
    private static final int APPLICATION_ID = 0x47504B47;
    /** Version 1.3, since readers refuse or warn at later ones, and nothing later is needed here. */
    private static final int USER_VERSION = 10300;
    /** From as many rows on, larger pages make the file smaller. */
    private static final int MANY_ROWS = 10_000;

    private final Path file;
    private final LayerOptions options;
    private final OutputCrs frame;
    private final int pageBytes;
    private final SqlitePages pages;
    private final List<GeoPackageLayer> layers = new ArrayList<>();

    /** A piece of work in the database, while SQLite has it open. */
    private interface Work {
        void in(Connection connection) throws SQLException;
    }

    /** Begins a file of layers with few rows. */
    public GeoPackageWriter(Path file, LayerOptions options) {
        this(file, options, 0);
    }

    /** @param rows about how many rows the largest layer will have */
    public GeoPackageWriter(Path file, LayerOptions options, long rows) {
        this.file = file;
        this.pageBytes = rows < MANY_ROWS ? SqlitePages.SMALL_PAGE_BYTES : SqlitePages.LARGE_PAGE_BYTES;
        this.options = options;
        this.frame = options.frame();
        withSqlite(connection -> {
            // Not settings of the connection: these write the first page before it has learned how large pages are.
            execute(
                    connection,
                    List.of("PRAGMA application_id = " + APPLICATION_ID, "PRAGMA user_version = " + USER_VERSION));
            GeoPackageSchema.create(connection, frame);
        });
        this.pages = new SqlitePages(file, pageBytes);
    }

    /** Begins a layer, or a plain table if it has no shapes. */
    public <R> RowWriter<R> layer(Table<R> table) {
        return new OneFileWriter<>(begin(table), table, frame);
    }

    /** Begins a layer whose rows come in batches. */
    public TableFile begin(Table<?> table) {
        pages.settle();
        var layer = new GeoPackageLayer(table, frame);
        withSqlite(connection -> layer.create(connection, pages));
        pages.recount();
        layers.add(layer);
        return layer;
    }

    /** Returns how many shapes have no place in the reference system of the layers; their rows have no geometry. */
    public long shapesWithoutPlace() {
        return layers.stream().mapToLong(GeoPackageLayer::shapesWithoutPlace).sum();
    }

    /** Returns the bounds of all layers together, in their reference system. */
    public Extent extent() {
        var all = new Extent();
        layers.forEach(layer -> all.add(layer.extent()));
        return all;
    }

    @Override
    public void close() {
        try (pages) {
            pages.settle();
        }
        withSqlite(connection -> {
            for (GeoPackageLayer layer : layers) {
                layer.register(connection, options.writtenAt());
            }
            if (options.about().isPresent()) {
                explain(connection, options.about().get());
            }
        });
    }

    /** Adds what makes a desktop GIS show the file well, and what it is from. */
    private void explain(Connection connection, String about) throws SQLException {
        List<? extends Table<?>> tables =
                layers.stream().map(GeoPackageLayer::table).toList();
        SortedMap<String, LayerStyle> styles = new TreeMap<>();
        tables.forEach(table -> LayerStyles.find(table).ifPresent(style -> styles.put(table.name(), style)));
        SchemaExtension.write(connection, tables);
        MetadataExtension.write(connection, about, options.writtenAt());
        StyleTable.write(connection, styles, options.writtenAt());
    }

    private void withSqlite(Work work) {
        try (Connection connection = open()) {
            work.in(connection);
            connection.commit();
        } catch (SQLException failure) {
            throw failed(failure);
        }
    }

    private Connection open() throws SQLException {
        SqliteLibrary.load();
        var config = new SQLiteConfig();
        config.setPageSize(pageBytes);
        config.setJournalMode(SQLiteConfig.JournalMode.OFF);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        config.setLockingMode(SQLiteConfig.LockingMode.EXCLUSIVE);
        // As a URI, in which marks that have a meaning in one are escaped.
        String uri = "jdbc:sqlite:file:" + file.toUri().getRawPath();
        Connection opened = JDBC.createConnection(uri, config.toProperties());
        opened.setAutoCommit(false);
        return opened;
    }

    /** Returns what a failure of the database means for the user. */
    private OutputException failed(SQLException failure) {
        String reason = String.valueOf(failure.getMessage());
        if (OutputException.isFullDisk(reason) || reason.contains("SQLITE_FULL")) {
            return OutputException.fullDisk(file, failure);
        }
        return new OutputException(
                file, "cannot be written (" + reason + ")", "Check the disk and the folder.", failure);
    }

    /** Runs statements one after another. */
    static void execute(Connection connection, List<String> statements) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.executeUpdate(sql);
            }
        }
    }
}
