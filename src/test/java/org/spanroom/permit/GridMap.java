package org.spanroom.permit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import org.spanroom.config.ShippedConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.model.Line;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.BoreShape;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.permit.PermitSettings;
import org.spanroom.model.permit.Zone;

/**
 * Spans and zones drawn in meters on the grid of a projected system, about a point in the open ocean. Their lengths are those of
 * the grid, so that numbers of a test can be read off its coordinates: only shares of steps enter what is tested.
 */
final class GridMap {
    /** UTM zone 26 north: 2 degrees east of its central meridian, 48 degrees north, where the planes of two meridians meet. */
    static final ReferenceSystem UTM = ReferenceSystem.parse("EPSG:32626");

    static final double EAST_M = 649_000;
    static final double NORTH_M = 5_318_000;

    static final VaultAccess ACCESS = new VaultAccess(
            ShippedConfig.get().vaultKinds(), ShippedConfig.get().rates());

    private static final Contents NO_CONTENTS = new Contents(List.of(), List.of(), true);

    private GridMap() {}

    /** Returns a span through x0, y0, x1, y1, ..., with a vault at each end. */
    static Span span(double... xy) {
        Line ground = Line.ofXy(xy);
        return span(
                ground.planeLength(), vault("A", xy[0], xy[1]), vault("B", xy[xy.length - 2], xy[xy.length - 1]), xy);
    }

    static Span span(double lengthM, Vault from, Vault to, double... xy) {
        return span(duct(false), lengthM, from, to, xy);
    }

    static Span span(Duct duct, double lengthM, Vault from, Vault to, double... xy) {
        double[] ground = xy.clone();
        for (int i = 0; i < xy.length; i++) {
            ground[i] -= xy[i % 2];
        }
        return new Span(
                "S",
                duct,
                List.of("R"),
                from,
                to,
                lonLat(xy),
                Line.ofXy(ground),
                lengthM,
                Line.ofXy(ground).planeLength(),
                0,
                0,
                "");
    }

    static Vault vault(String id, double x, double y) {
        return vault(id, x, y, "", VaultSite.UNKNOWN);
    }

    static Vault vault(String id, double x, double y, String kind, VaultSite site) {
        Line place = lonLat(x, y, x, y);
        return new Vault(0, id, place.x(0), place.y(0), List.of(), OptionalDouble.empty(), kind, site);
    }

    /** Returns a zone of one polygon: the outer ring, then holes, each closed by itself. */
    static Zone zone(String id, String kind, double[]... rings) {
        return zone(id, kind, "", rings);
    }

    static Zone zone(String id, String kind, String until, double[]... rings) {
        return zone(id, kind, "", until, rings);
    }

    /** Returns a zone with a first and a last day; an empty text is no day. */
    static Zone zone(String id, String kind, String from, String until, double[]... rings) {
        List<Line> lines = new ArrayList<>();
        for (double[] ring : rings) {
            double[] closed = Arrays.copyOf(ring, ring.length + 2);
            closed[ring.length] = ring[0];
            closed[ring.length + 1] = ring[1];
            lines.add(lonLat(closed));
        }
        var outline = new Zone.Outline(lines.get(0), lines.subList(1, lines.size()));
        return new Zone(0, id, kind, "", day(from), day(until), List.of(outline));
    }

    private static Optional<LocalDate> day(String text) {
        return text.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(text));
    }

    /** Returns how long a short distance of the plane that spans are laid into is on the grid: their scales differ by some 0.02 %. */
    static double gridM(double planeM) {
        Line line = lonLat(0, 0, 100, 0);
        Plane plane = Plane.about(line.x(0));
        double[] xy = new double[4];
        plane.project(line.x(0), line.y(0), xy, 0);
        plane.project(line.x(1), line.y(1), xy, 2);
        return planeM * 100 / Math.hypot(xy[2] - xy[0], xy[3] - xy[1]);
    }

    /** Returns the ring of a box. */
    static double[] box(double x0, double y0, double x1, double y1) {
        return new double[] {x0, y0, x1, y0, x1, y1, x0, y1};
    }

    static PermitAssessor assessor(double sliverM, Zone... zones) {
        return assessor(List.of(zones), settings("2027-01-15", false, sliverM));
    }

    static PermitAssessor assessor(List<Zone> zones, PermitSettings settings) {
        return new PermitAssessor(zones, settings, ACCESS);
    }

    static PermitSettings settings(String onDate, boolean expiredCount, double sliverM) {
        return settings(onDate, expiredCount, sliverM, 0);
    }

    static PermitSettings settings(String onDate, boolean expiredCount, double sliverM, double toleranceM) {
        PermitSettings shipped = ShippedConfig.get().permit();
        return new PermitSettings(
                onDate,
                expiredCount,
                false,
                sliverM,
                toleranceM,
                shipped.everywhere(),
                shipped.kinds(),
                shipped.issuedByCrew());
    }

    private static Line lonLat(double... xy) {
        double[] degrees = new double[xy.length];
        for (int i = 0; i < xy.length; i += 2) {
            degrees[i] = EAST_M + xy[i];
            degrees[i + 1] = NORTH_M + xy[i + 1];
        }
        UTM.toLonLat(degrees, 2);
        return Line.wrap(degrees, false);
    }

    static Duct duct(boolean flooded) {
        return new Duct(
                "D",
                "",
                BoreShape.ROUND,
                100,
                "",
                "",
                false,
                NO_CONTENTS,
                flooded,
                Condition.UNKNOWN,
                "",
                "",
                OptionalInt.empty(),
                Set.of());
    }
}
