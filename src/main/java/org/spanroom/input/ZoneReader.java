package org.spanroom.input;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.locationtech.jts.geom.CoordinateSequence;
import org.locationtech.jts.geom.LinearRing;
import org.locationtech.jts.geom.Polygon;
import org.spanroom.config.RunConfig;
import org.spanroom.config.ValueWords;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.fields.FeatureValues;
import org.spanroom.input.fields.LayerFields;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.Rejections;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.input.layer.SourceGeometry;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.permit.PermitSettings;
import org.spanroom.model.permit.Zone;

/**
 * Makes permit zones of the features of a layer of polygons.
 *
 * <p>Outlines are repaired in the layer's own ordinates, where they were drawn. A zone whose kind is not recorded, or in no list of
 * words, is one of the kind {@link PermitSettings#OTHER}: a planner must look at it.
 */
final class ZoneReader implements FeatureReader {
    /** Wider than any area that one permit rules; and such a width would cross the other way round the globe. */
    private static final double MOST_EXTENT_DEG = 10;

    private static final double HALF_TURN_DEG = 180;

    /** Characters of an unknown word; more would leave no room for what is said of it. */
    private static final int LONGEST_SHOWN = 80;

    private final ReferenceSystem crs;
    private final CappedLog log;
    private final FeatureValues values;
    private final PermitSettings settings;
    private final Map<String, String> kindByWord;
    private final OrdinateSuspicion suspicion;
    private final Collected<Zone> zones;
    private final Rejections rejections = new Rejections();
    private final OutlineRepair repairer = new OutlineRepair();
    private long used;

    ZoneReader(RunConfig config, ReferenceSystem crs, LayerFields fields, CappedLog log, Collected<Zone> zones) {
        this.crs = crs;
        this.log = log;
        this.values = new FeatureValues(config, fields, log);
        this.settings = config.permit();
        this.kindByWord = settings.kindByWord();
        this.suspicion = new OrdinateSuspicion(crs);
        this.zones = zones;
    }

    @Override
    public OrdinateSuspicion suspicion() {
        return suspicion;
    }

    @Override
    public Rejections rejections() {
        return rejections;
    }

    /** Returns how many features were used: one for each zone. */
    @Override
    public long used() {
        return used;
    }

    @Override
    public void accept(SourceFeature feature) {
        SourceGeometry geometry = feature.geometry();
        if (geometry.kind() != SourceGeometry.Kind.POLYGONS) {
            rejections.count(Geometries.reject(feature, "polygons", log));
            return;
        }
        geometry.parts().forEach(part -> suspicion.see(part[0], part[1]));
        if (leavesSystem(geometry)) {
            reject(feature, FindingCode.BAD_COORDINATE, "the zone extends beyond the reference system " + crs.name());
            return;
        }
        ZoneOutlines outlines = ZoneOutlines.of(crs.isGeographic() ? unwound(geometry) : geometry, repairer);
        if (outlines.polygons().isEmpty()) {
            reject(feature, FindingCode.ZONE_WITHOUT_AREA, "no ring of the zone encloses an area");
            return;
        }
        List<List<double[]>> rings =
                outlines.polygons().stream().map(this::rings).toList();
        if (isUsable(feature, rings)) {
            add(feature, rings.stream().map(ZoneReader::outline).toList());
            outlines.repair().ifPresent(text -> values.add(FindingCode.ZONE_OUTLINE_INVALID, "", () -> text));
        }
    }

    /** Asked before anything is repaired: the arithmetic of that has no answer for numbers beyond all bounds. */
    private boolean leavesSystem(SourceGeometry geometry) {
        int dimension = geometry.hasZ() ? 3 : 2;
        return geometry.parts().stream().anyMatch(part -> {
            double[] places = part.clone();
            crs.toLonLat(places, dimension);
            return !Geometries.isFinite(places);
        });
    }

    /**
     * Returns the rings with each polygon on one side of the date line, where the others are drawn to jump round the globe: as drawn
     * they would cross themselves. Polygons that were cut there stay apart.
     */
    private static SourceGeometry unwound(SourceGeometry geometry) {
        int dimension = geometry.hasZ() ? 3 : 2;
        var parts = new ArrayList<double[]>();
        double firstDeg = 0;
        for (int i = 0; i < geometry.parts().size(); i++) {
            double[] ring = geometry.parts().get(i);
            boolean isOuter = geometry.startsPolygon().isEmpty()
                    || geometry.startsPolygon().get(i);
            firstDeg = isOuter ? ring[0] : firstDeg;
            parts.add(unwound(ring, dimension, firstDeg));
        }
        return new SourceGeometry(geometry.kind(), parts, geometry.hasZ(), geometry.startsPolygon());
    }

    /** Returns a ring beside a longitude; as it is where nothing would be left of it, as of a ring round the globe. */
    private static double[] unwound(double[] ring, int dimension, double firstDeg) {
        double[] beside = ring.clone();
        boolean isWide = false;
        for (int at = 0; at < ring.length; at += dimension) {
            if (Math.abs(ring[at] - firstDeg) > HALF_TURN_DEG) {
                beside[at] += Math.copySign(2 * HALF_TURN_DEG, firstDeg - ring[at]);
            }
            isWide |= beside[at] != beside[0];
        }
        return isWide ? beside : ring;
    }

    /** Returns a polygon's rings in degrees, the outer one first. */
    private List<double[]> rings(Polygon polygon) {
        var rings = new ArrayList<double[]>();
        rings.add(ring(polygon.getExteriorRing()));
        for (int i = 0; i < polygon.getNumInteriorRing(); i++) {
            rings.add(ring(polygon.getInteriorRingN(i)));
        }
        return rings;
    }

    private double[] ring(LinearRing ring) {
        CoordinateSequence vertices = ring.getCoordinateSequence();
        double[] xy = new double[2 * vertices.size()];
        for (int i = 0; i < vertices.size(); i++) {
            xy[2 * i] = vertices.getX(i);
            xy[2 * i + 1] = vertices.getY(i);
        }
        crs.toLonLat(xy, 2);
        return xy;
    }

    private boolean isUsable(SourceFeature feature, List<List<double[]>> polygons) {
        double[] first = polygons.get(0).get(0);
        for (List<double[]> rings : polygons) {
            for (double[] ring : rings) {
                if (!isNear(ring, first[0], first[1])) {
                    reject(
                            feature,
                            FindingCode.ZONE_TOO_WIDE,
                            "the zone extends over more than ten degrees; check its reference system");
                    return false;
                }
            }
        }
        return true;
    }

    /** Turns longitudes beyond the 180th meridian to the side of the first, and returns whether all are near it. */
    private static boolean isNear(double[] ring, double lonDeg, double latDeg) {
        for (int at = 0; at < ring.length; at += 2) {
            if (Math.abs(ring[at] - lonDeg) > HALF_TURN_DEG) {
                ring[at] += Math.copySign(2 * HALF_TURN_DEG, lonDeg - ring[at]);
            }
            if (Math.abs(ring[at] - lonDeg) > MOST_EXTENT_DEG || Math.abs(ring[at + 1] - latDeg) > MOST_EXTENT_DEG) {
                return false;
            }
        }
        return true;
    }

    private static Zone.Outline outline(List<double[]> rings) {
        List<Line> lines = rings.stream().map(ring -> Line.wrap(ring, false)).toList();
        return new Zone.Outline(lines.get(0), lines.subList(1, lines.size()));
    }

    private void add(SourceFeature feature, List<Zone.Outline> outlines) {
        used++;
        Line shell = outlines.get(0).shell();
        values.start(feature, Term.ZONE, shell.x(0), shell.y(0));
        String id = values.featureId();
        if (!zones.takeId(id)) {
            values.add(FindingCode.DUPLICATE_ID, Term.ZONE, () -> "an earlier zone has the id " + id);
        }
        String name = values.textQuietly(Term.ZONE_NAME);
        Days days = days();
        zones.add(new Zone(
                zones.size(), id, kind().intern(), name, days.from(), days.until(), outlines, feature.number()));
        reportDays(days);
    }

    /** The first and the last day of a zone's rule; empty where it has no such day. */
    private record Days(Optional<LocalDate> from, Optional<LocalDate> until) {}

    /** Returns the recorded days; none where the first lies after the last, so that doubt asks for the permit. */
    private Days days() {
        Optional<LocalDate> from = values.dateQuietly(Term.ZONE_FROM);
        Optional<LocalDate> until = values.dateQuietly(Term.ZONE_UNTIL);
        if (from.isPresent() && until.isPresent() && from.get().isAfter(until.get())) {
            values.add(
                    FindingCode.ZONE_DAYS_REVERSED,
                    Term.ZONE_FROM,
                    () -> "its first day is " + from.get() + ", its last " + until.get());
            return new Days(Optional.empty(), Optional.empty());
        }
        return new Days(from, until);
    }

    private void reportDays(Days days) {
        if (settings.isExpired(days.until())) {
            String rule = settings.expiredCount() ? "; it is still applied" : "; it is not applied";
            reportDay(
                    FindingCode.ZONE_EXPIRED,
                    Term.ZONE_UNTIL,
                    "its last day was " + days.until().orElseThrow(),
                    rule);
        }
        if (settings.isToCome(days.from())) {
            String rule = settings.toComeCount() ? "; it is still applied" : "; it is listed as upcoming";
            reportDay(
                    FindingCode.ZONE_TO_COME,
                    Term.ZONE_FROM,
                    "its first day is " + days.from().orElseThrow(),
                    rule);
        }
    }

    private void reportDay(FindingCode code, Term term, String day, String rule) {
        values.add(code, term, () -> day + ", the run date is " + settings.onDate() + rule);
    }

    private String kind() {
        String word = values.textOrAssumed(Term.ZONE_KIND);
        String kind = kindByWord.get(ValueWords.fold(word));
        if (kind == null && !word.isEmpty()) {
            values.add(
                    FindingCode.ZONE_KIND_UNKNOWN,
                    Term.ZONE_KIND,
                    () -> "'" + beginning(word)
                            + "' is neither a kind in permit.kinds nor one of its words; treated as "
                            + PermitSettings.OTHER);
        }
        return kind == null ? PermitSettings.OTHER : kind;
    }

    private static String beginning(String word) {
        return word.length() <= LONGEST_SHOWN ? word : word.substring(0, LONGEST_SHOWN) + "...";
    }

    private void reject(SourceFeature feature, FindingCode code, String detail) {
        rejections.count(code);
        log.add(Finding.of(code, log.source(), Long.toString(feature.number()), detail));
    }

    @Override
    public Map<String, String> absentFields(LayerHeader header) {
        return used > 0 ? values.absentFields(header) : Map.of();
    }

    /** To be called when the layer has been read. */
    @Override
    public void close(LayerHeader header, long features) {
        suspicion.find().ifPresent(text -> log.layer(FindingCode.LAYER_ISSUE, text));
        crs.caution().ifPresent(text -> log.layer(FindingCode.LAYER_ISSUE, text));
        log.close(features);
    }
}
