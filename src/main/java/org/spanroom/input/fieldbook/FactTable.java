package org.spanroom.input.fieldbook;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.config.NearestWord;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.TableText;
import org.spanroom.input.layer.Blanks;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.RecordLimit;

/**
 * A table of facts: CSV (RFC 4180) with a header, one row for each fact; columns in any order and case, separators as in other tables.
 *
 * @param rows all rows that are not blank, in the order of the file
 * @param others columns that are none of ours; a spreadsheet's columns without a name are left out
 * @param plain whether the file is as we write it: UTF-8, with commas, our columns in our order
 */
record FactTable(List<FactRow> rows, List<String> others, boolean plain) {
    private static final long LONGEST_ROW = 10_000_000;

    FactTable {
        rows = List.copyOf(rows);
        others = List.copyOf(others);
    }

    /** What a table has to be. */
    record Form(String name, List<String> columns, Set<String> needed) {
        private String remedy() {
            return "Its header is " + String.join(",", columns) + ".";
        }

        /** A table of this form always has the first column if it is needed, and at least half of the others that are. */
        private boolean isAnother(Set<String> found) {
            String first = columns.get(0);
            long has = needed.stream().filter(found::contains).count();
            return (needed.contains(first) && !found.contains(first)) || 2 * has < needed.size();
        }

        private InputException another(Path file, String missing) {
            return new InputException(
                    file,
                    "this is not a " + name + ": the column '" + missing + "' is missing",
                    "The first line of a " + name + " must be " + String.join(",", columns) + ".");
        }
    }

    /**
     * Reads a table.
     *
     * @throws InputException if it cannot be read, or a column that is needed is missing
     */
    static FactTable read(Path file, TableText text, Form form) {
        try (var limited = new RecordLimit(text.open(), LONGEST_ROW);
                CSVParser parser = CSVParser.parse(limited, format(text))) {
            var records = parser.iterator();
            if (!records.hasNext()) {
                throw new InputException(file, "the " + form.name() + " is empty", form.remedy());
            }
            List<String> header = records.next().toList();
            Map<String, Integer> places = places(file, header, form);
            var rows = new ArrayList<FactRow>();
            while (records.hasNext()) {
                CSVRecord record = records.next();
                limited.next();
                FactRow row = new FactRow(parser.getCurrentLineNumber(), record.toList(), places, header.size());
                if (!row.isBlank()) {
                    rows.add(row);
                }
            }
            List<String> others = header.stream()
                    .filter(name -> !name.isBlank() && !form.columns().contains(word(name)))
                    .toList();
            boolean asWritten = text.isUtf8() && text.statedSeparator().isEmpty() && text.separator() == ',';
            return new FactTable(rows, others, asWritten && header.equals(form.columns()));
        } catch (IOException failure) {
            throw LayerFormat.unreadable(file, failure);
        } catch (UncheckedIOException | IllegalArgumentException failure) {
            throw new InputException(
                    file, "it cannot be read as CSV: " + TableText.words(failure), form.remedy(), failure);
        }
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

    private static Map<String, Integer> places(Path file, List<String> header, Form form) {
        Map<String, Integer> places = new HashMap<>();
        for (int place = 0; place < header.size(); place++) {
            String word = word(header.get(place));
            if (form.columns().contains(word) && places.putIfAbsent(word, place) != null) {
                throw new InputException(file, "two columns are called " + word, "Remove one of them.");
            }
        }
        for (String column : form.columns()) {
            List<String> others = header.stream()
                    .map(FactTable::word)
                    .filter(name -> !form.columns().contains(name))
                    .toList();
            boolean missing = !places.containsKey(column);
            String near = missing ? NearestWord.findAlmost(column, others).orElse("") : "";
            if (missing && near.isEmpty() && form.needed().contains(column) && form.isAnother(places.keySet())) {
                throw form.another(file, column);
            }
            if (missing && (form.needed().contains(column) || !near.isEmpty())) {
                throw new InputException(
                        file,
                        "the column '" + column + "' is missing" + (near.isEmpty() ? "" : "; is it '" + near + "'?"),
                        form.remedy());
            }
        }
        return places;
    }

    private static String word(String name) {
        return Blanks.strip(name).toLowerCase(Locale.ROOT).replaceAll("[ -]+", "_");
    }
}
