package org.spanroom.permit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Envelope;
import org.spanroom.model.Line;
import org.spanroom.model.Stretch;
import org.spanroom.model.Vault;
import org.spanroom.model.Zone;
import org.spanroom.model.ZoneKind;
import org.spanroom.model.ZoneTouch;

/**
 * A zone made ready for many spans: its polygons in a plane, its rule, its extent.
 *
 * @param order place in the order in which touches are listed
 * @param extentDeg longitude and latitude, wide enough for edges that are bowed between their ends
 */
record PlacedZone(int order, Zone zone, ZoneKind rule, Plane plane, List<Area> areas, Envelope extentDeg) {
    /**
     * A straight edge as wide as {@code w} radians of longitude rises above the parallel of its ends by less than
     * {@code w^2 / 16}: 1.1 % of a width of ten degrees.
     */
    private static final double BOW_RATIO = 0.02;

    static PlacedZone of(int order, Zone zone, ZoneKind rule) {
        Envelope extent = new Envelope();
        zone.outlines().forEach(outline -> include(outline.shell(), extent));
        Plane plane = Plane.about(extent.isNull() ? 0 : extent.centre().x);
        List<Area> areas = zone.outlines().stream()
                .map(outline -> new Area(outline, plane))
                .toList();
        return new PlacedZone(order, zone, rule, plane, areas, bowed(extent));
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

    /** Finds how a span meets the zone; stretches shorter than a sliver do not count. */
    Optional<ZoneTouch> touch(Way way, double sliverM) {
        way.in(plane);
        var stretches = new ArrayList<Stretch>();
        boolean atFrom = false;
        boolean atTo = false;
        for (Area area : areas) {
            stretches.addAll(way.inside(area));
            atFrom |= way.beginsIn(area);
            atTo |= way.endsIn(area);
        }
        List<Stretch> counted = Stretch.union(stretches).stream()
                .filter(stretch -> stretch.lengthM() > 0 && stretch.lengthM() >= sliverM)
                .toList();
        if (counted.isEmpty() && !atFrom && !atTo) {
            return Optional.empty();
        }
        double lengthM = counted.stream().mapToDouble(Stretch::lengthM).sum();
        return Optional.of(new ZoneTouch(zone, lengthM, atFrom, atTo, counted, rule));
    }

    boolean holds(Vault vault) {
        double[] xy = new double[2];
        plane.project(vault.lonDeg(), vault.latDeg(), xy, 0);
        return areas.stream().anyMatch(area -> area.holds(xy[0], xy[1]));
    }
}
