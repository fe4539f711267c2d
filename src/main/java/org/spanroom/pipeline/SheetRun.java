package org.spanroom.pipeline;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.spanroom.config.RunConfig;
import org.spanroom.finding.InputException;
import org.spanroom.finding.UsageException;
import org.spanroom.model.Counted;
import org.spanroom.model.Line;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Network;
import org.spanroom.model.network.SectionKey;
import org.spanroom.model.network.Street;
import org.spanroom.model.program.RecordedProgram;
import org.spanroom.model.rank.RecordedStanding;
import org.spanroom.output.AnnualWriter;
import org.spanroom.output.ProgramReader;
import org.spanroom.output.RecordedAccount;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.RunCode;
import org.spanroom.output.folder.OutputFolder;
import org.spanroom.output.sheet.DuctWork;
import org.spanroom.output.sheet.SectionWork;
import org.spanroom.output.sheet.SheetBook;
import org.spanroom.output.sheet.SheetPaper;
import org.spanroom.output.sheet.SheetSection;
import org.spanroom.output.sheet.SheetWriter;
import org.spanroom.output.table.Text;

/**
 * Sheets for crews, of spans of an earlier run: calculated again from the same files with the same config, grouped into sections, and written
 * section by section with the close-out file of their blanks.
 */
public final class SheetRun {
    /** More would make a file that no one prints, and that some viewers do not open. */
    public static final int MOST_SPANS = 2000;

    private final Path folder;
    private final Progress progress;
    private final RecordedRun recorded;

    /**
     * Reads the record of a run.
     *
     * @param folder the results of that run
     * @throws InputException if the folder holds no usable record
     */
    public SheetRun(Path folder, Progress progress) {
        this.folder = folder;
        this.progress = progress;
        this.recorded = RecordedRun.read(folder);
    }

    /** Returns the version of the program that made the run. */
    public String version() {
        return recorded.version();
    }

    /**
     * What is asked for: spans by id, the best, or those of a year of a program.
     *
     * @param top how many of the best spans
     * @param program folder of an annual program of the run
     * @param year of that program, from 1
     * @param units the units that crews read and write, where not those of the run
     * @param paper the paper; by default letter for US units, else A4
     * @param streets a layer of streets for the sketch maps
     * @param streetName its field with their names
     */
    public record Request(
            List<String> spanIds,
            OptionalInt top,
            Optional<Path> program,
            OptionalInt year,
            Optional<UnitSystem> units,
            Optional<SheetPaper> paper,
            Optional<Path> streets,
            Optional<String> streetName,
            Path output,
            boolean overwrite) {
        public Request {
            spanIds = List.copyOf(spanIds);
        }
    }

    /**
     * What came out.
     *
     * @param excluded how many of the spans are not candidates
     * @param blanks how many places to write there are, each a row of the close-out file
     * @param notes sentences on what the sheets lack
     */
    public record Summary(
            String runCode,
            int sections,
            int spans,
            int excluded,
            int pages,
            long blanks,
            List<Path> files,
            List<String> notes) {
        public Summary {
            notes = List.copyOf(notes);
            files = List.copyOf(files);
        }
    }

    /**
     * Makes the sheets.
     *
     * @throws UsageException if the spans are too many, or the folder may not be written
     * @throws InputException if an input of the run is missing or has changed, or no span has one of the ids
     * @throws org.spanroom.output.folder.OutputException if the sheets cannot be written
     */
    public Summary run(Request request) {
        demandApart(request);
        Optional<RecordedProgram> program = request.program().map(ProgramReader::read);
        request.program().ifPresent(named -> ProgramOfRun.demand(named, recorded));
        List<String> asked = asked(request, program);
        if (asked.size() > MOST_SPANS) {
            throw new UsageException(
                    "sheets of " + Counted.whole(asked.size()) + " spans are asked for, and one call makes up to "
                            + Counted.whole(MOST_SPANS) + "; ask for fewer spans at a time");
        }
        RunConfig config = RecordedInputs.config(recorded, request.units());
        Map<SectionKey, List<SheetSpans.Found>> groups = new LinkedHashMap<>();
        RecordedInputs read = RecordedInputs.read(folder, recorded, progress, request.units());
        Network network = new RankRun(read.config(), progress).cut(read.inputs());
        List<SheetSpans.Found> found = SheetSpans.find(folder, network.spans(), asked);
        for (SheetSpans.Found span : found) {
            groups.computeIfAbsent(network.spans().section(span.number()), key -> new ArrayList<>())
                    .add(span);
        }
        var book = new SheetBook(
                RunCode.of(recorded),
                Instant.parse(RecordedAccount.read(recorded).startedAt()),
                recorded.version(),
                config.units(),
                request.paper().orElse(config.units().isUs() ? SheetPaper.LETTER : SheetPaper.A4),
                groups.size(),
                config.rates().currency());
        List<Street> streets = request.streets()
                .map(file -> StreetReader.read(file, request.streetName()))
                .orElse(List.of());
        var works = new SheetWorks(
                read, network, found, standings(found), program, new SheetSurroundings(network, streets));
        List<Optional<Line>> lines = found.stream()
                .map(span -> Optional.of(network.spans().lonLat(span.number())))
                .toList();
        List<String> notes = request.streets().flatMap(file -> StreetPlaces.farWords(file, streets, lines)).stream()
                .toList();
        return write(request, book, works, List.copyOf(groups.values()), notes);
    }

    private Summary write(
            Request request,
            SheetBook book,
            SheetWorks works,
            List<List<SheetSpans.Found>> groups,
            List<String> notes) {
        int spans = groups.stream().mapToInt(List::size).sum();
        progress.begin("write sheets", spans);
        int excluded = 0;
        try (SheetWriter writer = SheetWriter.begin(request.output(), request.overwrite(), book)) {
            for (int section = 0; section < groups.size(); section++) {
                SectionWork work = works.of(section + 1, groups.get(section));
                writer.add(SheetSection.of(book, work));
                excluded +=
                        (int) work.ducts().stream().filter(DuctWork::isExcluded).count();
                progress.advance(groups.get(section).size());
            }
            List<Path> files = writer.finish();
            progress.end(Counted.of(writer.pages(), "page") + " in " + request.output());
            return new Summary(
                    book.runCode(), groups.size(), spans, excluded, writer.pages(), writer.blanks(), files, notes);
        }
    }

    private List<RecordedStanding> standings(List<SheetSpans.Found> found) {
        return RecordedStandings.find(
                folder,
                recorded,
                found.stream().map(span -> Text.clean(span.id())).toList());
    }

    /** Returns the ids of the spans that are asked for, each once, in the order of the work. */
    private List<String> asked(Request request, Optional<RecordedProgram> program) {
        var ids = new LinkedHashSet<>(request.spanIds());
        request.top().ifPresent(top -> ids.addAll(RecordedStandings.best(recorded, top)));
        if (request.year().isPresent()) {
            int year = request.year().getAsInt();
            program.ifPresent(planned -> planned.planned().values().stream()
                    .filter(span -> span.year() == year)
                    .forEach(span -> ids.add(span.spanId())));
            if (ids.isEmpty()) {
                throw new InputException(
                        request.program().orElse(folder),
                        "no span of the program is in year " + year,
                        "Name one of its years with --year.");
            }
        }
        return List.copyOf(ids);
    }

    private void demandApart(Request request) {
        var files = new ArrayList<Path>();
        request.streets().ifPresent(files::add);
        request.program().ifPresent(program -> files.add(program.resolve(AnnualWriter.MARKER)));
        ProgramFolder.check(folder, request.output(), files);
        request.program().ifPresent(program -> {
            if (ProgramFolder.whole(request.output()).startsWith(ProgramFolder.whole(program))) {
                throw new UsageException("--output " + request.output() + " is in the folder of the program, " + program
                        + ", which stays as it is; choose a folder outside it");
            }
        });
        OutputFolder.check(request.output(), request.overwrite(), SheetWriter.MARKER);
    }
}
