package org.spanroom.input.geojson;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.spanroom.finding.FindingCode;
import org.spanroom.finding.InputException;
import org.spanroom.input.layer.FeatureFault;
import org.spanroom.input.layer.FeatureOutlet;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.LayerLog;

/**
 * Reads GeoJSON texts feature by feature: FeatureCollections, single Features, bare geometries (RFC 7946), one or many in
 * a file.
 *
 * <p>A feature that is JSON, but not as it should be, is rejected by itself. Where the JSON is broken the reading of the
 * file ends with an exception that names the place, because nothing after it can be trusted and a shorter layer must not
 * pass for the whole one; only in line- and record-delimited files the broken text is rejected as one feature, and the next
 * text is read.
 */
final class GeoJsonReader {
    /** Members of the outermost object that Esri's JSON of features has, and GeoJSON has not. */
    private static final Set<String> ESRI_MEMBERS =
            Set.of("geometryType", "spatialReference", "fieldAliases", "displayFieldName", "objectIdFieldName");

    private static final String REMEDY = "Fix the file, or export it again";

    private final Path file;
    private final GeoJsonFeature feature;
    private final FeatureOutlet outlet;
    private final LayerLog log;
    private final long most;
    private final Optional<LayerHeader> header;
    private Optional<Optional<String>> statedCrs = Optional.empty();
    private Optional<Optional<String>> lateCrs = Optional.empty();
    private GeoJsonTexts.Layout layout = GeoJsonTexts.Layout.ONE_STREAM;
    private boolean stopped;

    /**
     * @param most how many features to read before stopping
     * @param header the layer's, whose reference system must prove right; empty while the header is being made
     */
    GeoJsonReader(
            Path file,
            GeoJsonFeature feature,
            FeatureOutlet outlet,
            LayerLog log,
            long most,
            Optional<LayerHeader> header) {
        this.file = file;
        this.feature = feature;
        this.outlet = outlet;
        this.log = log;
        this.most = most;
        this.header = header;
    }

    /** Returns what the outermost object stated of its reference system, if it did before the reading stopped. */
    Optional<Optional<String>> statedCrs() {
        return statedCrs;
    }

    /** Returns the reference system that came to light after features had been read as if in another, if one did. */
    Optional<Optional<String>> lateCrs() {
        return lateCrs;
    }

    /** Returns true if reading stopped at the number of features allowed, not at the end. */
    boolean stopped() {
        return stopped;
    }

    void read(GeoJsonTexts texts) throws IOException {
        layout = texts.layout();
        boolean any = false;
        for (JsonParser parser = texts.next(); parser != null && !stopped; parser = stopped ? null : texts.next()) {
            try (JsonParser text = parser) {
                while (!stopped && text.nextToken() != null) {
                    any = true;
                    readRoot(text);
                }
            } catch (JsonProcessingException broken) {
                any = true;
                endBrokenText(texts, broken, parser.currentLocation());
            }
        }
        if (!any) {
            throw new InputException(file, "it contains only white space", REMEDY);
        }
    }

    private void endBrokenText(GeoJsonTexts texts, JsonProcessingException broken, JsonLocation reached) {
        String place = texts.place(Optional.ofNullable(broken.getLocation()).orElse(reached));
        String problem = "the JSON is broken at " + place + " (" + JsonProblem.words(broken) + ")";
        if (!layout.outlastsBrokenText()) {
            throw new InputException(file, problem + ", in or after feature " + outlet.next(), REMEDY, broken);
        }
        outlet.reject("", FeatureFault.unreadable(problem));
    }

    private void readRoot(JsonParser parser) throws IOException {
        try {
            if (parser.currentToken() != JsonToken.START_OBJECT) {
                String found = GeoJsonFeature.words(parser.currentToken());
                parser.skipChildren();
                throw noGeoJson("the top-level value is " + found + ", but GeoJSON requires an object");
            }
            new Root().read(parser);
        } catch (FeatureFault fault) {
            outlet.reject(feature.id(), fault);
        }
        stopped |= outlet.met() >= most;
    }

    /** Ends the reading where the whole file is at fault; where a text is one of many, only the text. */
    private FeatureFault noGeoJson(String problem) {
        if (!layout.outlastsBrokenText()) {
            throw new InputException(file, problem, "Give a GeoJSON file (RFC 7946)");
        }
        return FeatureFault.unreadable(problem);
    }

    /** The outermost object of a text. Whether it is a collection, a feature or a geometry may come last. */
    private final class Root {
        private final GeoJsonGeometry bare = new GeoJsonGeometry();
        private final PartialLayer partial = new PartialLayer();
        private final long before = outlet.met();
        private @Nullable String type;
        private boolean hasFeatures;
        private boolean esri;
        private boolean refusal;
        private @Nullable FeatureFault fault;

        private void read(JsonParser parser) throws IOException, FeatureFault {
            feature.begin(outlet.next());
            for (String name = parser.nextFieldName(); name != null; name = parser.nextFieldName()) {
                JsonToken token = parser.nextToken();
                int depth = parser.getParsingContext().getNestingDepth();
                try {
                    member(name, parser);
                } catch (FeatureFault f) {
                    fault = fault == null ? f : fault;
                    leave(parser, depth, token);
                }
                if (stopped) {
                    return;
                }
            }
            end();
        }

        private void member(String name, JsonParser parser) throws IOException, FeatureFault {
            boolean collection = "FeatureCollection".equals(type);
            switch (name) {
                case "type" -> {
                    type = GeoJsonFeature.type(parser, type);
                    bare.member(name, parser);
                }
                case "crs" -> crs(parser);
                case "features" -> {
                    if (collection || type == null) {
                        features(parser);
                    } else {
                        parser.skipChildren();
                    }
                }
                case "coordinates", "geometries" -> {
                    if (collection || hasFeatures || "Feature".equals(type)) {
                        parser.skipChildren();
                    } else {
                        bare.member(name, parser);
                    }
                }
                default -> {
                    esri |= ESRI_MEMBERS.contains(name);
                    refusal |= "error".equals(name);
                    if (partial.takes(name, parser)) {
                        return;
                    }
                    if (!collection && !hasFeatures) {
                        feature.member(name, parser);
                    } else if ("properties".equals(name)) {
                        partial.takeProperties(parser);
                    } else {
                        parser.skipChildren();
                    }
                }
            }
        }

        private void end() throws FeatureFault {
            demandNoOtherFormat();
            if (type == null && fault == null) {
                throw noGeoJson("the top-level object has no \"type\"");
            }
            if (hasFeatures || "FeatureCollection".equals(type)) {
                endCollection();
                return;
            }
            if (type != null && !"Feature".equals(type) && !GeoJsonGeometry.isType(type)) {
                throw noGeoJson("the top-level object's type \"" + type + "\" is not a GeoJSON type");
            }
            if (fault != null) {
                throw fault;
            }
            if ("Feature".equals(type)) {
                handOn(feature.id(), feature.geometry());
            } else {
                bare.end();
                handOn("", bare);
            }
        }

        private void demandNoOtherFormat() throws FeatureFault {
            if ("Topology".equals(type)) {
                throw noGeoJson("it is TopoJSON, not GeoJSON; export it as GeoJSON");
            }
            if (refusal && type == null && !hasFeatures) {
                throw noGeoJson("it is an error message of a server, not a layer; download the layer again");
            }
            if (esri && type == null) {
                throw noGeoJson("it is Esri JSON, not GeoJSON; export it as GeoJSON");
            }
        }

        private void endCollection() throws FeatureFault {
            if (!"FeatureCollection".equals(type)) {
                throw noGeoJson("the top-level object has \"features\", but its type is "
                        + (type == null ? "missing" : "\"" + type + "\""));
            }
            if (!hasFeatures) {
                throw noGeoJson("the FeatureCollection has no \"features\"");
            }
            if (fault != null) {
                throw noGeoJson("in the top-level object: " + fault.detail());
            }
            partial.missing(outlet.met() - before)
                    .ifPresent(missing -> log.layer(FindingCode.LAYER_INCOMPLETE, missing));
        }

        private void features(JsonParser parser) throws IOException, FeatureFault {
            if (parser.currentToken() != JsonToken.START_ARRAY) {
                String found = GeoJsonFeature.words(parser.currentToken());
                throw noGeoJson("\"features\" is " + found + " and must be a list");
            }
            if (hasFeatures) {
                log.odd(FindingCode.LAYER_ISSUE, outlet.next(), "\"features\" occurs twice; both were read");
            }
            hasFeatures = true;
            while (!stopped && parser.nextToken() != JsonToken.END_ARRAY) {
                readFeature(parser);
                stopped = outlet.met() >= most;
            }
        }

        private void crs(JsonParser parser) throws IOException, FeatureFault {
            Optional<String> stated = GeoJsonCrs.read(parser);
            if (statedCrs.isEmpty()) {
                statedCrs = Optional.of(stated);
            }
            if (contradictsHeader(stated)) {
                lateCrs = Optional.of(stated);
                throw noGeoJson("it has two members \"crs\" that differ");
            }
        }
    }

    private void readFeature(JsonParser parser) throws IOException {
        JsonToken token = parser.currentToken();
        int depth = parser.getParsingContext().getNestingDepth();
        feature.begin(outlet.next());
        try {
            if (token != JsonToken.START_OBJECT) {
                throw FeatureFault.unreadable("it is " + GeoJsonFeature.words(token) + ", not an object");
            }
            feature.read(parser);
            if (feature.crs().filter(this::contradictsHeader).isPresent()) {
                throw FeatureFault.unreadable("it states a reference system other than that of the layer");
            }
            handOn(feature.id(), feature.geometry());
        } catch (FeatureFault fault) {
            leave(parser, depth, token);
            outlet.reject(feature.id(), fault);
        }
    }

    private void handOn(String id, GeoJsonGeometry geometry) {
        if (geometry.hasOddHeights()) {
            log.odd(FindingCode.LAYER_ISSUE, outlet.next(), "a height is not a number; it was ignored");
        }
        outlet.handOn(id, geometry.typeName(), geometry.kind(), geometry.vertices());
    }

    private boolean contradictsHeader(Optional<String> statedCrs) {
        return header.filter(layer -> !layer.crsDefinition().equals(statedCrs)).isPresent();
    }

    /** Goes to the end of the list or object at whose beginning the parser was at that depth. */
    private static void leave(JsonParser parser, int depth, JsonToken begun) throws IOException {
        while (begun.isStructStart()
                && parser.getParsingContext().getNestingDepth() >= depth
                && parser.nextToken() != null) {
            // what is passed over belongs to the rejected feature
        }
    }
}
