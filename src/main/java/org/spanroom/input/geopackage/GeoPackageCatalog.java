package org.spanroom.input.geopackage;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.input.layer.WorkLimit;
import org.spanroom.unpack.SqliteLibrary;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** What a GeoPackage says of itself in its own tables (OGC 12-128r19, clause 1.1), and the door to its database. */
public final class GeoPackageCatalog {
    private static final Set<Integer> APPLICATION_IDS = Set.of(0x47504B47, 0x47503130, 0x47503131); // GPKG, GP10, GP11
    private static final int WAL_VERSION_OFFSET = 18;
    private static final int BUSY_TIMEOUT_MS = 2_000;
    private static final int MOST_LAYERS = 10_000;

    /** The word of the standard, and the system of that name that some programs write instead. */
    private static final Pattern UNDEFINED = Pattern.compile("(?is)undefined|\\w+\\s*\\[\\s*\"undefined.*");

    private GeoPackageCatalog() {}

    /**
     * One layer of features, as gpkg_contents and gpkg_geometry_columns have it; or a table without shapes, whose other members say
     * nothing.
     */
    record Layer(String table, boolean hasShapes, String geometryColumn, String geometryType, int srsId) {}

    /** A column of a table. */
    record Column(String name, String declaredType, boolean primaryKey) {}

    /**
     * Opens the database for reading only, so that nothing is written beside it either: a file in write-ahead mode whose
     * log is not there is declared immutable, because SQLite would create one.
     */
    static Connection connect(Path file) throws IOException {
        if (!hasChangesBeside(file)) {
            DatabaseSize.demandWhole(file);
        }
        SqliteLibrary.load();
        var config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(BUSY_TIMEOUT_MS);
        String mode = inWriteAheadMode(file) && !hasLog(file) ? "immutable=1" : "mode=ro";
        String address = "jdbc:sqlite:" + file.toAbsolutePath().toUri() + "?" + mode;
        ViewNesting.Opener opener = () -> limited(DriverManager.getConnection(address, config.toProperties()), file);
        try {
            if (!ViewNesting.isBearable(opener)) {
                throw new InputException(
                        file, "its views are nested too deeply for SQLite", "Export the view as a table");
            }
            return opener.open();
        } catch (SQLException e) {
            throw unreadable(file, "it cannot be opened", e);
        }
    }

    private static Connection limited(Connection connection, Path file) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            WorkLimit.of(sizeWithLog(file)).impose(connection);
            statement.execute("PRAGMA trusted_schema=OFF");
            statement.execute("PRAGMA cell_size_check=ON");
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    /** Returns the layers of features in order of name, or ends with an exception if the database is no GeoPackage. */
    static List<Layer> layers(Path file, Connection connection) throws SQLException {
        Set<String> tables = tables(connection);
        for (String needed : List.of("gpkg_contents", "gpkg_geometry_columns", "gpkg_spatial_ref_sys")) {
            if (!tables.contains(needed)) {
                throw new InputException(
                        file,
                        "it is an SQLite database without the table " + needed
                                + ", so it is not a GeoPackage with features",
                        "Export it as GeoPackage");
            }
        }
        var layers = new ArrayList<Layer>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "SELECT c.table_name, g.column_name, g.geometry_type_name, g.srs_id FROM gpkg_contents c"
                                + " JOIN gpkg_geometry_columns g ON lower(g.table_name) = lower(c.table_name)"
                                + " WHERE c.data_type = 'features' LIMIT " + MOST_LAYERS)) {
            while (rows.next()) {
                layers.add(new Layer(text(rows, 1), true, text(rows, 2), text(rows, 3), rows.getInt(4)));
            }
        }
        layers.sort(Comparator.comparing(Layer::table).thenComparing(Layer::geometryColumn));
        return layers;
    }

    /** Returns the tables of attributes, which no layer of routes, vaults or zones can be. */
    static List<Layer> tablesWithoutShapes(Connection connection) throws SQLException {
        var tables = new ArrayList<Layer>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT table_name FROM gpkg_contents"
                        + " WHERE data_type = 'attributes' LIMIT " + MOST_LAYERS)) {
            while (rows.next()) {
                tables.add(new Layer(text(rows, 1), false, "", "", 0));
            }
        }
        return tables;
    }

    /** Notes a wrong application id, which does not keep us from reading. */
    static void checkApplicationId(Connection connection, LayerLog log) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA application_id")) {
            int id = row.next() ? row.getInt(1) : 0;
            if (!APPLICATION_IDS.contains(id)) {
                log.layer(
                        FindingCode.LAYER_ISSUE,
                        String.format(Locale.ROOT, "the application id of the file is 0x%08X, not GeoPackage's", id));
            }
        }
    }

    /** Returns the columns of a table or view in their order. */
    static List<Column> columns(Connection connection, String table) throws SQLException {
        var columns = new ArrayList<Column>();
        try (PreparedStatement statement =
                connection.prepareStatement("SELECT name, type, pk FROM pragma_table_info(?) ORDER BY cid")) {
            statement.setString(1, table);
            try (ResultSet rows = statement.executeQuery()) {
                while (rows.next()) {
                    columns.add(new Column(text(rows, 1), text(rows, 2).toUpperCase(Locale.ROOT), rows.getInt(3) == 1));
                }
            }
        }
        return columns;
    }

    /** Returns the definition of a reference system; empty for the two undefined ones and for one that is not in the table. */
    static Optional<String> crs(Connection connection, int srsId, LayerLog log) throws SQLException {
        if (srsId == 0 || srsId == -1) {
            return Optional.empty();
        }
        try (PreparedStatement statement = connection.prepareStatement(
                "SELECT organization, organization_coordsys_id, definition FROM gpkg_spatial_ref_sys WHERE srs_id = ?")) {
            statement.setInt(1, srsId);
            try (ResultSet row = statement.executeQuery()) {
                if (!row.next()) {
                    log.layer(
                            FindingCode.LAYER_ISSUE,
                            "the reference system " + srsId + " of the layer is not in the table gpkg_spatial_ref_sys");
                    return Optional.empty();
                }
                if (text(row, 1).equalsIgnoreCase("EPSG")) {
                    return Optional.of("EPSG:" + row.getInt(2));
                }
                String definition = text(row, 3).strip();
                return definition.isEmpty() || UNDEFINED.matcher(definition).matches()
                        ? Optional.empty()
                        : Optional.of(definition);
            }
        }
    }

    /** Returns the number of features that some programs write down beside the layer, or -1. */
    static long announcedCount(Connection connection, Layer layer, long fileSize) throws SQLException {
        if (!tables(connection).contains("gpkg_ogr_contents")) {
            return -1;
        }
        try (PreparedStatement statement = connection.prepareStatement(
                "SELECT feature_count FROM gpkg_ogr_contents WHERE lower(table_name) = lower(?)")) {
            statement.setString(1, layer.table());
            try (ResultSet row = statement.executeQuery()) {
                long count = row.next() ? row.getLong(1) : -1;
                return count >= 0 && count <= fileSize ? count : -1;
            }
        }
    }

    /** Returns a name as SQL has it, whatever is in it. */
    public static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }

    /** Returns the exception for a database that SQLite gives up on. */
    static InputException unreadable(Path file, String problem, SQLException cause) {
        // The low byte is the primary result code; the others say more closely what it was.
        int code = cause instanceof SQLiteException e ? e.getResultCode().code & 0xFF : 0;
        if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
            return new InputException(
                    file, "another program has locked it", "Close that program, or copy the file", cause);
        }
        if (code == SQLiteErrorCode.SQLITE_INTERRUPT.code) {
            return new InputException(
                    file,
                    problem + ": " + WorkLimit.of(sizeWithLog(file)).inWords(),
                    "Export the view as a table",
                    cause);
        }
        if ((code == SQLiteErrorCode.SQLITE_CANTOPEN.code || code == SQLiteErrorCode.SQLITE_READONLY.code)
                && hasChangesBeside(file)) {
            return new InputException(
                    file,
                    "it has changes in a -wal or -journal file beside it that cannot be read",
                    "Open it once with the program that wrote it, or copy both files to a writable folder",
                    cause);
        }
        return new InputException(
                file,
                problem
                        + (code == SQLiteErrorCode.SQLITE_CORRUPT.code
                                ? ": it is damaged"
                                : " (" + cause.getMessage() + ")"),
                "Check it with the program that wrote it, or export it again",
                cause);
    }

    private static Set<String> tables(Connection connection) throws SQLException {
        var tables = new TreeSet<String>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "SELECT lower(name) FROM sqlite_master WHERE type IN ('table', 'view')")) {
            while (rows.next()) {
                tables.add(text(rows, 1));
            }
        }
        return tables;
    }

    private static String text(ResultSet row, int column) throws SQLException {
        return Optional.ofNullable(row.getString(column)).orElse("");
    }

    private static boolean inWriteAheadMode(Path file) throws IOException {
        try (var access = new RandomAccessFile(file.toFile(), "r")) {
            access.seek(WAL_VERSION_OFFSET);
            int writeVersion = access.read();
            int readVersion = access.read();
            return writeVersion == 2 || readVersion == 2;
        }
    }

    private static boolean hasLog(Path file) {
        return sizeBeside(file, "-wal") > 0;
    }

    private static boolean hasChangesBeside(Path file) {
        return hasLog(file) || sizeBeside(file, "-journal") > 0;
    }

    /** Returns the bytes of a database and of the log of changes that are not in it yet. */
    static long sizeWithLog(Path file) {
        return sizeBeside(file, "") + sizeBeside(file, "-wal");
    }

    private static long sizeBeside(Path file, String ending) {
        try {
            return Files.size(file.resolveSibling(file.getFileName() + ending));
        } catch (IOException none) {
            return 0;
        }
    }
}
