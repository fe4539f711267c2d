package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.spanroom.config.AxisOrder;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.ContentsTable;
import org.spanroom.input.fields.ContentsTableReader;
import org.spanroom.input.fields.LayerFields;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.model.network.Vault;
import org.spanroom.model.permit.Zone;
import org.spanroom.parallel.BackgroundTask;

/**
 * Reads what a run is about: routes, vaults, contents and permit zones, each from the file that the config names.
 *
 * <p>Places come out in degrees on WGS 84, quantities in our units, gaps filled with the assumed values. What cannot be used, and what
 * cannot be believed, goes to the findings.
 */
public final class InputReader {
    /** What polygons are that are read for themselves. */
    private static final String AREAS = "areas";

    private final RunConfig config;
    private final FindingLog findings;
    private final Opener opener;
    private final ReadingTally tally;
    private final List<InputRecord> records = new ArrayList<>();

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

    /**
     * Reads everything. Vaults, contents and zones may be left out of the config; routes may not.
     *
     * @throws InputException if a file cannot be used at all
     */
    public InputData read() {
        Path routesFile = config.inputs()
                .routes()
                .file()
                .orElseThrow(() -> new InputException(
                        Path.of("routes"), "no routes are given", "Name a file with --routes or inputs.routes.file."));
        tally.expect("routes", routesFile);
        config.inputs().vaults().file().ifPresent(file -> tally.expect("vaults", file));
        config.inputs().contents().file().ifPresent(file -> tally.expect("contents", file));
        config.inputs().zones().file().ifPresent(file -> tally.expect("zones", file));
        BackgroundTask<Optional<LayerRead<VaultReader>>> vaultReading = beside(this::readVaults);
        BackgroundTask<Optional<LayerRead<ZoneReader>>> zonesBeside = beside(this::readZones);
        ContentsTable table =
                config.inputs().contents().file().map(this::readContents).orElse(ContentsTable.EMPTY);
        LayerRead<RouteReader> routes = readRoutes(routesFile, table);
        table.tellUnknownDucts(findings);
        Optional<LayerRead<ZoneReader>> zonesRead = zonesBeside.await();
        zonesRead.map(LayerRead::record).ifPresent(records::add);
        Optional<LayerRead<VaultReader>> read = vaultReading.await();
        read.map(LayerRead::record).ifPresent(records::add);
        List<Vault> vaults =
                read.map(vaultsRead -> vaultsRead.reader().vaults()).orElse(List.of());
        List<Zone> zones = zonesRead.map(layer -> layer.reader().zones()).orElse(List.of());
        tellExchanged(
                Stream.<Optional<? extends LayerRead<? extends FeatureReader>>>of(Optional.of(routes), read, zonesRead)
                        .<LayerRead<? extends FeatureReader>>flatMap(Optional::stream)
                        .toList());
        return new InputData(routes.reader().routes(), vaults, zones, routes.crs(), ordered());
    }

    /** A layer's reader after it has read, the system that it read in, and the account of it. */
    private record LayerRead<R>(R reader, ReferenceSystem crs, InputRecord record) {}

    /** Makes the reader of a layer. */
    private interface Maker<R> {
        R make(ReferenceSystem crs, LayerFields fields, CappedLog log);
    }

    private LayerRead<RouteReader> readRoutes(Path file, ContentsTable table) {
        LayerRead<RouteReader> read = readLayer(
                "routes",
                file,
                config.inputs().routes(),
                (crs, fields, log) -> new RouteReader(config, crs, fields, log, table));
        records.add(read.record());
        return read;
    }

    /** Runs beside the reading of routes, and so leaves its record to the caller that waits for it. */
    private Optional<LayerRead<VaultReader>> readVaults() {
        LayerConfig layer = config.inputs().vaults();
        return layer.file()
                .map(file -> readLayer(
                        "vaults", file, layer, (crs, fields, log) -> new VaultReader(config, crs, fields, log)));
    }

    private void tellExchanged(List<LayerRead<? extends FeatureReader>> layers) {
        var search = new SwappedAxesFinder(findings);
        Optional<ReferenceSystem> system = outputSystem();
        layers.forEach(
                layer -> search.add(layer.record().source(), layer.reader().suspicion(), system));
        search.tell();
    }

    /** Returns the system of the layers to be written, if it is named; one that cannot be read is reported by the writer. */
    private Optional<ReferenceSystem> outputSystem() {
        try {
            return config.output().crs().map(ReferenceSystem::parse);
        } catch (IllegalArgumentException unreadable) {
            return Optional.empty();
        }
    }

    /** Runs beside the reading of routes too; the zones' reference system is often another, and takes time to look up. */
    private Optional<LayerRead<ZoneReader>> readZones() {
        LayerConfig layer = config.inputs().zones();
        return layer.file()
                .map(file -> readLayer(
                        "zones", file, layer, (crs, fields, log) -> new ZoneReader(config, crs, fields, log)));
    }

    /** The polygons of a file, and the account of it. */
    record Areas(List<Zone> zones, InputRecord record) {}

    /** Reads polygons that are no permit zones. */
    Areas readAreas(Path file) {
        tally.expect(AREAS, file);
        LayerRead<ZoneReader> read = readLayer(
                AREAS,
                file,
                LayerConfig.NONE,
                (crs, fields, log) -> new ZoneReader(config, crs, fields, log));
        return new Areas(read.reader().zones(), read.record());
    }

    private <R extends FeatureReader> LayerRead<R> readLayer(
            String role, Path file, LayerConfig layer, Maker<R> maker) {
        BackgroundTask<List<FileDigest>> digests = beside(() -> FileDigest.ofLayer(file));
        return readOnceOrTwice(file, layer, (source, heard) -> {
            LayerHeader header = source.header();
            ReferenceSystem crs = crs(header, layer, role);
            var fields = new LayerFields(layer.fields(), layer.keep(), header);
            R reader = maker.make(crs, fields, new CappedLog(heard, header.source()));
            Consumer<SourceFeature> taker = layer.axisOrder() == AxisOrder.NORTH_FIRST
                    ? feature -> reader.accept(feature.exchanged())
                    : reader::accept;
            long features = FeatureRelay.read(
                    source, fields.wanted(), tally.of(role).counting(source, taker), config.threads());
            tally.of(role).end();
            reader.close(header, features);
            reader.rejections().add(source.rejected());
            var record = new InputRecord(
                    role,
                    file,
                    header.layerName(),
                    crs.name(),
                    features,
                    reader.used(),
                    reader.rejections().byCode(),
                    digests.await());
            return new LayerRead<>(reader, crs, record);
        });
    }

    private ContentsTable readContents(Path file) {
        var reader = new ContentsTableReader(file, config, findings);
        ContentsTable table = reader.read();
        tally.of("contents").end();
        records.add(new InputRecord(
                "contents",
                file,
                "",
                "",
                reader.rows(),
                reader.usedRows(),
                reader.rejections().byCode(),
                List.of(FileDigest.of(file))));
        return table;
    }

    /**
     * Opens a layer and reads it; a second time, with nothing left of the first but the time, where the first reading has shown that
     * the header was wrong.
     */
    private <T> T readOnceOrTwice(Path file, LayerConfig layer, BiFunction<LayerSource, FindingLog, T> reading) {
        var heard = new FindingLog();
        try (LayerSource source = opener.open(file, layer.layer(), heard)) {
            try {
                T read = reading.apply(source, heard);
                heard.all().forEach(findings::add);
                return read;
            } catch (InputException problem) {
                var heardAnew = new FindingLog();
                try (LayerSource again = source.corrected(heardAnew).orElseThrow(() -> problem)) {
                    T read = reading.apply(again, heardAnew);
                    heardAnew.all().forEach(findings::add);
                    return read;
                }
            }
        }
    }

    /** Routes, vaults, contents, zones, whatever was read first. */
    private List<InputRecord> ordered() {
        List<String> roles = List.of("routes", "vaults", "contents", "zones");
        return roles.stream()
                .flatMap(role -> records.stream().filter(record -> record.role().equals(role)))
                .toList();
    }

    private static ReferenceSystem crs(LayerHeader header, LayerConfig layer, String role) {
        String definition = layer.crs().or(header::crsDefinition).orElseThrow(() -> noSystem(header, role));
        try {
            return ReferenceSystem.parse(definition);
        } catch (IllegalArgumentException e) {
            String origin = layer.crs().isPresent() ? "the reference system given for it" : "its reference system";
            throw new InputException(header.file(), origin + " cannot be used: " + e.getMessage(), giveIt(role), e);
        }
    }

    private static InputException noSystem(LayerHeader header, String role) {
        return new InputException(header.file(), "it does not say which reference system it is in", giveIt(role));
    }

    private static String giveIt(String role) {
        if (role.equals(AREAS)) {
            return "Write it again with its reference system in it.";
        }
        return "Give the right one with --crs EPSG:code or inputs." + role + ".crs.";
    }

    /** Begins work on a thread of its own, unless one is all there is: then it waits until it is asked for. */
    private <T> BackgroundTask<T> beside(Supplier<T> work) {
        return config.threads() == 1 ? BackgroundTask.deferred(work) : BackgroundTask.start("reader", work);
    }
}
