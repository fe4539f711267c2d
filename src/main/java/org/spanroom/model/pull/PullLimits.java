package org.spanroom.model.pull;

import java.util.Comparator;
import java.util.List;
import org.spanroom.model.Check;
import org.spanroom.model.network.Innerduct;

/**
 * What an innerduct, a live cable, a machine and a span may be put to.
 *
 * @param innerductStressMpa safe tensile stress of the innerduct's wall
 * @param machinePullN what the pulling machine can pull
 * @param cableRatingN installation tension that the live cable is rated for
 * @param holdShareRatio share of the rating that a cable in service may be held with
 * @param innerductSidewallNPerM force per meter of bend with which the innerduct may press on the duct's wall
 * @param cableSidewallNPerM force per meter of bend with which the cable may press on the innerduct's wall
 * @param cableRadiusRatio smallest bend radius of a loaded cable, in outside diameters
 * @param innerductRadii smallest unsupported bend radius of innerducts by size, smallest first
 * @param vaultExitRadiusM radius on which innerduct and cable rise out of a vault next to which the machine must be
 * @param exitRadii kinds of vaults out of which they rise on another radius, such as handholes
 * @param outsideSlackM length of cable that must be stored at such a vault: it rises out with the innerduct to the machine and
 *     comes back
 * @param warnTotalDeg total of bends to warn above
 * @param refuseTotalDeg total of bends to refuse above
 * @param warnLengthM section length to warn above
 * @param refuseLengthM section length to refuse above; 0 for none, since the forces count length already
 */
public record PullLimits(
        double innerductStressMpa,
        double machinePullN,
        double cableRatingN,
        double holdShareRatio,
        double innerductSidewallNPerM,
        double cableSidewallNPerM,
        double cableRadiusRatio,
        List<SizeRadius> innerductRadii,
        double vaultExitRadiusM,
        double warnTotalDeg,
        double refuseTotalDeg,
        double warnLengthM,
        double refuseLengthM,
        List<KindRadius> exitRadii,
        double outsideSlackM) {
    /** The smallest unsupported bend radius of one size of innerduct. */
    public record SizeRadius(double outsideDiameterMm, double radiusM) {
        public SizeRadius {
            Check.positive("outsideDiameterMm", outsideDiameterMm);
            Check.positive("radiusM", radiusM);
        }
    }

    /**
     * The radius on which an innerduct rises out of vaults of one kind.
     *
     * @param vaultKind the kind as the vaults layer has it; case is ignored
     */
    public record KindRadius(String vaultKind, double radiusM) {
        public KindRadius {
            Check.notBlank("vaultKind", vaultKind);
            Check.positive("radiusM", radiusM);
        }
    }

    public PullLimits {
        exitRadii = List.copyOf(exitRadii);
        Check.positive("innerductStressMpa", innerductStressMpa);
        Check.positive("machinePullN", machinePullN);
        Check.positive("cableRatingN", cableRatingN);
        Check.within("holdShareRatio", holdShareRatio, 0.01, 1);
        Check.positive("innerductSidewallNPerM", innerductSidewallNPerM);
        Check.positive("cableSidewallNPerM", cableSidewallNPerM);
        Check.positive("cableRadiusRatio", cableRadiusRatio);
        Check.positive("vaultExitRadiusM", vaultExitRadiusM);
        Check.positive("outsideSlackM", outsideSlackM);
        Check.positive("warnTotalDeg", warnTotalDeg);
        Check.positive("refuseTotalDeg", refuseTotalDeg);
        Check.positive("warnLengthM", warnLengthM);
        Check.notNegative("refuseLengthM", refuseLengthM);
        if (innerductRadii.isEmpty()) {
            throw new IllegalArgumentException("innerductRadii must have at least one size");
        }
        innerductRadii = innerductRadii.stream()
                .sorted(Comparator.comparingDouble(SizeRadius::outsideDiameterMm))
                .toList();
    }

    /** Returns the radius on which an innerduct rises out of a vault of this kind to a machine outside. */
    public double vaultExitRadiusM(String vaultKind) {
        for (KindRadius exit : exitRadii) {
            if (exit.vaultKind().equalsIgnoreCase(vaultKind)) {
                return exit.radiusM();
            }
        }
        return vaultExitRadiusM;
    }

    /** Returns the force that a cable in service may be held with. */
    public double holdAllowedN() {
        return holdShareRatio * cableRatingN;
    }

    /** Returns the smallest radius that a loaded cable may be bent to. */
    public double cableRadiusM(double outsideDiameterMm) {
        return cableRadiusRatio * outsideDiameterMm / 1000;
    }

    /**
     * Returns the force that an innerduct may be pulled with, stress times &pi;(D - t)t over the minimum wall: the
     * layout of ASTM F1804, from memory.
     */
    public double innerductStrengthN(Innerduct innerduct) {
        double wallMm = innerduct.wallMm();
        return innerductStressMpa * Math.PI * (innerduct.outsideDiameterMm() - wallMm) * wallMm;
    }

    /** Returns the smallest unsupported radius for a diameter: between listed sizes in proportion, beyond them as the nearest. */
    public double innerductRadiusM(double outsideDiameterMm) {
        SizeRadius below = innerductRadii.get(0);
        if (outsideDiameterMm <= below.outsideDiameterMm()) {
            return below.radiusM() * outsideDiameterMm / below.outsideDiameterMm();
        }
        for (SizeRadius above : innerductRadii) {
            if (outsideDiameterMm <= above.outsideDiameterMm()) {
                double share = (outsideDiameterMm - below.outsideDiameterMm())
                        / (above.outsideDiameterMm() - below.outsideDiameterMm());
                return (1 - share) * below.radiusM() + share * above.radiusM();
            }
            below = above;
        }
        return below.radiusM() * outsideDiameterMm / below.outsideDiameterMm();
    }
}
