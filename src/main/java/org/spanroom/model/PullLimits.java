package org.spanroom.model;

import java.util.Comparator;
import java.util.List;

/**
 * What an innerduct, a live cable, a machine and a span may be put to.
 *
 * @param innerductStressMpa safe tensile stress of the innerduct's wall
 * @param machinePullN what the pulling machine can pull
 * @param cableRatingN installation tension that the live cable is rated for
 * @param holdShareRatio share of the rating that a cable in service may be held with
 * @param innerductSidewallNPerM force per metre of bend with which the innerduct may press on the duct's wall
 * @param cableSidewallNPerM force per metre of bend with which the cable may press on the innerduct's wall
 * @param cableRadiusRatio smallest bend radius of a loaded cable, in outside diameters
 * @param innerductRadii smallest unsupported bend radius of innerducts by size, smallest first
 * @param vaultExitRadiusM radius on which the innerduct turns out of the vault
 * @param warnTotalDeg total of bends to warn above
 * @param refuseTotalDeg total of bends to refuse above
 * @param warnLengthM section length to warn above
 * @param refuseLengthM section length to refuse above
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
        double refuseLengthM) {

    /** The smallest unsupported bend radius of one size of innerduct. */
    public record SizeRadius(double outsideDiameterMm, double radiusM) {
        public SizeRadius {
            Check.positive("outsideDiameterMm", outsideDiameterMm);
            Check.positive("radiusM", radiusM);
        }
    }

    public PullLimits {
        Check.positive("innerductStressMpa", innerductStressMpa);
        Check.positive("machinePullN", machinePullN);
        Check.positive("cableRatingN", cableRatingN);
        Check.within("holdShareRatio", holdShareRatio, 0.01, 1);
        Check.positive("innerductSidewallNPerM", innerductSidewallNPerM);
        Check.positive("cableSidewallNPerM", cableSidewallNPerM);
        Check.positive("cableRadiusRatio", cableRadiusRatio);
        Check.positive("vaultExitRadiusM", vaultExitRadiusM);
        Check.positive("warnTotalDeg", warnTotalDeg);
        Check.positive("refuseTotalDeg", refuseTotalDeg);
        Check.positive("warnLengthM", warnLengthM);
        Check.positive("refuseLengthM", refuseLengthM);
        if (innerductRadii.isEmpty()) {
            throw new IllegalArgumentException("innerductRadii must hold at least one size");
        }
        innerductRadii = innerductRadii.stream()
                .sorted(Comparator.comparingDouble(SizeRadius::outsideDiameterMm))
                .toList();
    }

    /**
     * Returns the shipped limits.
     *
     * <ul>
     *   <li>wall stress 1100 psi: Plastics Pipe Institute handbook ch. 12, 12-hour value for PE3xxx; makers' short-term
     *       ratings of new pipe are about twice as high and not for pipe that has lain for years
     *   <li>cable 2670 N, of which 30 % in service, and 20 diameters of radius under load: ICEA S-87-640
     *   <li>cable sidewall 11 kN/m: long-term crush of GR-20 and ICEA cables, from memory
     *   <li>unsupported radii 12, 14, 18, 20, 26 in for 3/4 to 2 in SDR 13.5: conduit data sheet, maker not named
     *   <li>total 180 degrees: MIL-HDBK-1012/3; 360 degrees: National Electrical Code
     *   <li>600 ft: TIA-758, from memory
     *   <li>machine pull, innerduct sidewall, vault exit radius and the length to refuse above are illustrative
     * </ul>
     */
    public static PullLimits defaults() {
        var radii = List.of(
                new SizeRadius(26.67, 0.3048),
                new SizeRadius(33.401, 0.3556),
                new SizeRadius(42.164, 0.4572),
                new SizeRadius(48.26, 0.5080),
                new SizeRadius(60.325, 0.6604));
        return new PullLimits(7.584, 8900, 2670, 0.30, 7300, 11_000, 20, radii, 0.75, 180, 360, 182.88, 365.76);
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
