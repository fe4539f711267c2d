package org.spanroom.output;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.spanroom.finding.InputException;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.output.columns.AnnualColumns;
import org.spanroom.output.columns.ReserveColumns;
import org.spanroom.output.text.CsvFile;

/** Reads an annual program back from its CSV files. */
public final class ProgramReader {
    private static final String NAME_A_PROGRAM = "Name the folder of a program.";
    private static final String MAKE_AGAIN = "Make the program again with this version.";
    private static final String RESERVE_FILE = ReserveColumns.RESERVE.name() + ".csv";
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();

    private ProgramReader() {}

    /**
     * Reads a program.
     *
     * @param folder in which it was written
     * @throws InputException if the folder holds none, or one of its files is damaged
     */
    public static RecordedProgram read(Path folder) {
        if (!Files.isRegularFile(folder.resolve(AnnualWriter.MARKER))) {
            throw new InputException(
                    folder, "the folder holds no program (no " + AnnualWriter.MARKER + ")", NAME_A_PROGRAM);
        }
        return new RecordedProgram(
                rows(folder.resolve(AnnualWriter.MARKER), ProgramReader::planned),
                rows(folder.resolve(RESERVE_FILE), ProgramReader::reserved));
    }

    private static RecordedProgram.Planned planned(SpanRow row) {
        String connections = row.text(AnnualColumns.CONNECTIONS);
        return new RecordedProgram.Planned(
                row.text(AnnualColumns.SPAN_ID),
                row.text(AnnualColumns.SECTION),
                row.number(AnnualColumns.YEAR),
                row.day(AnnualColumns.WEEK),
                row.text(AnnualColumns.CREW),
                row.number(AnnualColumns.ORDER),
                row.day(AnnualColumns.FIRST_DAY),
                row.day(AnnualColumns.LAST_DAY),
                new RecordedProgram.Amounts(
                        row.amount(AnnualColumns.SITE_HOURS),
                        row.amount(AnnualColumns.SHARED_HOURS),
                        row.amount(AnnualColumns.COST_MONEY),
                        row.amount(AnnualColumns.BUDGET_MONEY)),
                row.day(AnnualColumns.APPLY_BY),
                connections.isEmpty() ? List.of() : List.of(connections.split(";", -1)),
                row.text(AnnualColumns.WHY));
    }

    private static RecordedProgram.Reserved reserved(SpanRow row) {
        return new RecordedProgram.Reserved(
                row.text(AnnualColumns.SPAN_ID),
                row.text(AnnualColumns.SECTION),
                row.text(ReserveColumns.PLACE).isEmpty()
                        ? OptionalInt.empty()
                        : OptionalInt.of(row.number(ReserveColumns.PLACE)),
                row.text(ReserveColumns.WHY_NOT));
    }

    /** Reads all rows of a file, by the names of their spans. */
    private static <T> Map<String, T> rows(Path file, Function<SpanRow, T> read) {
        if (!Files.isRegularFile(file)) {
            throw new InputException(file, "it is missing", MAKE_AGAIN);
        }
        Map<String, T> rows = new LinkedHashMap<>();
        try (CSVParser parser = FORMAT.parse(Files.newBufferedReader(file))) {
            if (!parser.getHeaderNames().contains(AnnualColumns.SPAN_ID)) {
                throw new InputException(file, "it has no column " + AnnualColumns.SPAN_ID, MAKE_AGAIN);
            }
            for (CSVRecord row : parser) {
                var cells = new SpanRow(file, row);
                if (rows.put(cells.text(AnnualColumns.SPAN_ID), read.apply(cells)) != null) {
                    throw cells.damaged("its span is in it twice");
                }
            }
            return rows;
        } catch (IOException | UncheckedIOException | IllegalArgumentException failure) {
            throw new InputException(file, "it cannot be read back", MAKE_AGAIN, failure);
        }
    }

    /** The cells of a row, by the names of their columns. */
    private record SpanRow(Path file, CSVRecord row) {
        String text(String column) {
            if (!row.isSet(column)) {
                throw damaged("it has no " + column);
            }
            return CsvFile.unguarded(row.get(column));
        }

        int number(String column) {
            try {
                return Integer.parseInt(text(column));
            } catch (NumberFormatException failure) {
                throw damaged(column + " is no whole number: " + text(column));
            }
        }

        /** Reads hours or money, which are never below 0. */
        double amount(String column) {
            String cell = text(column);
            try {
                double amount = Double.parseDouble(cell);
                if (amount >= 0 && Double.isFinite(amount)) {
                    return amount;
                }
            } catch (NumberFormatException failure) {
                throw damaged(column + " must be a number; was " + cell);
            }
            throw damaged(column + " must be 0 or more; was " + cell);
        }

        LocalDate day(String column) {
            try {
                return LocalDate.parse(text(column));
            } catch (DateTimeException failure) {
                throw damaged(column + " is no day: " + text(column));
            }
        }

        InputException damaged(String why) {
            return new InputException(file, "row " + row.getRecordNumber() + ": " + why, MAKE_AGAIN);
        }
    }
}
