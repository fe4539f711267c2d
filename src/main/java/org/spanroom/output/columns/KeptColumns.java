package org.spanroom.output.columns;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.spanroom.model.rank.RankedSpan;
import org.spanroom.output.table.Column;

/**
 * The columns of the owner's own fields that the config keeps. Their names begin with {@code src_}, as none of ours does, so that the
 * two never meet; what a name may not hold becomes {@code _}, and names that are then the same are numbered.
 */
public final class KeptColumns {
    /** What the names of these columns begin with, in every format. */
    public static final String PREFIX = "src_";

    private static final int LONGEST = 60;
    private static final int LONGEST_SHORT = 10;

    private KeptColumns() {}

    /** Returns a column for each field, in the order of the config. */
    public static List<Column<RankedSpan>> all(List<String> fields) {
        Set<String> names = new HashSet<>();
        Set<String> shortNames = new HashSet<>();
        List<Column<RankedSpan>> columns = new ArrayList<>();
        for (int field = 0; field < fields.size(); field++) {
            int place = field;
            String plain = PREFIX + plain(fields.get(field));
            columns.add(Column.text(
                    unused(plain, LONGEST, names),
                    unused(plain, LONGEST_SHORT, shortNames),
                    "The field '" + fields.get(field)
                            + "' of the routes, as recorded; of a span of several routes the distinct values, joined by ;.",
                    row -> value(row, place)));
        }
        return columns;
    }

    private static String value(RankedSpan row, int place) {
        List<String> kept = row.span().duct().kept();
        return place < kept.size() ? kept.get(place) : "";
    }

    private static String plain(String field) {
        String plain = field.strip().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_");
        return plain.equals("_") ? "field" : plain;
    }

    /** Returns the name, cut to a length; with a number at its end where another field has that name. */
    private static String unused(String plain, int longest, Set<String> used) {
        String name = plain.substring(0, Math.min(plain.length(), longest));
        for (int number = 2; !used.add(name); number++) {
            String end = Integer.toString(number);
            name = plain.substring(0, Math.min(plain.length(), longest - end.length())) + end;
        }
        return name;
    }
}
