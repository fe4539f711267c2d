package org.spanroom.input.geojson;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.FeatureOutlet;
import org.spanroom.input.layer.LayerFormat;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerLog;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.WantedFields;

/** A GeoJSON file as a layer: the names of its fields and its reference system are found by looking at its first features. */
public final class GeoJsonSource implements LayerSource {
    private static final int FEATURES_TO_LOOK_AT = 100;
    private static final int FEATURES_BETWEEN_SHARES = 256;

    private final LayerHeader header;
    private final FindingLog findings;
    private final GeoJsonTexts.Layout layout;
    private final boolean mayBeCorrected;
    private Optional<LayerHeader> correctHeader = Optional.empty();
    private List<String> fieldsMet = List.of();
    private LayerLog log;
    private volatile double share;

    private GeoJsonSource(LayerHeader header, FindingLog findings, GeoJsonTexts.Layout layout, boolean mayBeCorrected) {
        this.header = header;
        this.findings = findings;
        this.layout = layout;
        this.mayBeCorrected = mayBeCorrected;
        this.log = LayerLog.unheard(header.source());
    }

    public static GeoJsonSource open(Path file, FindingLog findings) {
        try {
            GeoJsonTexts.Layout layout = GeoJsonTexts.layoutOf(file);
            var log = LayerLog.unheard("");
            var fields = new WantedFields(List.of());
            var feature = new GeoJsonFeature(fields, log, true);
            var reader = new GeoJsonReader(
                    file,
                    feature,
                    new FeatureOutlet(log, fields, looked -> {}),
                    log,
                    FEATURES_TO_LOOK_AT,
                    Optional.empty());
            try (var texts = new GeoJsonTexts(file, layout)) {
                reader.read(texts);
            }
            Optional<Optional<String>> crs = reader.statedCrs();
            if (crs.isEmpty() && reader.stopped()) {
                crs = GeoJsonCrs.atEndOf(file);
            }
            var header = new LayerHeader(
                    file,
                    LayerFormat.stem(file),
                    feature.properties().names(),
                    crs.orElse(Optional.of(GeoJsonCrs.DEFAULT)),
                    -1);
            return new GeoJsonSource(header, findings, layout, crs.isEmpty());
        } catch (IOException e) {
            throw LayerFormat.unreadable(file, e);
        }
    }

    @Override
    public LayerHeader header() {
        return header;
    }

    @Override
    public LayerHeader headerAsRead() {
        return header.withFields(Stream.concat(header.fields().stream(), fieldsMet.stream())
                .distinct()
                .toList());
    }

    @Override
    public long read(List<String> wantedFields, Consumer<SourceFeature> sink) {
        log = new LayerLog(header.source(), findings);
        var fields = new WantedFields(wantedFields);
        try (var texts = new GeoJsonTexts(header.file(), layout)) {
            var outlet = new FeatureOutlet(log, fields, noting(texts, sink));
            read(texts, fields, outlet);
            log.close(outlet.met());
            return outlet.met();
        } catch (IOException e) {
            throw LayerFormat.unreadable(header.file(), e);
        }
    }

    private void read(GeoJsonTexts texts, WantedFields fields, FeatureOutlet outlet) throws IOException {
        var feature = new GeoJsonFeature(fields, log, false);
        var reader = new GeoJsonReader(header.file(), feature, outlet, log, Long.MAX_VALUE, Optional.of(header));
        try {
            reader.read(texts);
        } finally {
            fieldsMet = feature.properties().met();
            correctHeader = reader.lateCrs().filter(late -> mayBeCorrected).map(header::withCrs);
        }
    }

    /** Looks at times how far the file has been read; every feature would be too often. */
    private Consumer<SourceFeature> noting(GeoJsonTexts texts, Consumer<SourceFeature> sink) {
        return feature -> {
            if (feature.number() % FEATURES_BETWEEN_SHARES == 0) {
                share = texts.shareRead();
            }
            sink.accept(feature);
        };
    }

    @Override
    public double shareRead(long features) {
        return share;
    }

    @Override
    public Map<FindingCode, Long> rejected() {
        return log.rejections().byCode();
    }

    /** A "crs" that comes after the features and not near the end is only found by reading to it. */
    @Override
    public Optional<LayerSource> corrected(FindingLog findingsAnew) {
        return correctHeader.map(correct -> new GeoJsonSource(correct, findingsAnew, layout, false));
    }

    @Override
    public void close() {
        // each reading opens and closes the file by itself
    }
}
