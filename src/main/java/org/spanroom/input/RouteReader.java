package org.spanroom.input;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.fields.ContentsTable;
import org.spanroom.input.fields.DuctMapper;
import org.spanroom.input.fields.FeatureValues;
import org.spanroom.input.fields.LayerFields;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.Interner;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.Rejections;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.EndFacts;
import org.spanroom.model.network.Route;
import org.spanroom.model.network.RouteEnds;

/** Makes routes of the features of a layer of lines: one of each part. */
final class RouteReader implements FeatureReader {
    private final ReferenceSystem crs;
    private final CappedLog log;
    private final FeatureValues values;
    private final DuctMapper ducts;
    private final OrdinateSuspicion suspicion;
    private final LengthAgreement lengths = new LengthAgreement();
    private final Collected<Route> routes;
    private final Rejections rejections = new Rejections();
    private final Interner interner = new Interner();
    private long used;

    RouteReader(
            RunConfig config,
            ReferenceSystem crs,
            LayerFields fields,
            CappedLog log,
            ContentsTable table,
            Collected<Route> routes) {
        this.crs = crs;
        this.log = log;
        this.values = new FeatureValues(config, fields, log);
        this.ducts = new DuctMapper(config, values, table);
        this.suspicion = new OrdinateSuspicion(crs);
        this.routes = routes;
    }

    @Override
    public long used() {
        return used;
    }

    @Override
    public OrdinateSuspicion suspicion() {
        return suspicion;
    }

    @Override
    public Rejections rejections() {
        return rejections;
    }

    @Override
    public void accept(SourceFeature feature) {
        SourceGeometry geometry = feature.geometry();
        if (geometry.kind() != SourceGeometry.Kind.LINES) {
            rejections.count(Geometries.reject(feature, "lines", log));
            return;
        }
        int dimension = geometry.hasZ() ? 3 : 2;
        var lines = new ArrayList<Line>();
        for (double[] part : geometry.parts()) {
            toLine(feature, part, dimension).ifPresent(lines::add);
        }
        if (lines.isEmpty()) {
            rejections.count(FindingCode.BAD_COORDINATE);
            return;
        }
        rejectDots(feature, lines);
        if (lines.isEmpty()) {
            rejections.count(FindingCode.ZERO_LENGTH_PART);
            return;
        }
        used++;
        add(feature, lines);
    }

    /** Takes out the parts without length here, so that no count behind this one holds them. */
    private void rejectDots(SourceFeature feature, List<Line> lines) {
        int drawn = lines.size();
        for (int part = 0, left = 0; part < drawn; part++) {
            Line line = lines.get(left);
            if (isDot(line)) {
                String which = drawn == 1 ? "the line" : "part " + (part + 1);
                values.start(feature, Term.ROUTE, line.x(0), line.y(0));
                values.add(
                        FindingCode.ZERO_LENGTH_PART,
                        "",
                        () -> (line.size() == 2 ? "both" : "all " + line.size()) + " vertices of " + which
                                + " are at the same location");
                lines.remove(left);
            } else {
                left++;
            }
        }
    }

    /** Returns true where all vertices are one; degrees are rounded, so that what is equal is so to the last bit. */
    private static boolean isDot(Line line) {
        for (int vertex = 1; vertex < line.size(); vertex++) {
            boolean east = Math.IEEEremainder(line.x(vertex) - line.x(0), 360) != 0;
            if (east || line.y(vertex) != line.y(0)) {
                return false;
            }
        }
        return true;
    }

    private Optional<Line> toLine(SourceFeature feature, double[] ordinates, int dimension) {
        suspicion.see(ordinates[0], ordinates[1]);
        double x = ordinates[0];
        double y = ordinates[1];
        crs.toLonLat(ordinates, dimension);
        if (!Geometries.isFinite(ordinates)) {
            log.add(Finding.of(
                    FindingCode.BAD_COORDINATE,
                    log.source(),
                    Long.toString(feature.number()),
                    "a line that begins at " + x + ", " + y + " extends beyond the reference system " + crs.name()));
            return Optional.empty();
        }
        Geometries.roundDegrees(ordinates, dimension);
        return Optional.of(interner.one(Line.wrap(ordinates, dimension == 3).compact()));
    }

    private void add(SourceFeature feature, List<Line> lines) {
        Line first = lines.get(0);
        values.start(feature, Term.ROUTE, first.x(0), first.y(0));
        String id = interner.one(values.featureId());
        if (!routes.takeId(id)) {
            values.add(FindingCode.DUPLICATE_ID, Term.ROUTE, () -> "an earlier route has the id " + id);
        }
        RouteEnds ends = ends();
        Duct duct = ducts.map();
        double lengthM = values.number(Term.RECORDED_LENGTH);
        OptionalDouble recordedLengthM =
                Double.isNaN(lengthM) ? OptionalDouble.empty() : interner.one(OptionalDouble.of(lengthM));
        Optional<String> from = nonEmpty(values.text(Term.VAULT_A));
        Optional<String> to = nonEmpty(values.text(Term.VAULT_B));
        String quality = ducts.shared(values.textOrAssumed(Term.POSITION_QUALITY));
        boolean single = lines.size() == 1;
        if (single && crs.isGeographic()) {
            lengths.see(first, lengthM);
        }
        double wholeDeg = single
                ? 0
                : lines.stream().mapToDouble(RouteReader::evenDegrees).sum();
        for (int part = 0; part < lines.size(); part++) {
            Line line = lines.get(part);
            double shareRatio = single ? 1 : wholeDeg > 0 ? evenDegrees(line) / wholeDeg : 0;
            routes.add(new Route(
                    routes.size(),
                    id,
                    duct,
                    line,
                    ofPart(recordedLengthM, shareRatio),
                    part == 0 ? from : Optional.empty(),
                    part == lines.size() - 1 ? to : Optional.empty(),
                    quality,
                    ends.ofPart(part == 0, part == lines.size() - 1)));
        }
    }

    /** Returns what is recorded of the duct at its two vaults; neighbors share it. */
    private RouteEnds ends() {
        var ends = new RouteEnds(
                facts(Term.HOLE_A, Term.SLACK_A),
                facts(Term.HOLE_B, Term.SLACK_B),
                values.answer(Term.CONTINUOUS_AT_A),
                values.answer(Term.CONTINUOUS_AT_B));
        return ends.equals(RouteEnds.UNKNOWN) ? RouteEnds.UNKNOWN : interner.one(ends);
    }

    private EndFacts facts(Term hole, Term slack) {
        double slackM = values.number(slack);
        var facts = new EndFacts(
                ducts.shared(values.textQuietly(hole)),
                Double.isNaN(slackM) ? OptionalDouble.empty() : interner.one(OptionalDouble.of(slackM)));
        return facts.equals(EndFacts.UNKNOWN) ? EndFacts.UNKNOWN : interner.one(facts);
    }

    /** What is recorded of a whole feature says of one of its parts only its share. */
    private static OptionalDouble ofPart(OptionalDouble wholeM, double shareRatio) {
        return wholeM.isPresent() && shareRatio > 0
                ? OptionalDouble.of(wholeM.getAsDouble() * shareRatio)
                : OptionalDouble.empty();
    }

    /** Returns a line's length in degrees of latitude; good to compare parts of one feature with. */
    private static double evenDegrees(Line line) {
        double degrees = 0;
        for (int vertex = 0; vertex + 1 < line.size(); vertex++) {
            double shrink = Math.cos(Math.toRadians(line.y(vertex)));
            double east = Math.IEEEremainder(line.x(vertex + 1) - line.x(vertex), 360) * shrink;
            degrees += Math.hypot(east, line.y(vertex + 1) - line.y(vertex));
        }
        return degrees;
    }

    private Optional<String> nonEmpty(String text) {
        return text.isEmpty() ? Optional.empty() : interner.one(Optional.of(text));
    }

    @Override
    public Map<String, String> absentFields(LayerHeader header) {
        return used > 0 ? values.absentFields(header) : Map.of();
    }

    /** To be called when the layer has been read. */
    @Override
    public void close(LayerHeader header, long features) {
        suspicion.find().or(lengths::find).ifPresent(text -> log.layer(FindingCode.LAYER_ISSUE, text));
        crs.caution().ifPresent(text -> log.layer(FindingCode.LAYER_ISSUE, text));
        values.reportUnits(log);
        log.close(features);
    }
}
