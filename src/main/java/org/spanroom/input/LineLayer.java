package org.spanroom.input;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.FindingLog;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.Blanks;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerSource;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.model.Line;

/**
 * Reads lines and one of their fields from a layer of any format, for a backdrop: a damaged feature is left out, but one that is no line
 * refuses the file, which then is another layer than the one meant.
 */
public final class LineLayer {
    private static final double MOST_LATITUDE_DEG = 90;
    private static final double MOST_LONGITUDE_DEG = 360;

    private final Path file;
    private final LayerSource source;
    private final ReferenceSystem crs;
    private final OrdinateSuspicion ordinates;
    private final List<Named> found = new ArrayList<>();

    private LineLayer(Path file, LayerSource source) {
        this.file = file;
        this.source = source;
        this.crs = crs(source.header());
        this.ordinates = new OrdinateSuspicion(crs);
    }

    /**
     * A line with the value of its field.
     *
     * @param value as text; empty where the feature has none
     * @param lonLat in degrees on WGS 84, without heights
     */
    public record Named(String value, Line lonLat) {}

    /**
     * Returns all lines of a layer, in the order of the file; each part of a line of several parts is one.
     *
     * @param fieldOf chooses, of the names of all fields, the one whose values are wanted; none for empty values
     * @throws InputException if the file cannot be read, does not state its reference system, holds something else than lines, or no line
     */
    public static List<Named> read(Path file, Function<List<String>, Optional<String>> fieldOf) {
        try (LayerSource source = LayerSources.open(file, Optional.empty(), new FindingLog())) {
            try {
                return new LineLayer(file, source).read(fieldOf);
            } catch (InputException problem) {
                // a GeoJSON file may state its reference system at its end
                try (LayerSource again = source.corrected(new FindingLog()).orElseThrow(() -> problem)) {
                    return new LineLayer(file, again).read(fieldOf);
                }
            }
        }
    }

    private List<Named> read(Function<List<String>, Optional<String>> fieldOf) {
        List<String> wanted =
                fieldOf.apply(source.header().fields()).map(List::of).orElse(List.of());
        source.read(wanted, this::take);
        if (found.isEmpty()) {
            String reason = ordinates
                    .find()
                    .map(why -> " in " + crs.name() + ": " + why.replaceFirst("\\. .*", ""))
                    .orElse("");
            throw new InputException(
                    file,
                    "it has no line that can be used" + reason,
                    reason.isEmpty()
                            ? "Name a layer of lines."
                            : "Export it with its reference system, longitude or easting first.");
        }
        return found;
    }

    private void take(SourceFeature feature) {
        SourceGeometry geometry = feature.geometry();
        if (geometry.kind() == SourceGeometry.Kind.NONE) {
            return;
        }
        if (geometry.kind() != SourceGeometry.Kind.LINES) {
            throw new InputException(
                    file,
                    "feature " + feature.number() + " is of type " + feature.geometryType()
                            + ", but lines are expected",
                    "Name a layer of center lines, or convert it to one.");
        }
        Object value = feature.values().isEmpty() ? null : feature.values().get(0);
        String text = value == null ? "" : Blanks.strip(value.toString());
        for (double[] part : geometry.parts()) {
            lonLat(part, geometry.hasZ() ? 3 : 2).ifPresent(line -> found.add(new Named(text, line)));
        }
    }

    private Optional<Line> lonLat(double[] part, int dimension) {
        if (part.length >= dimension) {
            ordinates.see(part[0], part[1]);
        }
        double[] places = part.clone();
        crs.toLonLat(places, dimension);
        double[] lonLat = new double[places.length / dimension * 2];
        for (int i = 0; i < lonLat.length / 2; i++) {
            lonLat[2 * i] = places[dimension * i];
            lonLat[2 * i + 1] = places[dimension * i + 1];
            // also false for what is not a number
            boolean isOnGlobe =
                    Math.abs(lonLat[2 * i]) <= MOST_LONGITUDE_DEG && Math.abs(lonLat[2 * i + 1]) <= MOST_LATITUDE_DEG;
            if (!isOnGlobe) {
                return Optional.empty();
            }
        }
        Geometries.roundDegrees(lonLat, 2);
        return Optional.of(Line.ofXy(lonLat));
    }

    private static ReferenceSystem crs(LayerHeader header) {
        String remedy = "Export it again with its reference system.";
        String definition = header.crsDefinition()
                .orElseThrow(() -> new InputException(header.file(), "it does not state its reference system", remedy));
        try {
            return ReferenceSystem.parse(definition);
        } catch (IllegalArgumentException e) {
            throw new InputException(
                    header.file(), "its reference system cannot be used: " + e.getMessage(), remedy, e);
        }
    }
}
