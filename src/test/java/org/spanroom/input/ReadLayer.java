package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.FindingLog;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;

/** A layer read whole, with everything that was said about it, for tests to look at. */
public record ReadLayer(LayerHeader header, List<SourceFeature> features, long met, FindingLog findings) {
    public static ReadLayer of(Path file, String... wanted) {
        return of(file, Optional.empty(), List.of(wanted));
    }

    /** Reads every field that the header announces. */
    public static ReadLayer withAllFields(Path file) {
        try (LayerSource source = LayerSources.open(file, Optional.empty(), new FindingLog())) {
            return of(file, Optional.empty(), source.header().fields());
        }
    }

    public static ReadLayer of(Path file, Optional<String> layer, List<String> wanted) {
        var findings = new FindingLog();
        try (LayerSource source = LayerSources.open(file, layer, findings)) {
            var features = new ArrayList<SourceFeature>();
            long met = source.read(wanted, features::add);
            return new ReadLayer(source.header(), features, met, findings);
        }
    }

    /** Returns how many features were rejected with a finding. */
    public long rejected() {
        return findings.all().stream()
                .filter(finding -> finding.code() == FindingCode.UNREADABLE_FEATURE
                        || finding.code() == FindingCode.BAD_COORDINATE)
                .count();
    }

    public List<FindingCode> codes() {
        return findings.all().stream().map(finding -> finding.code()).toList();
    }

    public List<String> details() {
        return findings.all().stream().map(finding -> finding.detail()).toList();
    }

    /** Returns the geometries as short texts. */
    public List<String> geometries() {
        return features.stream().map(feature -> text(feature.geometry())).toList();
    }

    public List<List<Object>> values() {
        return features.stream().<List<Object>>map(SourceFeature::values).toList();
    }

    /** Returns a geometry as text: kind, then each part's ordinates; "+" before a ring that starts a polygon. */
    public static String text(SourceGeometry geometry) {
        var parts = new StringJoiner(" ", geometry.kind() + (geometry.hasZ() ? " Z" : ""), "");
        parts.setEmptyValue(geometry.kind().toString());
        parts.add("");
        for (int i = 0; i < geometry.parts().size(); i++) {
            boolean starts = !geometry.startsPolygon().isEmpty()
                    && geometry.startsPolygon().get(i);
            parts.add((starts ? "+" : "") + Arrays.toString(geometry.parts().get(i)));
        }
        return parts.toString();
    }
}
