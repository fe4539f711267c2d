package org.spanroom.input.geopackage;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.parallel.BackgroundTask;

/**
 * How deep the queries of a database's views are nested, in themselves and in one another.
 *
 * <p>SQLite calls itself for each level, on the stack of the thread that asks, and has no limit of its own: at 1600 levels
 * and a stack of 1 MiB the whole process dies (measured, SQLite 3.51). Each SELECT and each bracket is treated as a level, which is never
 * too few.
 */
final class ViewNesting {
    private static final int DEEPEST = 500;
    private static final int MOST_VIEWS = 1000;
    private static final int MOST_CHARACTERS = 2_000_000;
    private static final long WIDE_STACK_BYTES = 256L << 20;

    private final Map<String, String> views = new TreeMap<>();
    private final Map<String, Integer> depths = new TreeMap<>();
    private int deepestOther;
    private long characters;

    private ViewNesting() {}

    /** Opens a connection, which is not ours to close. */
    interface Opener {
        Connection open() throws SQLException;
    }

    /**
     * Returns true if SQLite can be asked for any of the views. The definitions themselves are parsed on a stack that is wide enough
     * for any.
     */
    static boolean isBearable(Opener opener) throws SQLException {
        var nesting = new ViewNesting();
        Optional<SQLException> failure = BackgroundTask.start("views", WIDE_STACK_BYTES, () -> nesting.read(opener))
                .await();
        if (failure.isPresent()) {
            throw failure.get();
        }
        return nesting.deepestOther <= DEEPEST
                && nesting.views.size() <= MOST_VIEWS
                && nesting.characters <= MOST_CHARACTERS
                && nesting.views.keySet().stream().allMatch(view -> nesting.depth(view) <= DEEPEST);
    }

    private Optional<SQLException> read(Opener opener) {
        try (Connection connection = opener.open();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "SELECT type, name, sql FROM sqlite_master WHERE type IN ('view', 'trigger')")) {
            while (rows.next()) {
                String sql = Optional.ofNullable(rows.getString(3)).orElse("").toLowerCase(Locale.ROOT);
                if (rows.getString(1).equals("view")) {
                    characters += sql.length();
                    views.put(rows.getString(2).toLowerCase(Locale.ROOT), sql);
                } else {
                    deepestOther = Math.max(deepestOther, levels(sql));
                }
            }
            return Optional.empty();
        } catch (SQLException e) {
            return Optional.of(e);
        }
    }

    /** The levels of a view and of the deepest view that it speaks of; of views in a circle SQLite complains itself. */
    private int depth(String view) {
        Integer known = depths.putIfAbsent(view, 0);
        if (known != null) {
            return known;
        }
        String sql = views.getOrDefault(view, "");
        int own = levels(sql);
        int below = 0;
        for (String other : views.keySet()) {
            if (own + below <= DEEPEST && !other.equals(view) && sql.contains(other)) {
                below = Math.max(below, depth(other));
            }
        }
        depths.put(view, own + below);
        return own + below;
    }

    private static int levels(String sql) {
        int deepest = 0;
        int open = 0;
        int selects = 0;
        for (int at = 0; at < sql.length(); at++) {
            char c = sql.charAt(at);
            open += c == '(' ? 1 : c == ')' ? -1 : 0;
            deepest = Math.max(deepest, open);
            selects += c == 's' && sql.startsWith("select", at) ? 1 : 0;
        }
        return deepest + selects;
    }
}
