package org.spanroom.pipeline;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.spanroom.config.ConfigReader;
import org.spanroom.config.RunConfig;
import org.spanroom.model.Counted;
import org.spanroom.model.UnitSystem;
import org.spanroom.model.network.Street;
import org.spanroom.output.RecordedAccount;
import org.spanroom.output.RecordedRun;
import org.spanroom.output.folder.TextFile;
import org.spanroom.output.report.Chunk;
import org.spanroom.output.report.PageTexts;
import org.spanroom.output.report.ReportCharts;
import org.spanroom.output.report.ReportCore;
import org.spanroom.output.report.ReportLayer;
import org.spanroom.output.report.ReportPage;
import org.spanroom.output.report.ReportProgram;
import org.spanroom.output.report.ReportSections;
import org.spanroom.output.report.TileSource;

/** One page about a run, for people without the program: a summary, a map, tables, charts, and the calculation of the best spans. */
public final class ReportRun {
    private final Path folder;
    private final Progress progress;
    private final DetailSource detailSource;
    private final StreetSource streetSource;
    private final RecordedRun run;
    private final RunConfig config;
    private final UnitSystem units;
    private final Request request;
    private final ReportLimits limits;
    private final List<String> notes = new ArrayList<>();

    /**
     * Prepares a page.
     *
     * @param folder of the run
     * @throws org.spanroom.finding.InputException if it holds no run that can be read
     */
    public ReportRun(Path folder, Progress progress, Request request) {
        this(folder, progress, request, ReportSources::details, ReportSources::streets, ReportLimits.SHIPPED);
    }

    /** Prepares a page whose details and streets come from elsewhere, and which shows other numbers of rows. */
    ReportRun(
            Path folder,
            Progress progress,
            Request request,
            DetailSource details,
            StreetSource streets,
            ReportLimits limits) {
        this.limits = limits;
        this.folder = folder;
        this.progress = progress;
        this.request = request;
        this.detailSource = details;
        this.streetSource = streets;
        ReportPlace.check("--output", request.output(), folder, request.program());
        TextFile.check(request.output(), ReportPlace.PAGE, request.overwrite());
        run = RecordedRun.read(folder);
        config = ConfigReader.readRecorded(run.file());
        units = request.units().orElse(config.units());
    }

    /**
     * What is asked for.
     *
     * @param program folder of an annual program of this run
     * @param streets a layer of streets to draw below
     * @param streetName its field with their names
     * @param details of how many spans the page has the whole calculation
     * @param units the units that people are shown, where not those of the run
     * @param output the page
     */
    public record Request(
            Optional<Path> program,
            Optional<Path> streets,
            Optional<String> streetName,
            Optional<TileSource> tiles,
            int details,
            Optional<UnitSystem> units,
            Path output,
            boolean overwrite) {}

    /**
     * What came out.
     *
     * @param spans how many the run has
     * @param shownSpans how many of them are in the page
     * @param detailedSpans of how many it has the whole calculation
     * @param bytes size of the page
     * @param notes what it leaves out and why
     */
    public record ReportSummary(
            Path file, long spans, long shownSpans, long detailedSpans, long bytes, List<String> notes) {
        public ReportSummary {
            notes = List.copyOf(notes);
        }
    }

    /** Streets that the page draws below everything. */
    interface StreetSource {
        List<Street> of(Path file, Optional<String> nameField);
    }

    /**
     * Makes the page.
     *
     * @throws org.spanroom.finding.InputException if the run or the program cannot be read, or the program belongs to another run
     * @throws org.spanroom.output.folder.OutputException if the page cannot be written
     */
    public ReportSummary run() {
        progress.begin("read the run", -1);
        RecordedAccount account = RecordedAccount.read(run);
        ReportSpansReader.Read spans = ReportSpansReader.read(run, config, units, limits);
        progress.end(Counted.of(spans.totals().spans(), "span"));
        boolean showsAll = spans.table().rows() == spans.totals().spans();
        if (!showsAll) {
            notes.add("This page shows the best " + Counted.of(spans.table().rows(), "span") + " of "
                    + Counted.whole(spans.totals().spans())
                    + "; sums and counts are of all, points of cost against positions of those shown.");
        }
        long findings =
                account.findings().values().stream().mapToLong(Long::longValue).sum();
        if (findings > limits.findings()) {
            notes.add("The map shows " + Counted.whole(limits.findings()) + " of " + Counted.whole(findings)
                    + " findings: those to fix before the others. Their table counts all.");
        }
        Optional<ReportProgram> program =
                request.program().map(named -> new ReportProgramReader(named, spans, run, currency(), units).read());
        List<Street> streets = request.streets()
                .map(file -> streetSource.of(file, request.streetName()))
                .orElse(List.of());
        request.streets()
                .flatMap(file -> StreetPlaces.farWords(file, streets, spans.lonLat()))
                .ifPresent(notes::add);
        DetailSource.Details details = details(spans);
        var layers = new ReportTables(folder, currency(), units);
        var places = new ReportPlaces(spans);
        ReportSections sections = places.sections(layers);
        ReportLayer checks = layers.layer("field_checks", ReportLayer.Kind.POINTS);
        places.put(details);
        program.ifPresent(places::put);
        var uncertain = new ReportUncertain(checks.table(), account.money(), config.uncertainty());
        ReportCore core = core(spans, places, sections, checks, streets, program, charts(spans, uncertain, details));
        PageTexts texts = texts(account, spans, sections, uncertain, program, places);
        return write(texts, core, details, spans);
    }

    private String currency() {
        return config.rates().currency();
    }

    private DetailSource.Details details(ReportSpansReader.Read spans) {
        int most = Math.min(request.details(), (int)
                Math.min(Integer.MAX_VALUE, spans.totals().ranked()));
        int shown = Math.min(most, spans.table().rows());
        if (shown == 0) {
            return DetailSource.Details.NONE;
        }
        int id = spans.table().place("span_id");
        List<String> best = new ArrayList<>();
        for (int row = 0; row < shown; row++) {
            best.add(spans.table().text(row, id));
        }
        DetailSource.Details found = detailSource.of(folder, best, progress, units);
        notes.addAll(found.notes());
        return found;
    }

    private ReportCharts charts(ReportSpansReader.Read spans, ReportUncertain uncertain, DetailSource.Details details) {
        var words = new ReportKeys(config);
        return new ReportCharts(
                spans.totals().groupColumn(),
                spans.totals().groups(),
                spans.totals().points(),
                spans.totals().exclusions(words::reason),
                uncertain.shares(),
                uncertain.spreads(),
                details.bands().map(DetailSource.Bands::table));
    }

    private ReportCore core(
            ReportSpansReader.Read spans,
            ReportPlaces places,
            ReportSections sections,
            ReportLayer checks,
            List<Street> streets,
            Optional<ReportProgram> program,
            ReportCharts charts) {
        progress.begin("find corridors", -1);
        ReportCorridors corridors = ReportCorridors.of(
                NetworkReader.read(folder, Set.of()).network(), ReportPlaces.rowBySection(sections), currency(), units);
        progress.end(Counted.of(corridors.table().rows(), "corridor"));
        var layers = new ReportTables(folder, currency(), units);
        Map<String, Long> counts = new LinkedHashMap<>();
        counts.put("spans", spans.totals().spans());
        counts.put("ranked", spans.totals().ranked());
        counts.put("sections", sections.all());
        counts.put("shownSpans", (long) spans.table().rows());
        counts.put("top", (long) config.uncertainty().topCount());
        return new ReportCore(
                currency(),
                units,
                counts,
                places.spans(),
                sections,
                layers.layer("vaults", ReportLayer.Kind.POINTS),
                layers.findings(limits.findings()),
                checks,
                layers.layer("zones", ReportLayer.Kind.POLYGONS),
                corridors.table(),
                corridors.sections(),
                streets,
                program,
                new ReportKeys(config).words(spans.keys()),
                spans.values().score(),
                charts);
    }

    private PageTexts texts(
            RecordedAccount account,
            ReportSpansReader.Read spans,
            ReportSections sections,
            ReportUncertain uncertain,
            Optional<ReportProgram> program,
            ReportPlaces places) {
        var words = new ReportWords(currency());
        var summary = new ReportTexts(account, spans.totals(), config, units);
        var record = new ReportRecord(run, account, config, units, folderWords());
        Optional<ReportProgramTexts> planned = program.map(found -> new ReportProgramTexts(found, words));
        List<PageTexts.Figure> headline = new ArrayList<>(summary.headline());
        planned.ifPresent(found -> headline.add(found.figure()));
        var first = new ReportFirst(spans, units, words, config.uncertainty(), program.map(found -> places));
        List<PageTexts.First> sectionsFirst = first.of(sections);
        return new PageTexts(
                ReportPlace.TITLE + name(),
                folderWords(),
                record.madeAt(),
                run.version(),
                headline,
                summary.statements(),
                summary.cautions(notes),
                sectionsFirst,
                first.note(sectionsFirst),
                uncertain.sentences(),
                planned.map(ReportProgramTexts::program),
                record.entries(),
                record.inputs(),
                record.rates(),
                record.assumptions(),
                record.findings(),
                ReportRecord.safety());
    }

    /** The folder as the user named it, for the command that explains a span; of an absolute path, which says where it lies, the name. */
    private String folderWords() {
        return folder.isAbsolute() || folder.toString().isEmpty() ? name() : folder.toString();
    }

    /** A page is passed on: its title names the folder, not where it lies. */
    private String name() {
        Path name = folder.toAbsolutePath().normalize().getFileName();
        return name == null ? "this run" : name.toString();
    }

    private ReportSummary write(
            PageTexts texts, ReportCore core, DetailSource.Details details, ReportSpansReader.Read spans) {
        progress.begin("write the page", -1);
        var chunks = new ArrayList<Chunk>();
        chunks.add(core.chunk());
        chunks.addAll(details.chunks());
        var page = new ReportPage(texts, request.tiles());
        TextFile.write(request.output(), out -> page.write(out, chunks), ReportPlace.PAGE, request.overwrite());
        long bytes = ReportPlace.size(request.output());
        progress.end(Counted.fixed(bytes / 1e6, 1) + " MB");
        return new ReportSummary(
                request.output(), spans.totals().spans(), spans.table().rows(), details.spans(), bytes, notes);
    }
}
