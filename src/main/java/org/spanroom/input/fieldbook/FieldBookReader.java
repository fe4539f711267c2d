package org.spanroom.input.fieldbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.config.NearestWord;
import org.spanroom.config.PlausibleRanges;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.TableText;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.RegularFile;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.BookRow;
import org.spanroom.model.fieldwork.FactSubject;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.RowProblem;

/** Reads a field book. A row that cannot be used is left out with all that is wrong with it. */
public final class FieldBookReader {
    private static final int MOST_REASONS = 10;
    private static final FactTable.Form FORM = new FactTable.Form(
            "field book",
            List.of(
                    "format",
                    "entry",
                    "run",
                    "span",
                    "vault",
                    "fact",
                    "item",
                    "planned",
                    "value",
                    "unit",
                    "by",
                    "date",
                    "supersedes",
                    "note",
                    "entered"),
            Set.of("format", "entry", "span", "vault", "fact", "item", "value", "unit", "date"));

    private static final long LARGEST_BYTES = 1_000_000_000;

    private final FactReader facts;

    public FieldBookReader(PlausibleRanges plausible) {
        this.facts = new FactReader(plausible);
    }

    /**
     * What was read.
     *
     * @param problems of the rows that are left out, in the order of the lines
     * @param rows how many the file has
     * @param lastNumber the largest number of an entry, usable or not; 0 where there is none
     * @param plain whether the file is as we write it, so that rows can be added to it
     * @param lines of each entry, by its number, the line of the file
     * @param digest of the bytes that were read
     */
    public record Read(
            FieldBook book,
            List<RowProblem> problems,
            int rows,
            int lastNumber,
            boolean plain,
            Map<Integer, Long> lines,
            FileDigest digest) {
        public Read {
            problems = List.copyOf(problems);
            lines = Map.copyOf(lines);
        }

        /** Returns how many rows are left out. */
        public long rejected() {
            return (long) rows - book.all().size();
        }
    }

    /**
     * Reads a book.
     *
     * @throws InputException if there is none, or it is not a field book
     */
    public Read read(Path file) {
        return read(file, bytes(file));
    }

    /**
     * Reads a book of which no row may be left out.
     *
     * @throws InputException if there is none, it is not a field book, or one of its rows cannot be used
     */
    public Read readWhole(Path file) {
        Read read = read(file);
        if (!read.problems().isEmpty()) {
            throw new InputException(
                    file,
                    Counted.of(read.rejected(), "row") + " of the field book cannot be used",
                    "Bring them back as they were; an entry is corrected by a new row that names it in supersedes.",
                    read.problems().stream()
                            .limit(MOST_REASONS)
                            .map(RowProblem::words)
                            .toList());
        }
        return read;
    }

    /**
     * Reads the beginning of a book that an earlier run has read: rows may have been added since.
     *
     * @param sha256Hex digest of all that the run has read
     * @throws InputException if the file does not begin so
     */
    public Read readBeginning(Path file, String sha256Hex) {
        byte[] bytes = bytes(file);
        OptionalInt length = FileDigest.findBeginning(bytes, sha256Hex);
        if (length.isEmpty()) {
            throw new InputException(
                    file,
                    "its first rows are not those that the run has read (their SHA-256 is another)",
                    "Rows of a field book are never changed: bring the earlier file back, and correct an entry by a new row that names it in supersedes.");
        }
        return read(file, Arrays.copyOf(bytes, length.getAsInt()));
    }

    private Read read(Path file, byte[] bytes) {
        FactTable table = FactTable.read(file, TableText.of(file, bytes), FORM);
        List<FactReader.Row> rows =
                table.rows().stream().map(FactReader.Row::new).toList();
        Map<Integer, Long> lines = new HashMap<>();
        List<Integer> numbers = rows.stream().map(row -> number(row, lines)).toList();
        var entries = new ArrayList<FieldEntry>();
        var problems = new ArrayList<RowProblem>();
        for (int i = 0; i < rows.size(); i++) {
            FactReader.Row row = rows.get(i);
            entry(row, numbers.get(i), lines.keySet())
                    .filter(entry -> row.isGood())
                    .ifPresent(entries::add);
            problems.addAll(row.problems());
        }
        int last = lines.keySet().stream().mapToInt(Integer::intValue).max().orElse(0);
        return new Read(
                new FieldBook(entries), problems, rows.size(), last, table.plain(), lines, FileDigest.of(file, bytes));
    }

    private static byte[] bytes(Path file) {
        RegularFile.demandIfThere(file);
        if (!Files.exists(file)) {
            throw new InputException(
                    file,
                    "there is no such field book",
                    "`spanroom closeout` creates it with the first report; until then leave inputs.field_book.file empty.");
        }
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw new InputException(file, "it has more than " + LARGEST_BYTES + " bytes", "Is it a field book?");
            }
            return Files.readAllBytes(file);
        } catch (IOException failure) {
            throw LayerFormat.unreadable(file, failure);
        }
    }

    /** Returns the number of a row's entry; 0 and a problem where it has none of its own. */
    private static int number(FactReader.Row row, Map<Integer, Long> lines) {
        String text = row.cell("entry");
        if (!text.matches("[1-9]\\d{0,8}")) {
            row.reject("entry", "'" + text + "' is not the number of an entry", "It is a whole number from 1.");
            return 0;
        }
        int number = Integer.parseInt(text);
        Long before = lines.putIfAbsent(number, row.line());
        if (before != null) {
            row.reject("entry", "line " + before + " is entry " + number + " too", "Number it on from the last entry.");
            return 0;
        }
        return number;
    }

    private Optional<FieldEntry> entry(FactReader.Row row, int number, Set<Integer> known) {
        if (!row.cell("format").equals(Integer.toString(BookRow.FORMAT))) {
            row.reject(
                    "format",
                    "the row is of format '" + row.cell("format") + "'",
                    "This version of Spanroom reads format " + BookRow.FORMAT + ".");
        }
        Optional<LocalDate> day = FactReader.day(row, "date", row.cell("date"));
        OptionalInt supersedes = supersedes(row, number, known);
        Optional<FieldFact> fact = facts.fact(row);
        if (fact.isEmpty()) {
            return Optional.empty();
        }
        String subject = subject(row, fact.get());
        String item = FactItems.item(row, fact.get());
        Optional<FactValue> value = facts.value(row, fact.get());
        Optional<FactValue> planned = facts.planned(row, fact.get(), value);
        if (number == 0 || day.isEmpty() || subject.isEmpty() || value.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new FieldEntry(
                number,
                fact.get(),
                subject,
                item,
                value.get(),
                planned,
                row.cell("by"),
                day.get(),
                supersedes,
                row.cell("run"),
                row.cell("note")));
    }

    private static String subject(FactReader.Row row, FieldFact fact) {
        FactSubject subject = fact.subject();
        String id = row.cell(subject.key());
        if (id.isEmpty()) {
            row.reject(subject.key(), fact.key() + " is about a " + subject.key() + ", and none is named", "Name it.");
        }
        return id;
    }

    private static OptionalInt supersedes(FactReader.Row row, int number, Set<Integer> known) {
        String text = row.cell("supersedes");
        if (text.isEmpty()) {
            return OptionalInt.empty();
        }
        if (!text.matches("[1-9]\\d{0,8}") || !known.contains(Integer.parseInt(text))) {
            List<String> numbers = known.stream().map(String::valueOf).toList();
            row.reject(
                    "supersedes",
                    "there is no entry " + text,
                    numbers.isEmpty()
                            ? "Leave it empty."
                            : "Name the entry that it corrects, or leave it empty; the nearest are "
                                    + String.join(", ", NearestWord.nearest(text, numbers, 3)) + ".");
            return OptionalInt.empty();
        }
        if (number > 0 && Integer.parseInt(text) >= number) {
            row.reject("supersedes", "entry " + number + " cannot correct entry " + text, "Name an earlier entry.");
            return OptionalInt.empty();
        }
        return OptionalInt.of(Integer.parseInt(text));
    }
}
