package org.spanroom.output;

import java.sql.SQLException;
import java.util.Properties;
import org.spanroom.output.columns.SpanLayout;
import org.spanroom.output.table.Column;
import org.spanroom.parallel.BackgroundTask;
import org.spanroom.unpack.SqliteLibrary;
import org.sqlite.JDBC;

/**
 * Loads, beside other work, what writing results needs: the database's native library and the tables' columns take a good part
 * of the time of a small run when they are first used, and reading keeps one processor busy only.
 *
 * <p>Nothing depends on it, so that its failures do not matter: the code that needs the same thing reports them.
 */
public final class WarmUp {
    private WarmUp() {}

    /** Begins, and returns at once. */
    public static void begin() {
        BackgroundTask.run("warm-up", WarmUp::load);
    }

    private static void load() {
        try {
            SqliteLibrary.load();
            JDBC.createConnection("jdbc:sqlite::memory:", new Properties()).close();
        } catch (SQLException failure) {
            // The writer meets it too, and reports it.
        }
        ResultTables.ALL.forEach(
                entry -> entry.table(SpanLayout.PLAIN).columns().forEach(Column::name));
    }
}
