package org.spanroom.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import org.geotools.api.feature.simple.SimpleFeature;
import org.geotools.api.feature.simple.SimpleFeatureType;
import org.geotools.api.filter.Filter;
import org.geotools.feature.simple.SimpleFeatureBuilder;
import org.geotools.feature.simple.SimpleFeatureTypeBuilder;
import org.geotools.filter.text.cql2.CQLException;
import org.geotools.filter.text.ecql.ECQL;
import org.spanroom.finding.UsageException;

/**
 * A condition on the columns of a table in ECQL, the text form of OGC filters that GeoTools reads.
 *
 * <p>For one thread: GeoTools does not promise that a filter may be asked by several.
 */
public final class Condition {
    /** Of a condition in a message, characters. */
    private static final int MOST_SHOWN = 300;

    /** What the parser calls the end of the text. */
    private static final String END = "<EOF>";

    /** Any of these completes a condition that breaks off. */
    private static final List<String> COMPLETIONS =
            List.of(" 1", " 'x'", " > 1", " x > 1", ")", " 1)", " 'x')", " > 1)", " x > 1)", " AND 2", " NULL");

    private final String text;
    private final Filter filter;
    private final List<String> columns;
    private final SimpleFeatureBuilder builder;

    private Condition(String text, Filter filter, List<String> columns, SimpleFeatureType type) {
        this.text = text;
        this.filter = filter;
        this.columns = columns;
        this.builder = new SimpleFeatureBuilder(type);
    }

    /**
     * Reads a condition.
     *
     * @param types what each column holds, by its name: String, Long, Double or Boolean
     * @param remedy says what a wrong name of a column may have meant
     * @throws UsageException if it is not ECQL, or asks for what the table has not
     */
    public static Condition parse(String text, Map<String, Class<?>> types, UnaryOperator<String> remedy) {
        Filter filter = filter(text);
        var names = new ConditionNames(types, remedy);
        filter.accept(names, null);
        var type = new SimpleFeatureTypeBuilder();
        type.setName("row");
        names.used().forEach(name -> type.add(name, types.get(name)));
        return new Condition(text, filter, new ArrayList<>(names.used()), type.buildFeatureType());
    }

    private static Filter filter(String text) {
        try {
            return ECQL.toFilter(text);
        } catch (CQLException problem) {
            throw unreadable(text, problem);
        } catch (RuntimeException | StackOverflowError problem) {
            throw unreadable(text, problem);
        }
    }

    /** The parser lists every word that could have been there; where it stopped is enough. */
    private static UsageException unreadable(String text, Throwable problem) {
        String said = problem instanceof StackOverflowError
                ? "its parentheses are nested too deep."
                : String.valueOf(problem.getMessage());
        int list = said.indexOf("Was expecting");
        String stopped = (list < 0 ? said : said.substring(0, list))
                .replaceAll("\\s*Parsing : .*", "")
                .strip();
        String where = stopped.contains(END) && endsTooEarly(text) ? "the condition ends too early." : shown(stopped);
        return new UsageException(
                "--where cannot be read: " + where + " It is ECQL, such as rank <= 100 AND duct LIKE 'B18%'; it was: "
                        + shown(text),
                problem);
    }

    /** The parser names the words before the end too, whatever is wrong: whether something is missing, trying shows. */
    private static boolean endsTooEarly(String text) {
        return COMPLETIONS.stream().anyMatch(completion -> isReadable(text + completion));
    }

    private static boolean isReadable(String text) {
        try {
            ECQL.toFilter(text);
            return true;
        } catch (CQLException | RuntimeException | StackOverflowError unreadable) {
            return false;
        }
    }

    private static String shown(String text) {
        return text.length() <= MOST_SHOWN ? text : text.substring(0, MOST_SHOWN) + "...";
    }

    /** Returns whether a row meets the condition; a comparison with an empty cell is not met. */
    public boolean holds(Function<String, Optional<Object>> cells) {
        for (String column : columns) {
            builder.add(cells.apply(column).orElse(null));
        }
        SimpleFeature row = builder.buildFeature("row");
        try {
            return filter.evaluate(row);
        } catch (RuntimeException problem) {
            throw new UsageException(
                    "--where '" + shown(text) + "' cannot be evaluated: " + problem.getMessage(), problem);
        } catch (NoClassDefFoundError missing) {
            ConditionNames.rethrowOthers(missing);
            throw new UsageException(
                    "--where '" + shown(text)
                            + "' cannot be evaluated: it compares or calculates with a text that is not a number",
                    missing);
        }
    }
}
