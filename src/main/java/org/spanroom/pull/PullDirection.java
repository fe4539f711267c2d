package org.spanroom.pull;

import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.SpanEnd;
import org.spanroom.model.network.Vault;
import org.spanroom.model.pull.LimitKind;
import org.spanroom.model.pull.PullLimits;
import org.spanroom.model.pull.PullSettings;

/**
 * One span, pulled through towards one of its ends, with the limits that its pulls meet on the way.
 *
 * <p>Forces count with the breakaway factor. Pressure in a bend is the larger tension of its two ends over the bend's inside
 * radius, that of the center line less half the bore.
 */
final class PullDirection {
    /** A radius that is hardly more than half the bore is a slip of the data; its inside is treated as this part of it. */
    private static final double LEAST_INSIDE_RATIO = 0.1;

    private final SpanEnd pullingEnd;
    private final PullSegments sections;
    private final TwoPasses passes;
    private final PullLimits limits;
    private final double breakawayRatio;
    private final double boreRadiusM;
    private final double lengthM;
    private final double turnRad;
    private final boolean machineInside;
    private final double exitRadiusM;
    private final double cableSlackM;

    PullDirection(SpanEnd pullingEnd, Span span, Way way, PullSettings settings, PullSites sites) {
        Vault vault = pullingEnd.vaultOf(span);
        this.pullingEnd = pullingEnd;
        this.sections = way.sections();
        this.passes = new TwoPasses(sections, passing(settings));
        this.limits = settings.limits();
        this.breakawayRatio = settings.breakawayRatio();
        this.boreRadiusM = span.duct().insideDiameterMm() / 2000;
        this.lengthM = span.lengthM();
        this.turnRad = way.turnRad();
        this.machineInside = sites.machineInside(vault);
        this.exitRadiusM = limits.vaultExitRadiusM(vault.kind());
        this.cableSlackM = span.slackM(pullingEnd).orElse(0);
    }

    /**
     * What is pulled through.
     *
     * @param sections from the anchor to the pulling end
     * @param turnRad all bends together
     */
    record Way(PullSegments sections, double turnRad) {}

    static TwoPasses.Passing passing(PullSettings settings) {
        return new TwoPasses.Passing(settings.wanderRadPerM(), settings.simpleCapstan(), settings.slitterDragN());
    }

    SpanEnd pullingEnd() {
        return pullingEnd;
    }

    PullSegments sections() {
        return sections;
    }

    TwoPasses passes() {
        return passes;
    }

    /** Returns the distance from end A of a point so far from the anchor. */
    double fromA(double fromAnchorM) {
        double at = pullingEnd == SpanEnd.B ? fromAnchorM : sections.totalM() - fromAnchorM;
        return Math.max(0, Math.min(lengthM, at));
    }

    /** Returns the largest force over what is allowed for it, of the passes' last run. */
    double forceRatio(Innerduct innerduct, Load load) {
        double bornN = Math.min(limits.innerductStrengthN(innerduct), limits.machinePullN());
        double holdN = passes.holdN() * load.liveShareRatio();
        return breakawayRatio * Math.max(passes.pullN() / bornN, holdN / limits.holdAllowedN());
    }

    /** Offers every limit that applies to the passes' last run. */
    void offerLimits(Innerduct innerduct, Load load, LimitSink sink) {
        double endM = fromA(sections.totalM());
        double pullN = breakawayRatio * passes.pullN();
        double strengthN = limits.innerductStrengthN(innerduct);
        sink.offer(LimitKind.INNERDUCT_STRENGTH, pullN, strengthN, strengthPassedAtM(strengthN));
        sink.offer(LimitKind.MACHINE_PULL, pullN, limits.machinePullN(), endM);
        if (load.liveShareRatio() > 0) {
            offerHold(load, sink);
        }
        offerBends(innerduct, load, sink);
        if (!machineInside) {
            offerExit(innerduct, load, sink);
        }
        if (limits.refuseLengthM() > 0) {
            double passedM = Math.min(sections.totalM(), limits.refuseLengthM());
            sink.offer(LimitKind.SECTION_LENGTH, lengthM, limits.refuseLengthM(), fromA(passedM));
        }
        sink.offer(LimitKind.TOTAL_BENDS, turnRad, Math.toRadians(limits.refuseTotalDeg()), totalPassedAtM());
    }

    /** Innerduct and cable rise together; a machine in the vault slits the innerduct at the duct mouth, and its strips bend easily. */
    private void offerExit(Innerduct innerduct, Load load, LimitSink sink) {
        double endM = fromA(sections.totalM());
        double radiusM = limits.innerductRadiusM(innerduct.outsideDiameterMm());
        sink.offer(LimitKind.VAULT_EXIT_RADIUS, exitRadiusM, radiusM, endM);
        if (load.liveShareRatio() > 0) {
            sink.offer(LimitKind.CABLE_EXIT_RADIUS, exitRadiusM, limits.cableRadiusM(load.liveDiameterMm()), endM);
            sink.offer(LimitKind.CABLE_SLACK, cableSlackM, limits.outsideSlackM(), endM);
        }
    }

    /** The cable's tension is largest at the anchor, save where it runs steeply up from there and hangs from the top. */
    private void offerHold(Load load, LimitSink sink) {
        double startM = 0;
        double mostN = passes.cableN(0);
        double mostAtM = 0;
        for (int i = 0; i < sections.count; i++) {
            startM += sections.lengthM[i];
            if (passes.cableN(i + 1) > mostN) {
                mostN = passes.cableN(i + 1);
                mostAtM = startM;
            }
        }
        double holdN = breakawayRatio * load.liveShareRatio() * mostN;
        sink.offer(LimitKind.CABLE_HOLD, holdN, limits.holdAllowedN(), fromA(mostAtM));
    }

    private void offerBends(Innerduct innerduct, Load load, LimitSink sink) {
        double startM = 0;
        double innerductRadiusM = limits.innerductRadiusM(innerduct.outsideDiameterMm());
        for (int i = 0; i < sections.count; i++) {
            double middleM = startM + sections.lengthM[i] / 2;
            startM += sections.lengthM[i];
            if (!sections.isPlanBend(i)) {
                continue;
            }
            double atM = fromA(middleM);
            double radiusM = sections.radiusM[i];
            double insideM = Math.max(radiusM - boreRadiusM, LEAST_INSIDE_RATIO * radiusM);
            double bodyN = breakawayRatio * Math.max(passes.bodyN(i), passes.bodyN(i + 1));
            sink.offer(
                    LimitKind.INNERDUCT_SIDEWALL,
                    PullFormulas.sidewall(bodyN, insideM),
                    limits.innerductSidewallNPerM(),
                    atM);
            sink.offer(LimitKind.INNERDUCT_BEND_RADIUS, radiusM, innerductRadiusM, atM);
            if (load.liveShareRatio() > 0) {
                double cableN =
                        breakawayRatio * load.liveShareRatio() * Math.max(passes.cableN(i), passes.cableN(i + 1));
                sink.offer(
                        LimitKind.CABLE_SIDEWALL,
                        PullFormulas.sidewall(cableN, insideM),
                        limits.cableSidewallNPerM(),
                        atM);
                sink.offer(LimitKind.CABLE_BEND_RADIUS, radiusM, limits.cableRadiusM(load.liveDiameterMm()), atM);
            }
        }
    }

    /** Returns where the bends so far first pass the total allowed; the last bend where they never do. */
    private double totalPassedAtM() {
        double startM = 0;
        double soFarRad = 0;
        double atM = 0;
        for (int i = 0; i < sections.count && soFarRad <= Math.toRadians(limits.refuseTotalDeg()); i++) {
            if (sections.isPlanBend(i)) {
                soFarRad += sections.turnRad[i];
                atM = fromA(startM + sections.lengthM[i] / 2);
            }
            startM += sections.lengthM[i];
        }
        return atM;
    }

    /** Returns where the innerduct's tension first passes its strength; the pulling end where it never does. */
    private double strengthPassedAtM(double strengthN) {
        double startM = 0;
        double beforeN = 0;
        for (int i = 0; i < sections.count; i++) {
            double afterN = breakawayRatio * (passes.bodyN(i + 1) - passes.cableN(i + 1));
            if (afterN > strengthN) {
                return fromA(startM + sections.lengthM[i] * (strengthN - beforeN) / (afterN - beforeN));
            }
            startM += sections.lengthM[i];
            beforeN = afterN;
        }
        return fromA(startM);
    }
}
