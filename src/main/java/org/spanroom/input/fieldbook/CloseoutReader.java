package org.spanroom.input.fieldbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.TableText;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.RegularFile;
import org.spanroom.input.layer.SourceNumber;
import org.spanroom.model.fieldwork.FactValue;
import org.spanroom.model.fieldwork.FieldEntry;
import org.spanroom.model.fieldwork.FieldFact;
import org.spanroom.model.fieldwork.RowProblem;

/** Reads a close-out file: which rows are understood, and what is wrong with the others. Nothing is entered here. */
public final class CloseoutReader {
    private static final FactTable.Form FORM = new FactTable.Form(
            "close-out file",
            List.of(
                    "code",
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
                    "note"),
            Set.of("fact", "value", "by", "date"));

    private static final String FUTURE = " is in the future";

    private static final long LARGEST_BYTES = 500_000_000;

    /** A measured distance may exceed the drawn length by so much. */
    private static final double MOST_OF_LENGTH_RATIO = 1.1;

    private final CloseoutScope scope;
    private final FactReader facts;
    private final CloseoutSubjects subjects;
    private final CloseoutRepeats repeats;

    public CloseoutReader(CloseoutScope scope) {
        this.scope = scope;
        this.facts = new FactReader(scope.plausible());
        this.subjects = new CloseoutSubjects(scope);
        this.repeats = new CloseoutRepeats(scope.book());
    }

    /**
     * What was read.
     *
     * @param rows how many the file has
     * @param empty how many of them report nothing
     * @param repeated how many say what is entered already, or what another row says
     * @param entries the rows that are understood, numbered in their order
     * @param problems of the others
     * @param others columns that are none of ours
     */
    public record Result(
            int rows,
            int empty,
            int repeated,
            List<FieldEntry> entries,
            List<RowProblem> problems,
            List<String> others) {
        public Result {
            entries = List.copyOf(entries);
            problems = List.copyOf(problems);
            others = List.copyOf(others);
        }

        /** Returns whether all rows that report something are refused for their date alone: it is in the future. */
        public boolean isAllInFuture() {
            return entries.isEmpty()
                    && !problems.isEmpty()
                    && problems.stream().allMatch(problem -> problem.problem().endsWith(FUTURE));
        }
    }

    /**
     * Reads a file.
     *
     * @throws InputException if it is not a close-out file
     */
    public Result read(Path file) {
        FactTable table = FactTable.read(file, TableText.of(file, bytes(file)), FORM);
        var entries = new ArrayList<FieldEntry>();
        var problems = new ArrayList<RowProblem>();
        int empty = 0;
        int repeated = 0;
        for (FactRow cells : table.rows()) {
            var row = new FactReader.Row(cells);
            if (row.isGood() && isEmpty(row)) {
                empty++;
                continue;
            }
            Optional<FieldEntry> entry =
                    row.isGood() ? entry(row, scope.firstNumber() + entries.size()) : Optional.empty();
            if (entry.isPresent() && row.isGood() && repeats.isOnAnotherSheet(entry.get())) {
                repeated++;
                continue;
            }
            boolean repeats = entry.isPresent() && row.isGood() && isRepeated(row, entry.get());
            repeated += repeats ? 1 : 0;
            if (row.isGood()) {
                entries.add(entry.orElseThrow());
            }
            problems.addAll(row.problems());
        }
        return new Result(table.rows().size(), empty, repeated, entries, problems, table.others());
    }

    private static byte[] bytes(Path file) {
        RegularFile.demandIfThere(file);
        if (!Files.exists(file)) {
            throw new InputException(file, "there is no such file", "Check its name and folder.");
        }
        try {
            if (Files.size(file) > LARGEST_BYTES) {
                throw new InputException(
                        file, "it has more than " + LARGEST_BYTES + " bytes", "Is it a close-out file?");
            }
            return Files.readAllBytes(file);
        } catch (IOException failure) {
            throw LayerFormat.unreadable(file, failure);
        }
    }

    /** A row without a value reports nothing; one that would correct an entry must say by what. */
    private static boolean isEmpty(FactReader.Row row) {
        if (row.cell("value").isEmpty() && !row.cell("supersedes").isEmpty()) {
            row.reject(
                    "value", "the row corrects an entry and has no value", "Write what is right, or empty supersedes.");
        }
        return row.cell("value").isEmpty() && row.isGood();
    }

    private boolean isRepeated(FactReader.Row row, FieldEntry entry) {
        Optional<RowProblem> problem = repeats.find(row.line(), entry);
        problem.ifPresent(found -> row.reject(found.column(), found.problem(), found.remedy()));
        return problem.isPresent();
    }

    private Optional<FieldEntry> entry(FactReader.Row row, int number) {
        Optional<FieldFact> fact = facts.fact(row);
        Optional<LocalDate> day = day(row);
        if (row.cell("by").isEmpty()) {
            row.reject("by", "no name is given", "Write who found it.");
        }
        if (fact.isEmpty()) {
            subjects.code(row);
            return Optional.empty();
        }
        Optional<String> subject = subjects.of(row, fact.get());
        String item = FactItems.item(row, fact.get());
        Optional<FactValue> value = facts.value(row, fact.get());
        Optional<FactValue> planned = facts.planned(row, fact.get(), value);
        subject.ifPresent(id -> value.ifPresent(found -> demandWithinSpan(row, fact.get(), id, found)));
        OptionalInt supersedes = subjects.supersedes(row, fact.get(), subject);
        if (!row.isGood() || subject.isEmpty() || value.isEmpty() || day.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new FieldEntry(
                number,
                fact.get(),
                subject.get(),
                item,
                value.get(),
                planned,
                row.cell("by"),
                day.get(),
                supersedes,
                scope.runCode(),
                row.cell("note")));
    }

    private Optional<LocalDate> day(FactReader.Row row) {
        Optional<LocalDate> day = FactReader.day(row, "date", row.cell("date"));
        if (day.isPresent() && day.get().isAfter(scope.today())) {
            row.reject("date", day.get() + FUTURE, "Write the day on which it was found.");
        }
        return day;
    }

    private void demandWithinSpan(FactReader.Row row, FieldFact fact, String span, FactValue value) {
        CloseoutScope.Ends ends = scope.spans().get(span);
        boolean along = fact == FieldFact.BLOCKED_AT || fact == FieldFact.STALLED_AT;
        if (along && ends != null && value.keptInUnit().orElse(0) > MOST_OF_LENGTH_RATIO * ends.lengthM()) {
            double length = value.unit().of(ends.lengthM());
            row.reject(
                    "value",
                    value.text() + " " + value.unit().symbol() + " is beyond the end of the span, which has "
                            + SourceNumber.canonical(Math.rint(10 * length) / 10) + " "
                            + value.unit().symbol(),
                    "Check the distance and its unit.");
        }
    }
}
