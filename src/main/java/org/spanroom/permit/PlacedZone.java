package org.spanroom.permit;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.locationtech.jts.geom.Envelope;
import org.spanroom.model.Line;
import org.spanroom.model.network.Vault;
import org.spanroom.model.permit.Stretch;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneKind;
import org.spanroom.model.permit.ZoneTouch;

/**
 * A zone made ready for many spans: its polygons in the planes of the spans, its rule, its extent. Safe for use by several threads.
 *
 * <p>All zones are laid into the plane of the span that they are asked about, so that an edge which two of them share is the same
 * for both.
 */
final class PlacedZone {
    /**
     * A straight edge as wide as {@code w} radians of longitude rises above the parallel of its ends by less than
     * {@code w^2 / 16}: 1.1 % of a width of ten degrees.
     */
    private static final double BOW_RATIO = 0.02;

    /** A degree of latitude is 110.57 km long at least, on WGS 84. */
    private static final double LEAST_M_PER_DEG = 110_000;

    /** Nearer to a pole than a tenth of a degree no street lies. */
    private static final double LEAST_PARALLEL_RATIO = 1e-3;

    private final int order;
    private final Zone zone;
    private final ZoneKind rule;
    private final double toleranceM;
    private final Envelope extentDeg = new Envelope();
    private final Map<Plane, List<Area>> areas = new ConcurrentHashMap<>();

    /**
     * Makes a zone ready.
     *
     * @param order place in the order in which touches are listed
     * @param toleranceM how far the zone reaches beyond its outlines
     */
    PlacedZone(int order, Zone zone, ZoneKind rule, double toleranceM) {
        this.order = order;
        this.zone = zone;
        this.rule = rule;
        this.toleranceM = toleranceM;
        zone.outlines().forEach(outline -> include(outline.shell(), extentDeg));
    }

    int order() {
        return order;
    }

    Zone zone() {
        return zone;
    }

    /** Returns longitudes and latitudes, wide enough for edges that are bowed between their ends and for the tolerance. */
    Envelope extentDeg() {
        Envelope wide = bowed(extentDeg);
        double northDeg = toleranceM / LEAST_M_PER_DEG;
        double mostLatDeg = Math.max(Math.abs(wide.getMinY()), Math.abs(wide.getMaxY())) + northDeg;
        double eastRatio = Math.max(LEAST_PARALLEL_RATIO, Math.cos(Math.toRadians(Math.min(mostLatDeg, 90))));
        wide.expandBy(Math.min(northDeg / eastRatio, 180), northDeg);
        return wide;
    }

    private List<Area> in(Plane plane) {
        return areas.computeIfAbsent(plane, this::laidInto);
    }

    private List<Area> laidInto(Plane plane) {
        return zone.outlines().stream()
                .map(outline -> new Area(outline, plane, toleranceM))
                .toList();
    }

    static void include(Line line, Envelope extent) {
        for (int i = 0; i < line.size(); i++) {
            extent.expandToInclude(line.x(i), line.y(i));
        }
    }

    /** Returns an extent, made wider for edges that are bowed between their ends, and for the reach of a boundary. */
    static Envelope bowed(Envelope extent) {
        var wider = new Envelope(extent);
        wider.expandBy(1e-6 + BOW_RATIO * (extent.getWidth() + extent.getHeight()));
        return wider;
    }

    /** Finds how a span meets the zone; gaps shorter than a sliver are closed, then stretches shorter than one do not count. */
    Optional<ZoneTouch> touch(Way way, Plane plane, double sliverM) {
        var stretches = new ArrayList<Stretch>();
        boolean atFrom = false;
        boolean atTo = false;
        for (Area area : in(plane)) {
            if (way.mayMeetBoundary(area)) {
                stretches.addAll(way.inside(area));
                atFrom |= way.beginsIn(area);
                atTo |= way.endsIn(area);
            } else if (way.beginsIn(area)) {
                stretches.add(way.whole());
                atFrom = true;
                atTo = true;
            }
        }
        List<Stretch> counted = Stretch.unionOverGaps(stretches, sliverM).stream()
                .filter(stretch -> stretch.lengthM() > 0 && stretch.lengthM() >= sliverM)
                .toList();
        if (counted.isEmpty() && !atFrom && !atTo) {
            return Optional.empty();
        }
        double lengthM = counted.stream().mapToDouble(Stretch::lengthM).sum();
        return Optional.of(new ZoneTouch(zone, lengthM, atFrom, atTo, counted, rule));
    }

    boolean holds(Vault vault) {
        Plane plane = Plane.about(vault.lonDeg());
        double[] xy = new double[2];
        plane.project(vault.lonDeg(), vault.latDeg(), xy, 0);
        return in(plane).stream().anyMatch(area -> area.holds(xy[0], xy[1]));
    }
}
