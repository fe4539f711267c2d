package org.spanroom.pipeline;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.finding.UsageException;
import org.spanroom.input.fieldbook.CloseoutReader;
import org.spanroom.input.fieldbook.CloseoutScope;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.model.Counted;
import org.spanroom.model.fieldwork.BookRow;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.output.FieldBookFile;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RecordedSpans;
import org.spanroom.output.RunCode;
import org.spanroom.output.columns.SpanColumns;

/** Enters what a crew reported: the rows of a close-out file become entries of the field book, all of them or, if asked for, the good ones. */
public final class CloseoutRun {
    private final Request request;
    private final Progress progress;

    /**
     * What is asked for.
     *
     * @param file the close-out file
     * @param run results of the run whose sheets were worked from
     * @param fieldBook the book; empty for that of the run's config
     * @param partial whether good rows are entered although others are not understood
     * @param check whether nothing is entered
     * @param today the day of entering
     */
    public record Request(
            Path file, Path run, Optional<Path> fieldBook, boolean partial, boolean check, LocalDate today) {}

    /**
     * What was done.
     *
     * @param read the rows of the file
     * @param bookFile the field book
     * @param isNamed whether the config of the run names it
     * @param isNew whether it was made
     * @param applied whether rows were entered; with {@code --check}, whether they would be
     * @param outlook what the next ranking does with the entries, a line each
     */
    public record CloseoutSummary(
            Request request,
            String runCode,
            CloseoutReader.Result read,
            Path bookFile,
            boolean isNamed,
            boolean isNew,
            boolean applied,
            List<String> outlook) {
        public CloseoutSummary {
            outlook = List.copyOf(outlook);
        }
    }

    public CloseoutRun(Request request, Progress progress) {
        this.request = request;
        this.progress = progress;
    }

    /**
     * Reads the file and enters what is understood.
     *
     * @throws InputException if the file, the run or the field book cannot be used
     * @throws UsageException if neither the run's config nor the request names a field book
     * @throws org.spanroom.output.folder.OutputException if the field book cannot be written
     */
    public CloseoutSummary run() {
        RecordedRun recorded = RecordedRun.read(request.run());
        RunConfig config = ConfigReader.readRecorded(recorded.file());
        Optional<Path> named = BookOfRun.file(request.run(), config);
        Path bookFile = request.fieldBook()
                .or(() -> named)
                .orElseThrow(
                        () -> new UsageException(
                                "the config of the run names no field book; give one with --field-book FILE, which is made if it is missing"));
        FieldBookFile.demandOutsideResults(bookFile);
        String code = RunCode.of(recorded);
        progress.begin("read the run", -1);
        var spans = new HashMap<String, CloseoutScope.Ends>();
        Set<String> vaults = read(recorded, spans);
        progress.end(Counted.of(spans.size(), "span"));
        boolean isNamed = named.isPresent() && isSame(named.get(), bookFile);
        if (request.check()) {
            return enter(Optional.empty(), bookFile, isNamed, config, code, spans, vaults);
        }
        try (FieldBookFile book = FieldBookFile.open(bookFile)) {
            return enter(Optional.of(book), bookFile, isNamed, config, code, spans, vaults);
        }
    }

    private static boolean isSame(Path one, Path other) {
        return one.toAbsolutePath().normalize().equals(other.toAbsolutePath().normalize());
    }

    private CloseoutSummary enter(
            Optional<FieldBookFile> writer,
            Path bookFile,
            boolean isNamed,
            RunConfig config,
            String code,
            Map<String, CloseoutScope.Ends> spans,
            Set<String> vaults) {
        boolean isNew = !Files.exists(bookFile);
        Optional<FieldBookReader.Read> book = isNew ? Optional.empty() : Optional.of(book(bookFile, config));
        FieldBook before = book.map(FieldBookReader.Read::book).orElse(FieldBook.EMPTY);
        int first = 1 + book.map(FieldBookReader.Read::lastNumber).orElse(0);
        var scope = new CloseoutScope(code, spans, vaults, before, first, request.today(), config.plausible());
        CloseoutReader.Result read = new CloseoutReader(scope).read(request.file());
        boolean applied = !read.entries().isEmpty() && (read.problems().isEmpty() || request.partial());
        if (applied && writer.isPresent()) {
            writer.get()
                    .append(read.entries().stream()
                            .map(entry -> new BookRow(entry, request.today()))
                            .toList());
        }
        List<String> outlook = applied ? CloseoutOutlook.of(before, read.entries()) : List.of();
        return new CloseoutSummary(request, code, read, bookFile, isNamed, isNew, applied, outlook);
    }

    /** A book that has a bad row, or that another program has saved in its own way, takes no more rows. */
    private static FieldBookReader.Read book(Path file, RunConfig config) {
        FieldBookReader.Read read = new FieldBookReader(config.plausible()).readWhole(file);
        if (!read.plain()) {
            throw new InputException(
                    file,
                    "it is not as `spanroom closeout` writes it: UTF-8, with commas, the columns in their order",
                    "Save it so, or bring back the file as it was.");
        }
        return read;
    }

    private static Set<String> read(RecordedRun run, Map<String, CloseoutScope.Ends> ends) {
        RecordedSpans spans = RecordedScores.open(run);
        var cells = new SpanCells(spans.columns());
        var vaults = new HashSet<String>();
        spans.read(RecordedScores.types(), false, row -> {
            String a = cells.text(row, SpanColumns.VAULT_A.name());
            String b = cells.text(row, SpanColumns.VAULT_B.name());
            vaults.add(a);
            vaults.add(b);
            double lengthM = cells.number(row, SpanColumns.LENGTH.name());
            ends.put(cells.text(row, "span_id"), new CloseoutScope.Ends(a, b, lengthM));
        });
        return vaults;
    }
}
