package org.spanroom.input.layer;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Locale;
import org.sqlite.ProgressHandler;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteLimits;

/**
 * What SQLite may do for one layer, by the size of its file: a view can be a query that never ends, or makes texts and rows without
 * end out of nothing.
 *
 * <p>Counted are steps of SQLite's virtual machine, not seconds, so that a file is refused or read the same on every machine. A table
 * is read with about one step a byte; a second has some fifty million.
 */
public final class WorkLimit {
    private static final long STEPS = 200_000_000;
    private static final long STEPS_A_BYTE = 100;
    private static final int STEPS_A_CALL = 1_000_000;
    private static final long LEAST_ROWS = 100_000;
    private static final int LEAST_LENGTH = 1 << 20;
    private static final int MOST_LENGTH = 1 << 30;
    private static final int LONGEST_PATTERN = 100;
    private static final int LONGEST_SQL = 1_000_000;

    private final long bytes;
    private final long calls;

    private WorkLimit(long bytes) {
        this.bytes = bytes;
        this.calls = (STEPS + STEPS_A_BYTE * bytes) / STEPS_A_CALL + 1;
    }

    /** Returns the limit for a database of that many bytes. */
    public static WorkLimit of(long bytes) {
        return new WorkLimit(bytes);
    }

    /** Holds a connection to the limit from now on. */
    public void impose(Connection connection) throws SQLException {
        if (connection instanceof SQLiteConnection sqlite) {
            int longest = (int) Math.max(LEAST_LENGTH, Math.min(MOST_LENGTH, bytes));
            sqlite.setLimit(SQLiteLimits.SQLITE_LIMIT_LENGTH, longest);
            sqlite.setLimit(SQLiteLimits.SQLITE_LIMIT_SQL_LENGTH, LONGEST_SQL);
            sqlite.setLimit(SQLiteLimits.SQLITE_LIMIT_LIKE_PATTERN_LENGTH, LONGEST_PATTERN);
        }
        ProgressHandler.setHandler(connection, STEPS_A_CALL, new Countdown(calls));
    }

    /** Returns true if a layer has more rows than its file has bytes to hold them. */
    public boolean isExceededBy(long rows) {
        return rows > LEAST_ROWS && rows > bytes;
    }

    public String inWords() {
        return String.format(Locale.ROOT, "possibly an endless view (stopped after %,d million steps)", calls);
    }

    /** Lets SQLite go on until the calls are used up. */
    private static final class Countdown extends ProgressHandler {
        private long left;

        Countdown(long calls) {
            left = calls;
        }

        @Override
        protected int progress() {
            return left-- > 0 ? 0 : 1;
        }
    }
}
