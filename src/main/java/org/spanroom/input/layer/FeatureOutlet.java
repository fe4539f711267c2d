package org.spanroom.input.layer;

import java.util.function.Consumer;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.layer.SourceGeometry.Kind;
import org.spanroom.model.Counted;

/** The one door through which every reader lets a feature out: handed on, or rejected with a finding; never neither. */
public final class FeatureOutlet {
    private final LayerLog log;
    private final WantedFields fields;
    private final Consumer<SourceFeature> sink;
    private long met;

    public FeatureOutlet(LayerLog log, WantedFields fields, Consumer<SourceFeature> sink) {
        this.log = log;
        this.fields = fields;
        this.sink = sink;
    }

    /** Returns how many features have been met, the rejected ones included. */
    public long met() {
        return met;
    }

    /** Returns the number, from 1, of the feature that comes next. */
    public long next() {
        return met + 1;
    }

    /** Passes on the feature whose vertices are in the buffer and whose values are in the fields. */
    public void handOn(String fileId, String geometryType, Kind kind, VertexBuffer vertices) {
        met++;
        SourceGeometry geometry = vertices.build(kind);
        int tooShort = vertices.tooShort(kind);
        if (tooShort > 0) {
            log.feature(
                    FindingCode.DEGENERATE_PART,
                    met,
                    fileId,
                    Counted.of(tooShort, "part") + " with fewer than " + (kind == Kind.LINES ? "two" : "three")
                            + " vertices");
        }
        if (vertices.heightsIncomplete()) {
            log.odd(FindingCode.LAYER_ISSUE, met, "some vertices have no height; the heights were ignored");
        }
        sink.accept(new SourceFeature(met, fileId, geometryType, geometry, fields.values()));
    }

    public void reject(String fileId, FeatureFault fault) {
        met++;
        log.rejected(fault.code(), met, fileId, fault.detail());
    }
}
