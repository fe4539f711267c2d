package org.spanroom.permit;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.permit.PermitSettings;
import org.spanroom.model.permit.Permits;
import org.spanroom.model.permit.WorkPermits;
import org.spanroom.model.permit.Zone;
import org.spanroom.model.permit.ZoneKind;
import org.spanroom.model.permit.ZoneRule;
import org.spanroom.model.permit.ZoneTouch;

/**
 * Finds the permit zones that a span and its vaults touch, for how many meters, and which permits follow. Safe for use by
 * several threads.
 *
 * <p>Method: an index of the zones' extents (Sort-Tile-Recursive tree) names the zones near a span; each step of the span is cut
 * where it comes within the tolerance of a zone and where it leaves it, in a conformal plane, and each part is inside if its middle is.
 * The distance to a zone is calculated, not taken from a polygon that approximates its round buffer. Boundaries belong to their
 * zones. Accuracy: a cut is within a millimeter of where straight lines in a projected system of surveying cross, for steps
 * and edges up to 1 km, if they cross steeper than about 20 degrees. In data kept in degrees an edge along a parallel may be meant
 * as the parallel, which is up to {@code L^2 tan(phi) / 8R} beside the straight line: 0.2 mm for 100 m, 2 cm for 1 km at 45
 * degrees.
 *
 * <p>A vault is in a zone where its point is; of a footprint, a point inside it. Recovery is work at the vaults, so that a
 * zone that only the duct runs through asks less of it, and what the vaults are like decides what it needs everywhere.
 */
public final class PermitAssessor {
    private static final Comparator<Zone> BY_KIND_AND_ID =
            Comparator.comparing(Zone::kind).thenComparing(Zone::id).thenComparing(Zone::sequence);

    private final PermitSettings settings;
    private final VaultAccess access;
    private final STRtree index = new STRtree();
    private final Map<WorkPermits.Site, Permits> outside = new ConcurrentHashMap<>();
    private final boolean hasZones;

    /** Prepares for zones that were read, of which those that are over are left out. */
    public PermitAssessor(List<Zone> zones, PermitSettings settings, VaultAccess access) {
        this.settings = settings;
        this.access = access;
        this.hasZones = !zones.isEmpty();
        List<Zone> listed = zones.stream()
                .filter(zone -> !settings.isOver(zone))
                .sorted(BY_KIND_AND_ID)
                .toList();
        for (int order = 0; order < listed.size(); order++) {
            Zone zone = listed.get(order);
            put(new PlacedZone(order, zone, settings.kind(zone.kind()), settings.zoneToleranceM()));
        }
        index.build();
    }

    /** A zone across the 180th meridian is looked for from both sides of it. */
    private void put(PlacedZone zone) {
        Envelope extent = zone.extentDeg();
        index.insert(extent, zone);
        if (extent.getMaxX() > 180 || extent.getMinX() < -180) {
            var other = new Envelope(extent);
            other.translate(extent.getMaxX() > 180 ? -360 : 360, 0);
            index.insert(other, zone);
        }
    }

    /** Returns the permits of a span; {@link Permits#NONE} where no zones are known at all. */
    public Permits assess(Span span) {
        if (!hasZones) {
            return Permits.NONE;
        }
        var extent = new Envelope();
        PlacedZone.include(span.lonLat(), extent);
        extent.expandToInclude(span.from().lonDeg(), span.from().latDeg());
        extent.expandToInclude(span.to().lonDeg(), span.to().latDeg());
        List<PlacedZone> near = near(PlacedZone.bowed(extent));
        WorkPermits.Site site = site(span);
        if (near.isEmpty()) {
            return outside(site);
        }
        Plane plane = Plane.about(extent.centre().x);
        var way = new Way(span, plane);
        var touches = new ArrayList<ZoneTouch>();
        near.forEach(zone -> zone.touch(way, plane, settings.sliverM()).ifPresent(touches::add));
        return touches.isEmpty() ? outside(site) : permits(site, touches);
    }

    private WorkPermits.Site site(Span span) {
        List<Vault> vaults = List.of(span.from(), span.to());
        return new WorkPermits.Site(
                vaults.stream().anyMatch(access::isInRoadway),
                vaults.stream().anyMatch(vault -> !access.isInRoadway(vault)),
                vaults.stream().anyMatch(access::isEntered),
                vaults.stream().anyMatch(vault -> vault.site().water() == Answer.YES),
                span.duct().flooded());
    }

    /** Returns what is needed where no zone is touched: one answer for equal sites. */
    private Permits outside(WorkPermits.Site site) {
        return outside.computeIfAbsent(site, one -> permits(one, List.of()));
    }

    /** Returns the zones that count and that a vault is in, in order of kind and id. */
    public List<Zone> zonesAt(Vault vault) {
        var place = new Envelope(vault.lonDeg(), vault.lonDeg(), vault.latDeg(), vault.latDeg());
        return near(place).stream()
                .filter(zone -> !settings.isAwaited(zone.zone()) && zone.holds(vault))
                .map(PlacedZone::zone)
                .toList();
    }

    private List<PlacedZone> near(Envelope extent) {
        var byOrder = new TreeMap<Integer, PlacedZone>();
        for (Object found : index.query(extent)) {
            PlacedZone zone = (PlacedZone) found;
            byOrder.put(zone.order(), zone);
        }
        return List.copyOf(byOrder.values());
    }

    private Permits permits(WorkPermits.Site site, List<ZoneTouch> met) {
        List<ZoneTouch> touches =
                met.stream().filter(touch -> !settings.isAwaited(touch.zone())).toList();
        List<ZoneTouch> toCome =
                met.stream().filter(touch -> settings.isAwaited(touch.zone())).toList();
        WorkPermits everywhere = settings.everywhere();
        var recovery = new TreeSet<>(everywhere.forRecovery(site));
        var newBuild = new TreeSet<>(everywhere.forNewBuild(site));
        int recoveryDays = isAppliedFor(recovery) ? everywhere.recoveryLeadDays() : 0;
        int newBuildDays = everywhere.newBuildLeadDays();
        for (ZoneTouch touch : touches) {
            ZoneKind rule = touch.rule();
            List<String> needs = touch.recoveryNeeds();
            recovery.addAll(needs);
            newBuild.addAll(rule.newBuild());
            recoveryDays = Math.max(recoveryDays, isAppliedFor(needs) ? rule.recoveryLeadDays() : 0);
            newBuildDays = Math.max(newBuildDays, rule.newBuild().isEmpty() ? 0 : rule.newBuildLeadDays());
        }
        newBuild.removeAll(recovery);
        return new Permits(
                touches,
                List.copyOf(recovery),
                everywhere.recovery(),
                List.copyOf(newBuild),
                ZoneRule.of(touches),
                recoveryDays,
                newBuildDays,
                settings.issuedByCrew(),
                toCome);
    }

    /** Returns whether one of the permits has to be applied for, which takes time; what the crew issues itself does not. */
    private boolean isAppliedFor(Collection<String> permits) {
        return !settings.issuedByCrew().containsAll(permits);
    }
}
