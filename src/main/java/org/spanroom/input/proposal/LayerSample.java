package org.spanroom.input.proposal;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Consumer;
import org.spanroom.config.AxisOrder;
import org.spanroom.config.LayerConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;

/** The first features of a layer, field by field, and where its lines begin and end. Bounded in memory whatever the layer's size. */
final class LayerSample {
    /** This many features are kept; enough to distinguish fields, and read in a moment. */
    static final int MOST_FEATURES = 5000;

    private final LayerHeader header;
    private final LayerConfig layer;
    private final Set<String> missingWords;
    private final Optional<ReferenceSystem> crs;
    private final List<SeenField> fields;
    private final List<LineEnds> ends = new ArrayList<>();
    private final List<List<String>> rowsOfLines = new ArrayList<>();
    private final Map<String, String> distinct = new HashMap<>();
    private int looked;
    private int lines;
    private long features;
    private boolean whole;

    private LayerSample(LayerHeader header, LayerConfig layer, Set<String> missingWords) {
        this.header = header;
        this.layer = layer;
        this.missingWords = missingWords;
        this.crs = crs(header, layer);
        this.fields =
                FieldName.all(header.fields()).stream().map(SeenField::new).toList();
    }

    /** Ends the reading of a layer of which enough has been seen. */
    private static final class Enough extends RuntimeException {
        private static final long serialVersionUID = 1;

        Enough() {
            super("enough features", null, false, false);
        }
    }

    /**
     * Reads a layer's first features, and all others only where someone wants them.
     *
     * @param everyFeature takes every feature of the layer; empty to stop after the first ones
     */
    static LayerSample read(
            LayerSource source,
            LayerConfig layer,
            Set<String> missingWords,
            Optional<Consumer<SourceFeature>> everyFeature) {
        var sample = new LayerSample(source.header(), layer, missingWords);
        try {
            sample.features = source.read(source.header().fields(), feature -> {
                sample.add(feature, everyFeature.isPresent());
                everyFeature.ifPresent(taker -> taker.accept(sample.turned(feature)));
            });
            sample.whole = true;
        } catch (Enough enough) {
            sample.features = source.header().featureCount();
        }
        return sample;
    }

    private void add(SourceFeature feature, boolean goesOn) {
        if (looked >= MOST_FEATURES) {
            if (goesOn) {
                return;
            }
            throw new Enough();
        }
        looked++;
        lines += feature.geometry().kind() == SourceGeometry.Kind.LINES ? 1 : 0;
        var row = new ArrayList<String>();
        for (int i = 0; i < fields.size(); i++) {
            String text = fields.get(i).add(feature.values().get(i), this::saysMissing);
            row.add(distinct.computeIfAbsent(text, same -> same));
        }
        LineEnds.of(turned(feature).geometry(), crs).ifPresent(place -> {
            ends.add(place);
            rowsOfLines.add(List.copyOf(row));
        });
    }

    private boolean saysMissing(String text) {
        return missingWords.contains(ValueWords.fold(text));
    }

    private SourceFeature turned(SourceFeature feature) {
        return layer.axisOrder() == AxisOrder.NORTH_FIRST ? feature.exchanged() : feature;
    }

    /** Returns the reference system that a layer is read in; empty where none is known. */
    static Optional<ReferenceSystem> crs(LayerHeader header, LayerConfig layer) {
        try {
            return layer.crs().or(header::crsDefinition).map(ReferenceSystem::parse);
        } catch (IllegalArgumentException unusable) {
            return Optional.empty();
        }
    }

    LayerHeader header() {
        return header;
    }

    LayerConfig layer() {
        return layer;
    }

    boolean hasCrs() {
        return crs.isPresent();
    }

    OptionalDouble crsUnitM() {
        return crs.map(ReferenceSystem::unitLengthM).orElse(OptionalDouble.empty());
    }

    List<SeenField> fields() {
        return fields;
    }

    boolean isOfLines() {
        return 2 * lines >= looked;
    }

    int looked() {
        return looked;
    }

    /** Returns how many features the layer has, or -1 where that is not known without reading it all. */
    long features() {
        return features;
    }

    boolean isWhole() {
        return whole;
    }

    int lineCount() {
        return ends.size();
    }

    LineEnds ends(int line) {
        return ends.get(line);
    }

    /** Returns a line's value in a field, "" where it has none. */
    String text(int line, int field) {
        return rowsOfLines.get(line).get(field);
    }
}
