package org.spanroom.input;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.finding.InputException;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FactUnit;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;

/** Reads a field book as it is kept. */
public final class BookFile {
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    private static final String REMEDY = "Name the field book that closeout keeps.";

    private BookFile() {}

    /** @throws InputException if there is no such file, or a row of it cannot be used */
    public static FieldBook read(Path file) {
        if (!Files.isRegularFile(file)) {
            throw new InputException(file, "there is no such file", REMEDY);
        }
        try (CSVParser rows = FORMAT.parse(Files.newBufferedReader(file))) {
            List<FieldEntry> entries = new ArrayList<>();
            rows.forEach(row -> entries.add(entry(row)));
            return new FieldBook(entries);
        } catch (IOException | UncheckedIOException | IllegalArgumentException | DateTimeException failure) {
            throw new InputException(file, "it cannot be read: " + failure.getMessage(), REMEDY, failure);
        }
    }

    private static FieldEntry entry(CSVRecord row) {
        FieldFact fact = FieldFact.find(row.get("fact"))
                .orElseThrow(() -> new IllegalArgumentException("no fact is called " + row.get("fact")));
        String corrects = row.get("supersedes");
        return new FieldEntry(
                Integer.parseInt(row.get("entry")),
                fact,
                row.get(fact.subject() == FactSubject.SPAN ? "span" : "vault"),
                row.get("item"),
                value(fact, row.get("value"), row.get("unit")),
                row.get("planned").isBlank()
                        ? Optional.empty()
                        : Optional.of(value(fact, row.get("planned"), row.get("unit"))),
                row.get("by"),
                LocalDate.parse(row.get("date")),
                corrects.isBlank() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(corrects)),
                row.get("run"),
                row.get("note"));
    }

    private static FactValue value(FieldFact fact, String text, String unit) {
        if (!fact.kind().isNumber()) {
            return FactValue.ofText(text);
        }
        FactUnit read = unit.isBlank()
                ? fact.kind().units().get(0)
                : FactUnit.find(unit).orElseThrow(() -> new IllegalArgumentException("no unit is called " + unit));
        return FactValue.ofNumber(text, read, Double.parseDouble(text));
    }
}
