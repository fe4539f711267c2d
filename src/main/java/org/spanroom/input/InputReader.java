package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.spanroom.config.InputConfig;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.fieldbook.FieldBookReader;
import org.spanroom.input.fields.ContentsTable;
import org.spanroom.input.fields.ContentsTableReader;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.input.layer.FileStamps;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.fieldwork.RowProblem;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.Vault;
import org.spanroom.model.permit.Zone;
import org.spanroom.parallel.BackgroundTask;

/**
 * Reads what a run is about: routes, vaults, contents and permit zones, each from the files that the config names.
 *
 * <p>Places come out in degrees on WGS 84, quantities in our units, gaps filled with the assumed values. What cannot be used, and what
 * cannot be believed, goes to the findings.
 */
public final class InputReader {
    /** The role of the field book in the record of a run. */
    public static final String FIELD_BOOK = "field_book";

    private final RunConfig config;
    private final FindingLog findings;
    private final Opener opener;
    private final ReadingTally tally;
    private final List<InputRecord> records = new ArrayList<>();
    private Optional<String> bookSha256 = Optional.empty();
    private Meanwhile meanwhile = (routes, isWaiting) -> {};

    public InputReader(RunConfig config, FindingLog findings) {
        this(config, findings, LayerSources::open, ReadingProgress.SILENT);
    }

    /** Reports meanwhile how far the reading has come. */
    public InputReader(RunConfig config, FindingLog findings, ReadingProgress progress) {
        this(config, findings, LayerSources::open, progress);
    }

    InputReader(RunConfig config, FindingLog findings, Opener opener) {
        this(config, findings, opener, ReadingProgress.SILENT);
    }

    private InputReader(RunConfig config, FindingLog findings, Opener opener, ReadingProgress progress) {
        this.config = config;
        this.findings = findings;
        this.opener = opener;
        this.tally = new ReadingTally(progress);
    }

    /** Opens a layer. */
    interface Opener {
        LayerSource open(Path file, Optional<String> layer, FindingLog findings);
    }

    /** Work on routes that is useful while other files are still being read. */
    @FunctionalInterface
    public interface Meanwhile {
        /**
         * Works on the routes.
         *
         * @param isWaiting whether the reading would still be waited for; once it is not, the work should end soon
         */
        void on(List<Route> routes, BooleanSupplier isWaiting);
    }

    /** Gives the waiting thread something to do. */
    public InputReader with(Meanwhile work) {
        meanwhile = work;
        return this;
    }

    /**
     * Reads of the field book only what an earlier run has read of it: rows may have been added since.
     *
     * @param sha256Hex digest of what that run read
     */
    public InputReader withBookOf(String sha256Hex) {
        bookSha256 = Optional.of(sha256Hex);
        return this;
    }

    /**
     * Reads everything. Vaults, contents and zones may be left out of the config; routes may not.
     *
     * @throws InputException if a file cannot be used at all
     */
    public InputData read() {
        InputConfig inputs = config.inputs();
        if (inputs.routes().file().isEmpty()) {
            throw new InputException(
                    Path.of("routes"), "no routes are given", "Name a file with --routes or inputs.routes.file.");
        }
        inputs.routes().file().forEach(file -> tally.expect("routes", file));
        inputs.vaults().file().forEach(file -> tally.expect("vaults", file));
        inputs.contents().file().ifPresent(file -> tally.expect("contents", file));
        inputs.zones().file().forEach(file -> tally.expect("zones", file));
        inputs.fieldBook().file().ifPresent(file -> tally.expect(FIELD_BOOK, file));
        // Beside the routes: the zones' reference system is often another, and takes time to look up.
        BackgroundTask<LayerFilesReader.Read<Vault>> vaultReading = beside(config, this::readVaults);
        BackgroundTask<LayerFilesReader.Read<Zone>> zoneReading = beside(config, this::readZones);
        ContentsTable table = inputs.contents().file().map(this::readContents).orElse(ContentsTable.EMPTY);
        FieldBook book = inputs.fieldBook().file().map(this::readBook).orElse(FieldBook.EMPTY);
        LayerFilesReader.Read<Route> routes = readRoutes(table);
        table.reportUnknownDucts(findings);
        meanwhile.on(routes.items(), zoneReading::isUnderWay);
        LayerFilesReader.Read<Zone> zones = zoneReading.await();
        LayerFilesReader.Read<Vault> vaults = vaultReading.await();
        List<LayerFilesReader.FileRead> files = Stream.of(routes.files(), vaults.files(), zones.files())
                .flatMap(List::stream)
                .toList();
        files.forEach(file -> records.add(file.record()));
        reportSwapped(files);
        ZonePlaces.report(zones, routes.items(), findings);
        return new InputData(
                routes.items(),
                vaults.items(),
                zones.items(),
                routes.files().get(0).crs(),
                ordered(),
                inputs.fieldBook().findAsOf().map(book::asOf).orElse(book));
    }

    private LayerFilesReader.Read<Route> readRoutes(ContentsTable table) {
        return this.<Route>reader("routes", config.inputs().routes())
                .read(
                        new Collected<>(Route::id),
                        (crs, fields, log, items) -> new RouteReader(config, crs, fields, log, table, items));
    }

    private LayerFilesReader.Read<Vault> readVaults() {
        return this.<Vault>reader("vaults", config.inputs().vaults())
                .read(
                        new Collected<>(Vault::id),
                        (crs, fields, log, items) -> new VaultReader(config, crs, fields, log, items));
    }

    private LayerFilesReader.Read<Zone> readZones() {
        return this.<Zone>reader("zones", config.inputs().zones())
                .read(
                        new Collected<>(Zone::id),
                        (crs, fields, log, items) -> new ZoneReader(config, crs, fields, log, items));
    }

    private <T> LayerFilesReader<T> reader(String role, LayerConfig layer) {
        return new LayerFilesReader<>(config, findings, opener, tally, role, layer);
    }

    private void reportSwapped(List<LayerFilesReader.FileRead> files) {
        var search = new SwappedAxesFinder(findings);
        Optional<ReferenceSystem> system = outputSystem();
        files.forEach(file -> search.add(file.record().source(), file.reader().suspicion(), system));
        search.report();
    }

    /** Returns the system of the layers to be written, if it is named; one that cannot be read is reported by the writer. */
    private Optional<ReferenceSystem> outputSystem() {
        try {
            return config.output().crs().map(ReferenceSystem::parse);
        } catch (IllegalArgumentException unreadable) {
            return Optional.empty();
        }
    }

    /** The polygons of a file, and its counts. */
    record Areas(List<Zone> zones, InputRecord record) {}

    /** Reads polygons that are no permit zones. */
    Areas readAreas(Path file) {
        tally.expect(LayerFilesReader.AREAS, file);
        LayerFilesReader.Read<Zone> read = this.<Zone>reader(LayerFilesReader.AREAS, LayerConfig.NONE.withFile(file))
                .read(
                        new Collected<>(Zone::id),
                        (crs, fields, log, items) -> new ZoneReader(config, crs, fields, log, items));
        return new Areas(read.items(), read.files().get(0).record());
    }

    private ContentsTable readContents(Path file) {
        FileStamps before = FileStamps.of(file);
        var reader = new ContentsTableReader(file, config, findings);
        ContentsTable table = reader.read();
        tally.of("contents", file).end();
        records.add(new InputRecord(
                "contents",
                String.valueOf(file.getFileName()),
                file,
                "",
                "",
                0,
                reader.rows(),
                reader.usedRows(),
                reader.rejections().byCode(),
                List.of(FileDigest.of(file))));
        before.demandUnchanged();
        return table;
    }

    private FieldBook readBook(Path file) {
        var reader = new FieldBookReader(config.plausible());
        FieldBookReader.Read read =
                bookSha256.map(sha256 -> reader.readBeginning(file, sha256)).orElseGet(() -> reader.read(file));
        String source = String.valueOf(file.getFileName());
        var log = new CappedLog(findings, source);
        read.problems().stream()
                .collect(Collectors.groupingBy(RowProblem::line, LinkedHashMap::new, Collectors.toList()))
                .forEach((line, problems) -> log.add(Finding.of(
                                FindingCode.FIELD_ROW_UNUSABLE,
                                source,
                                "line " + line,
                                problems.stream().map(RowProblem::words).collect(Collectors.joining("; ")))
                        .inField(problems.get(0).column())));
        EntriesToCome.of(config).report(read, source, log);
        log.close(read.rows());
        tally.of(FIELD_BOOK, file).end();
        records.add(new InputRecord(
                FIELD_BOOK,
                source,
                file,
                "",
                "",
                0,
                read.rows(),
                read.book().all().size(),
                read.rejected() == 0 ? Map.of() : Map.of(FindingCode.FIELD_ROW_UNUSABLE, read.rejected()),
                List.of(read.digest())));
        return read.book();
    }

    /** Routes, vaults, contents, zones, field book, whatever was read first. */
    private List<InputRecord> ordered() {
        List<String> roles = List.of("routes", "vaults", "contents", "zones", FIELD_BOOK);
        return roles.stream()
                .flatMap(role -> records.stream().filter(record -> record.role().equals(role)))
                .toList();
    }

    /** Begins work on a separate thread, unless there is only one: then it waits until it is requested. */
    static <T> BackgroundTask<T> beside(RunConfig config, Supplier<T> work) {
        return config.threads() == 1 ? BackgroundTask.deferred(work) : BackgroundTask.start("reader", work);
    }
}
