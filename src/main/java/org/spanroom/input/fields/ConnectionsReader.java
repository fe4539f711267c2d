package org.spanroom.input.fields;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.Blanks;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.RecordLimit;
import org.spanroom.input.layer.SurplusCells;
import org.spanroom.model.CalendarDay;
import org.spanroom.model.Counted;
import org.spanroom.model.program.Connection;

/**
 * Reads a table of connections: CSV (RFC 4180) with a header, one row for each; separators may be commas, semicolons, tabs or vertical bars.
 *
 * <p>Columns, in any order and case: name, from, to, cables, value, needed_by, must. The first four are needed. A row that cannot be used
 * is kept with its reason, so that the results name it.
 */
public final class ConnectionsReader {
    private static final List<String> NEEDED = List.of("name", "from", "to", "cables");
    private static final List<String> COLUMNS = List.of("name", "from", "to", "cables", "value", "needed_by", "must");
    private static final Set<String> YES = Set.of("yes", "true", "1", "y", "must", "x");
    private static final Set<String> NO = Set.of("", "no", "false", "0", "n");
    private static final long LONGEST_ROW = 1_000_000;
    private static final int MOST_CABLES = 10_000;
    /** At most 15 digits before the point, with or without commas between thousands. */
    private static final Pattern AMOUNT = Pattern.compile("(?:\\d{1,15}|\\d{1,3}(?:,\\d{3}){1,4})(?:\\.\\d{0,15})?");

    /** In many countries a point is between thousands. */
    private static final Pattern TWO_MEANINGS = Pattern.compile("[1-9]\\d{0,2}\\.\\d{3}");

    private static final String REMEDY =
            "It needs a header with the columns name, from, to and cables, and may have value, needed_by and must.";

    private final Path file;
    private final Map<String, Integer> places = new HashMap<>();
    private final Map<String, Long> names = new HashMap<>();
    private int width;

    private ConnectionsReader(Path file) {
        this.file = file;
    }

    /**
     * Reads the table.
     *
     * @throws InputException if it is no table of connections, or has no rows
     */
    public static List<Connection> read(Path file) {
        return new ConnectionsReader(file).read();
    }

    private List<Connection> read() {
        TableText text = TableText.of(file, Optional.empty(), new FindingLog());
        var rows = new ArrayList<Connection>();
        try (var limited = new RecordLimit(text.open(), LONGEST_ROW);
                CSVParser parser = CSVParser.parse(limited, format(text))) {
            var records = parser.iterator();
            if (!records.hasNext()) {
                throw new InputException(file, "the table of connections is empty", REMEDY);
            }
            header(records.next());
            while (records.hasNext()) {
                CSVRecord record = records.next();
                limited.next();
                if (!isBlank(record)) {
                    rows.add(row(record, parser.getCurrentLineNumber()));
                }
            }
        } catch (IOException failure) {
            throw LayerFormat.unreadable(file, failure);
        } catch (UncheckedIOException | IllegalArgumentException failure) {
            throw new InputException(file, "it cannot be read as CSV: " + TableText.words(failure), REMEDY, failure);
        }
        if (rows.isEmpty()) {
            throw new InputException(file, "the table of connections has no rows", REMEDY);
        }
        return rows;
    }

    private static CSVFormat format(TableText text) throws IOException {
        return CSVFormat.RFC4180
                .builder()
                .setDelimiter(text.separator())
                .setIgnoreEmptyLines(true)
                .setTrailingData(true)
                .setLenientEof(true)
                .get();
    }

    private static boolean isBlank(CSVRecord record) {
        return record.stream().allMatch(String::isBlank);
    }

    private void header(CSVRecord header) {
        width = header.size();
        Map<String, String> written = new LinkedHashMap<>();
        for (int place = 0; place < header.size(); place++) {
            String name = Blanks.strip(header.get(place));
            String word = name.toLowerCase(Locale.ROOT).replaceAll("[ -]+", "_");
            if (COLUMNS.contains(word) && places.putIfAbsent(word, place) != null) {
                throw new InputException(file, "two columns are called " + word, "Remove one of them.");
            }
            written.putIfAbsent(word, name);
        }
        for (String column : NEEDED) {
            if (!places.containsKey(column)) {
                String near = NearestWord.findAlmost(column, written.keySet())
                        .map(found -> "; is it '" + written.get(found) + "'?")
                        .orElse("");
                throw new InputException(file, "the column '" + column + "' is missing" + near, REMEDY);
            }
        }
        demandNoneMisspelled(written);
    }

    /** What a misspelled column holds would count for nothing. */
    private void demandNoneMisspelled(Map<String, String> written) {
        for (Map.Entry<String, String> other : written.entrySet()) {
            List<String> missing = COLUMNS.stream()
                    .filter(column -> !places.containsKey(column))
                    .toList();
            if (!COLUMNS.contains(other.getKey())) {
                NearestWord.findAlmost(other.getKey(), missing).ifPresent(column -> {
                    throw new InputException(
                            file,
                            "it has no column '" + column + "'; did you mean '" + column + "' by '" + other.getValue()
                                    + "'?",
                            "Rename the column of the table, or remove it.");
                });
            }
        }
    }

    private Connection row(CSVRecord record, long line) {
        String name = text(record, "name");
        var problems = new ArrayList<String>();
        demandOneRow(record, problems);
        if (name.isEmpty()) {
            problems.add("it has no name");
        } else if (names.putIfAbsent(name, line) != null) {
            problems.add("line " + names.get(name) + " has a connection of the same name");
        }
        String from = text(record, "from");
        String to = text(record, "to");
        if (from.isEmpty() || to.isEmpty()) {
            problems.add("it needs two vaults, in the columns from and to");
        }
        int cables = cables(text(record, "cables"), problems);
        return new Connection(
                line,
                name,
                from,
                to,
                cables,
                value(text(record, "value"), problems),
                day(text(record, "needed_by"), problems),
                must(text(record, "must"), problems),
                problems.isEmpty() ? Optional.empty() : Optional.of(String.join("; ", problems)));
    }

    /** A quote that is not closed swallows rows; a separator that is not quoted shifts cells. */
    private void demandOneRow(CSVRecord record, List<String> problems) {
        long swallowed = record.stream()
                .flatMap(cell -> cell.lines().skip(1))
                .filter(line ->
                        line.chars().filter(c -> ",;\t|".indexOf(c) >= 0).count() >= NEEDED.size() - 1)
                .count();
        if (swallowed > 0) {
            problems.add("it and " + Counted.of(swallowed, "row") + " after it are one; close the quote (\") in it");
        }
        SurplusCells.problemAndRemedy(record.size(), width).ifPresent(problems::add);
    }

    private String text(CSVRecord record, String column) {
        Integer place = places.get(column);
        return place == null || place >= record.size() ? "" : Blanks.strip(record.get(place));
    }

    private static int cables(String text, List<String> problems) {
        int cables = text.matches("\\d{1,6}") ? Integer.parseInt(text) : 0;
        if (cables < 1 || cables > MOST_CABLES) {
            problems.add("cables is '" + text + "', not a whole number from 1 to " + MOST_CABLES);
            return 1;
        }
        return cables;
    }

    private static OptionalDouble value(String text, List<String> problems) {
        if (text.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (TWO_MEANINGS.matcher(text).matches()) {
            problems.add("value is '" + text + "', which could mean two amounts; write it without a mark of thousands");
            return OptionalDouble.empty();
        }
        if (AMOUNT.matcher(text).matches()) {
            return OptionalDouble.of(Double.parseDouble(text.replace(",", "")));
        }
        problems.add("value is '" + text + "', not an amount of money of 0 or more");
        return OptionalDouble.empty();
    }

    private static Optional<LocalDate> day(String text, List<String> problems) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Optional<LocalDate> day = CalendarDay.find(text);
        if (day.isEmpty()) {
            problems.add("needed_by is '" + text + "', not " + CalendarDay.WANTED);
        }
        return day;
    }

    private static boolean must(String text, List<String> problems) {
        String word = text.toLowerCase(Locale.ROOT);
        if (!YES.contains(word) && !NO.contains(word)) {
            problems.add("must is '" + text + "', neither yes nor no");
        }
        return YES.contains(word);
    }
}
