package org.spanroom.output.table;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.model.UsUnit;

/**
 * Short names of columns for people, made of the columns' own names: words with blanks between them, and the symbol of the unit behind a
 * comma, as "length, m" of {@code length_m}. Units that are words stay words: "labor hours", "score points".
 */
public final class ColumnAliases {
    private static final String OWN_FIELD = "src_";
    private static final String PER = " per ";

    /** The symbols of units by the last words of names; those of pairs of systems follow from the pairs. */
    private static final Map<String, String> SYMBOLS = symbols();

    private static final int MOST_WORDS_OF_A_UNIT = 3;

    /** Words that are not written as in the name. */
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("a", "A"),
            Map.entry("b", "B"),
            Map.entry("co2e", "CO2e"),
            Map.entry("id", "ID"),
            Map.entry("lat", "latitude"),
            Map.entry("lon", "longitude"),
            Map.entry("pct", "percent"),
            Map.entry("sdr", "SDR"),
            Map.entry("src", "source"),
            Map.entry("us", "US"),
            Map.entry("wkt", "WKT"));

    private ColumnAliases() {}

    /**
     * Returns the aliases of a table's columns, in their order. Two of them are never the same: a later one has its column's name in
     * parentheses then.
     *
     * @param taken aliases that no column may have
     */
    public static List<String> of(Table<?> table, Set<String> taken) {
        Set<String> used = new HashSet<>(taken);
        List<String> aliases = new ArrayList<>();
        for (Column<?> column : table.columns()) {
            String alias = of(column.name(), column.type());
            aliases.add(used.add(alias) ? alias : alias + " (" + column.name() + ")");
        }
        return aliases;
    }

    /** Returns the alias of a column: only a number's name has a unit at its end, and the unit of an owner's field is not known. */
    static String of(String name, Column.Type type) {
        List<String> words = List.of(name.split("_"));
        boolean isNumber = type == Column.Type.REAL || type == Column.Type.INTEGER;
        if (!isNumber || name.startsWith(OWN_FIELD)) {
            return plain(words);
        }
        for (int size = Math.min(MOST_WORDS_OF_A_UNIT, words.size() - 1); size > 0; size--) {
            int start = words.size() - size;
            String unit = String.join("_", words.subList(start, words.size()));
            Optional<String> symbol = Optional.ofNullable(SYMBOLS.get(unit));
            if (symbol.isPresent()) {
                String quantity = plain(words.subList(0, start));
                // Of a quantity for each of a unit, as money for each cable and meter, the unit is part of the words.
                return quantity + ((quantity + " ").contains(PER) ? " " : ", ") + symbol.get();
            }
        }
        return plain(words);
    }

    private static String plain(List<String> words) {
        return words.stream().map(word -> WORDS.getOrDefault(word, word)).collect(Collectors.joining(" "));
    }

    private static Map<String, String> symbols() {
        Map<String, String> shared =
                Map.of("deg", "degrees", "pct", "%", "in_unit", "in its unit", "in_us_unit", "in its US unit");
        Stream<Map.Entry<String, String>> pairs = Arrays.stream(UsUnit.values())
                .flatMap(unit -> Stream.of(
                        Map.entry(unit.metricWord(), raised(unit.metric())),
                        Map.entry(unit.word(), raised(unit.symbol()))));
        return Stream.concat(shared.entrySet().stream(), pairs)
                .collect(Collectors.toUnmodifiableMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    private static String raised(String symbol) {
        return symbol.replace('2', '²').replace('3', '³');
    }
}
