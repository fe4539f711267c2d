package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.spanroom.config.AxisOrder;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.fields.LayerFields;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.FileDigest;
import org.spanroom.input.layer.FileStamps;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.parallel.BackgroundTask;

/**
 * Reads the files of one layer, one after another, each in its own format and reference system. The result is numbered over
 * all files, and an id that occurs in two files is a duplicate as within one.
 */
final class LayerFilesReader<T> {
    /** What polygons are that are read for themselves. */
    static final String AREAS = "areas";

    private final RunConfig config;
    private final FindingLog findings;
    private final InputReader.Opener opener;
    private final ReadingTally tally;
    private final String role;
    private final LayerConfig layer;

    LayerFilesReader(
            RunConfig config,
            FindingLog findings,
            InputReader.Opener opener,
            ReadingTally tally,
            String role,
            LayerConfig layer) {
        this.config = config;
        this.findings = findings;
        this.opener = opener;
        this.tally = tally;
        this.role = role;
        this.layer = layer;
    }

    /** Makes the reader of a file. */
    interface Maker<T> {
        FeatureReader make(ReferenceSystem crs, LayerFields fields, CappedLog log, Collected<T> items);
    }

    /** A file's reader after it has read, the system that it read in, and its counts. */
    record FileRead(FeatureReader reader, LayerHeader header, ReferenceSystem crs, InputRecord record) {}

    /** All that was read, and the counts of the files in their order. */
    record Read<T>(List<T> items, List<FileRead> files) {}

    /** @throws InputException if a file cannot be used at all, is named twice, or none of the files has a field that is mapped */
    Read<T> read(Collected<T> items, Maker<T> maker) {
        demandEachOnce();
        var files = new ArrayList<FileRead>();
        var absent = new AbsentFields(role);
        for (Path file : layer.file()) {
            FileRead read = readFile(file, items, maker);
            items.keep();
            files.add(read);
            if (read.reader.used() > 0) {
                absent.add(read.header, read.record.source(), read.reader.absentFields(read.header));
            }
        }
        absent.report(findings);
        return new Read<>(items.items(), files);
    }

    private void demandEachOnce() {
        var seen = new TreeSet<Path>();
        for (Path file : layer.file()) {
            if (!seen.add(file.toAbsolutePath().normalize())) {
                throw new InputException(file, "it is named twice in the list of " + role, "Name each file once.");
            }
        }
    }

    private FileRead readFile(Path file, Collected<T> items, Maker<T> maker) {
        FileStamps before = FileStamps.ofLayer(file);
        BackgroundTask<List<FileDigest>> digests = InputReader.beside(config, () -> FileDigest.ofLayer(file));
        return readOnceOrTwice(file, (source, heard) -> {
            LayerHeader header = source.header();
            ReferenceSystem crs = crs(header);
            var fields = new LayerFields(layer.fields(), layer.keep(), header);
            items.begin();
            FeatureReader reader = maker.make(crs, fields, new CappedLog(heard, header.source()), items);
            Consumer<SourceFeature> taker = layer.axisOrder() == AxisOrder.NORTH_FIRST
                    ? feature -> reader.accept(feature.exchanged())
                    : reader::accept;
            ReadingTally.FileRead progress = tally.of(role, file);
            long features =
                    FeatureRelay.read(source, fields.wanted(), progress.counting(source, taker), config.threads());
            progress.end();
            reader.close(header, features);
            reader.rejections().add(source.rejected());
            var record = new InputRecord(
                    role,
                    sourceName(header),
                    file,
                    header.layerName(),
                    crs.name(),
                    items.before(),
                    features,
                    reader.used(),
                    reader.rejections().byCode(),
                    digests.await());
            before.demandUnchanged();
            return new FileRead(reader, source.headerAsRead(), crs, record);
        });
    }

    /** Files of one name in several folders are distinguished by their whole names. */
    private String sourceName(LayerHeader header) {
        String name = String.valueOf(header.file().getFileName());
        long namesakes = layer.file().paths().stream()
                .filter(file -> name.equals(String.valueOf(file.getFileName())))
                .count();
        return namesakes > 1 ? header.file() + header.source().substring(name.length()) : header.source();
    }

    /**
     * Opens a file and reads it; a second time, with nothing left of the first but the time, where the first reading has shown that
     * the header was wrong.
     */
    private FileRead readOnceOrTwice(Path file, BiFunction<LayerSource, FindingLog, FileRead> reading) {
        var heard = new FindingLog();
        try (LayerSource source = opener.open(file, layer.layer(), heard)) {
            try {
                FileRead read = reading.apply(source, heard);
                handOn(heard, source.header());
                return read;
            } catch (InputException problem) {
                var heardAnew = new FindingLog();
                try (LayerSource again = source.corrected(heardAnew).orElseThrow(() -> problem)) {
                    FileRead read = reading.apply(again, heardAnew);
                    handOn(heardAnew, again.header());
                    return read;
                }
            }
        }
    }

    private void handOn(FindingLog heard, LayerHeader header) {
        String source = sourceName(header);
        for (Finding finding : heard.all()) {
            findings.add(finding.source().equals(header.source()) ? finding.inSource(source) : finding);
        }
    }

    private ReferenceSystem crs(LayerHeader header) {
        String definition = layer.crs().or(header::crsDefinition).orElseThrow(() -> noSystem(header));
        try {
            return ReferenceSystem.parse(definition);
        } catch (IllegalArgumentException e) {
            String origin = layer.crs().isPresent() ? "the reference system given for it" : "its reference system";
            throw new InputException(header.file(), origin + " cannot be used: " + e.getMessage(), giveIt(), e);
        }
    }

    private InputException noSystem(LayerHeader header) {
        return new InputException(header.file(), "it does not state its reference system", giveIt());
    }

    private String giveIt() {
        if (role.equals(AREAS)) {
            return "Export it again with its reference system.";
        }
        return "Give the right one with --crs EPSG:code or inputs." + role + ".crs.";
    }
}
