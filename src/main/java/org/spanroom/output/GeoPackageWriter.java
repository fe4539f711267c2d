package org.spanroom.output;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import org.sqlite.JDBC;
import org.sqlite.SQLiteConfig;

/**
 * Writes layers and tables into one GeoPackage, OGC 12-128r18 (version 1.3), with a spatial index for each layer.
 *
 * <p>The file is written in one transaction without a journal: what is left after a failure is worthless, and its owner
 * must delete it. Several layers may be open at once, from one thread.
 */
public final class GeoPackageWriter implements AutoCloseable {
    /** "GPKG" in ASCII (requirement 2). */
    private static final int APPLICATION_ID = 0x47504B47;
    /** Version 1.3, since readers refuse or warn at later ones, and nothing later is needed here. */
    private static final int USER_VERSION = 10300;

    private static final int CACHE_KIB = 64 * 1024;

    private final Path file;
    private final LayerOptions options;
    private final Frame frame;
    private final Connection connection;

    public GeoPackageWriter(Path file, LayerOptions options) {
        this.file = file;
        this.options = options;
        this.frame = options.frame();
        this.connection = open(file);
        try {
            GeoPackageSchema.create(connection, frame);
        } catch (SQLException failure) {
            throw failed(failure);
        }
    }

    /** Begins a layer, or a plain table if it has no shapes. */
    public <R> RowWriter<R> layer(Table<R> table) {
        try {
            return new GeoPackageLayer<>(this, connection, table);
        } catch (SQLException failure) {
            throw failed(failure);
        }
    }

    /** Returns how many shapes have no place in the reference system of the layers; their rows have no geometry. */
    public long shapesWithoutPlace() {
        return frame.shapesWithoutPlace();
    }

    Frame frame() {
        return frame;
    }

    /** Returns the time of the last change, as gpkg_contents wants it. */
    String lastChange() {
        return GeoPackageSchema.timestamp(options.writtenAt());
    }

    @Override
    public void close() {
        try (connection) {
            connection.commit();
        } catch (SQLException failure) {
            throw failed(failure);
        }
    }

    /** Returns what a failure of the database means for the user. */
    OutputException failed(SQLException failure) {
        String reason = String.valueOf(failure.getMessage());
        if (OutputException.isFullDisk(reason) || reason.contains("SQLITE_FULL")) {
            return OutputException.fullDisk(file, failure);
        }
        return new OutputException(
                file, "cannot be written (" + reason + ")", "Check the disk and the folder.", failure);
    }

    private Connection open(Path path) {
        var config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.OFF);
        config.setSynchronous(SQLiteConfig.SynchronousMode.OFF);
        config.setLockingMode(SQLiteConfig.LockingMode.EXCLUSIVE);
        config.setTempStore(SQLiteConfig.TempStore.MEMORY);
        config.setCacheSize(-CACHE_KIB);
        config.setApplicationId(APPLICATION_ID);
        config.setUserVersion(USER_VERSION);
        try {
            // As a URI, in which marks that have a meaning in one are escaped.
            String uri = "jdbc:sqlite:file:" + path.toUri().getRawPath();
            Connection opened = JDBC.createConnection(uri, config.toProperties());
            opened.setAutoCommit(false);
            return opened;
        } catch (SQLException failure) {
            throw failed(failure);
        }
    }
}
