package org.spanroom.input;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.spanroom.config.RunConfig;
import org.spanroom.crs.ReferenceSystem;
import org.spanroom.finding.Finding;
import org.spanroom.finding.FindingCode;
import org.spanroom.input.fields.FeatureValues;
import org.spanroom.input.fields.LayerFields;
import org.spanroom.input.layer.CappedLog;
import org.spanroom.input.layer.Interner;
import org.spanroom.input.layer.LayerHeader;
import org.spanroom.input.layer.Rejections;
import org.spanroom.input.layer.SourceFeature;
import org.spanroom.model.Line;
import org.spanroom.model.Term;
import org.spanroom.model.network.InsideSize;
import org.spanroom.model.network.Vault;
import org.spanroom.model.network.VaultFacts;
import org.spanroom.model.network.VaultSite;
import org.spanroom.model.network.VolumeBasis;

/**
 * Makes vaults of the features of a layer of points or outlines.
 *
 * <p>Each point of a multi-point is a vault of its own. Vaults are distinguished by their ids, so that one whose id occurred before gets a
 * number behind it.
 */
final class VaultReader implements FeatureReader {
    private final RunConfig config;
    private final ReferenceSystem crs;
    private final CappedLog log;
    private final FeatureValues values;
    private final OrdinateSuspicion suspicion;
    private final Collected<Vault> vaults;
    private final OutlineRepair repairer = new OutlineRepair();
    private final Rejections rejections = new Rejections();
    private final Interner interner = new Interner();
    private long used;

    VaultReader(RunConfig config, ReferenceSystem crs, LayerFields fields, CappedLog log, Collected<Vault> vaults) {
        this.config = config;
        this.crs = crs;
        this.log = log;
        this.values = new FeatureValues(config, fields, log);
        this.suspicion = new OrdinateSuspicion(crs);
        this.vaults = vaults;
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
        int before = vaults.size();
        FindingCode fault = switch (feature.geometry().kind()) {
            case POINTS -> points(feature);
            case POLYGONS -> outline(feature);
            default -> Geometries.reject(feature, "points or polygons", log);
        };
        if (vaults.size() > before) {
            used++;
        } else {
            rejections.count(fault);
        }
    }

    /** Adds a vault for each point; returns what is wrong with a feature that has none in the end. */
    private FindingCode points(SourceFeature feature) {
        int dimension = feature.geometry().hasZ() ? 3 : 2;
        for (double[] point : feature.geometry().parts()) {
            if (toLonLat(feature, point, dimension)) {
                OptionalDouble z = dimension == 3 ? OptionalDouble.of(point[2]) : OptionalDouble.empty();
                add(feature, point[0], point[1], List.of(), z);
            }
        }
        return FindingCode.BAD_COORDINATE;
    }

    private FindingCode outline(SourceFeature feature) {
        int dimension = feature.geometry().hasZ() ? 3 : 2;
        for (double[] ring : feature.geometry().parts()) {
            if (!toLonLat(feature, ring, dimension)) {
                return FindingCode.BAD_COORDINATE;
            }
        }
        double extentM = VaultExtent.ofM(feature.geometry().parts(), dimension);
        if (extentM > VaultExtent.MOST_M) {
            return tooWide(feature, extentM);
        }
        VaultOutline footprint = VaultOutline.of(feature.geometry(), repairer);
        add(feature, footprint.lonDeg(), footprint.latDeg(), footprint.rings(), OptionalDouble.empty());
        footprint.repair().ifPresent(text -> values.add(FindingCode.VAULT_FOOTPRINT_INVALID, "", () -> text));
        return FindingCode.BAD_COORDINATE;
    }

    private FindingCode tooWide(SourceFeature feature, double extentM) {
        double[] first = feature.geometry().parts().get(0);
        values.start(feature, Term.VAULT, first[0], first[1]);
        values.add(
                FindingCode.VAULT_TOO_WIDE,
                "",
                () -> "the outline extends over " + config.units().words(extentM, 0, "m") + "; vaults extend over "
                        + config.units().words(VaultExtent.MOST_M, 0, "m")
                        + " at most; check whether this is a layer of vaults, and its reference system");
        return FindingCode.VAULT_TOO_WIDE;
    }

    private boolean toLonLat(SourceFeature feature, double[] ordinates, int dimension) {
        suspicion.see(ordinates[0], ordinates[1]);
        double x = ordinates[0];
        double y = ordinates[1];
        crs.toLonLat(ordinates, dimension);
        if (Geometries.isFinite(ordinates)) {
            Geometries.roundDegrees(ordinates, dimension);
            return true;
        }
        log.add(Finding.of(
                FindingCode.BAD_COORDINATE,
                log.source(),
                Long.toString(feature.number()),
                "the vault at " + x + ", " + y + " is outside the reference system " + crs.name()));
        return false;
    }

    private void add(SourceFeature feature, double lonDeg, double latDeg, List<Line> rings, OptionalDouble z) {
        values.start(feature, Term.VAULT, lonDeg, latDeg);
        String id = unusedId(values.featureId());
        OptionalDouble recordedM = recorded(values.number(Term.VAULT_ELEVATION));
        OptionalDouble elevationM = recordedM.isPresent() ? recordedM : z;
        String kind = values.textOrAssumed(Term.VAULT_KIND);
        InsideSize inside = inside();
        VolumeOf volume = volume(inside);
        VaultSite site = site(volume);
        VaultFacts facts = facts(inside, volume.basis());
        vaults.add(new Vault(
                vaults.size(),
                id,
                lonDeg,
                latDeg,
                rings,
                elevationM,
                kind.intern(),
                site,
                facts,
                values.rejectedValues()));
    }

    /** A volume and where it comes from. */
    private record VolumeOf(OptionalDouble volumeM3, VolumeBasis basis) {}

    /** Returns the recorded volume, else that of the inside, else the assumed one. */
    private VolumeOf volume(InsideSize inside) {
        OptionalDouble measuredM3 = inside.findVolumeM3();
        boolean measured =
                measuredM3.isPresent() && config.plausible().contains(Term.VAULT_VOLUME, measuredM3.getAsDouble());
        // A volume that the inside gives is not missed.
        boolean asked = !measured || !values.textQuietly(Term.VAULT_VOLUME).isEmpty();
        OptionalDouble recordedM3 = asked ? recorded(values.number(Term.VAULT_VOLUME)) : OptionalDouble.empty();
        if (recordedM3.isPresent()) {
            return new VolumeOf(recordedM3, VolumeBasis.RECORDED);
        }
        if (measured) {
            return new VolumeOf(measuredM3, VolumeBasis.INSIDE_SIZE);
        }
        OptionalDouble assumedM3 = recorded(values.assumedNumber(Term.VAULT_VOLUME));
        return new VolumeOf(assumedM3, assumedM3.isPresent() ? VolumeBasis.ASSUMED : VolumeBasis.UNKNOWN);
    }

    private InsideSize inside() {
        return new InsideSize(shared(Term.VAULT_LENGTH), shared(Term.VAULT_WIDTH), shared(Term.VAULT_HEIGHT));
    }

    private VaultFacts facts(InsideSize inside, VolumeBasis basis) {
        return interner.one(new VaultFacts(
                basis,
                shared(Term.VAULT_DEPTH),
                interner.one(inside),
                shared(Term.COVER_SIZE),
                values.answer(Term.GAS_FOUND),
                values.answer(Term.JOINT_POWER),
                values.pastDateQuietly(Term.VAULT_INSPECTED).map(interner::one)));
    }

    /** Returns a recorded number; vaults are built in few sizes, so that many share one object. */
    private OptionalDouble shared(Term term) {
        return interner.one(recorded(values.number(term)));
    }

    private VaultSite site(VolumeOf volume) {
        var site = new VaultSite(
                volume.volumeM3(),
                values.answer(Term.VAULT_WATER),
                values.textOrAssumed(Term.VAULT_SURFACE).intern(),
                values.answer(Term.CABLE_HOLD),
                recorded(values.number(Term.CABLE_SLACK)));
        return interner.one(site);
    }

    private static OptionalDouble recorded(double number) {
        return Double.isNaN(number) ? OptionalDouble.empty() : OptionalDouble.of(number);
    }

    private String unusedId(String id) {
        String given = vaults.takeIdLike(id);
        if (given.equals(id)) {
            return id;
        }
        values.add(
                FindingCode.DUPLICATE_ID,
                Term.VAULT,
                () -> "an earlier vault has the id " + id + "; this one is " + given);
        return given;
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
        values.reportUnits(log);
        log.close(features);
    }
}
