package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.spanroom.config.AssumedValues;
import org.spanroom.model.Term;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Sleeve;

/** Ducts as they may be where sizes were assumed, or where one cable is in them that the records leave out. */
final class DuctVariants {
    private static final Set<Term> COUNTS = Set.of(Term.CABLE_COUNT, Term.INNERDUCT_COUNT);

    /** 0.7 in; illustrative, where the config assumes none. */
    private static final double USUAL_CABLE_MM = 17.78;

    private final double diameterRatio;
    private final AssumedValues assumed;

    /**
     * Prepares variants.
     *
     * @param diameterRatio by how much an assumed diameter may be wrong
     */
    DuctVariants(double diameterRatio, AssumedValues assumed) {
        this.diameterRatio = diameterRatio;
        this.assumed = assumed;
    }

    static boolean hasAssumedSizes(Duct duct) {
        return duct.assumed().contains(Term.INSIDE_DIAMETER)
                || (duct.assumed().contains(Term.CABLE_OUTSIDE_DIAMETER)
                        && !duct.contents().cables().isEmpty());
    }

    static boolean hasAssumedCounts(Duct duct) {
        return duct.assumed().stream().anyMatch(COUNTS::contains);
    }

    /** Returns the duct with a narrower bore and wider cables, so far as these were assumed. */
    Duct tighter(Duct duct) {
        return resized(duct, 1 - diameterRatio, 1 + diameterRatio);
    }

    /** Returns the duct with a wider bore and narrower cables, so far as these were assumed. */
    Duct roomier(Duct duct) {
        return resized(duct, 1 + diameterRatio, 1 - diameterRatio);
    }

    /**
     * Returns the duct with a further cable, like its widest: in an empty innerduct that it goes into, else in a free cell, else loose.
     * Unknown contents stay unknown.
     */
    Duct withOneCableMore(Duct duct) {
        if (!duct.contents().known()) {
            return duct;
        }
        Cable more = another(duct.contents().cables());
        var pipes = new ArrayList<>(duct.contents().innerducts());
        for (int i = 0; i < pipes.size(); i++) {
            Innerduct pipe = pipes.get(i);
            if (pipe.isEmpty() && pipe.insideDiameterMm() > more.outsideDiameterMm()) {
                pipes.set(i, pipe.withSizes(pipe.outsideDiameterMm(), pipe.wallMm(), List.of(more)));
                return duct.withSizes(
                        duct.insideDiameterMm(),
                        new Contents(
                                pipes,
                                duct.contents().sleeves(),
                                duct.contents().looseCables(),
                                true));
            }
        }
        return withOneBeside(duct, more);
    }

    private static Duct withOneBeside(Duct duct, Cable more) {
        Contents contents = duct.contents();
        var sleeves = new ArrayList<>(contents.sleeves());
        for (int i = 0; i < sleeves.size(); i++) {
            Sleeve sleeve = sleeves.get(i);
            if (sleeve.freeCells() > 0) {
                var cables = new ArrayList<>(sleeve.cables());
                cables.add(more);
                sleeves.set(i, sleeve.holding(cables));
                return duct.withSizes(
                        duct.insideDiameterMm(),
                        new Contents(contents.innerducts(), sleeves, contents.looseCables(), true));
            }
        }
        var loose = new ArrayList<>(contents.looseCables());
        loose.add(more);
        return duct.withSizes(duct.insideDiameterMm(), new Contents(contents.innerducts(), sleeves, loose, true));
    }

    private Cable another(List<Cable> cables) {
        Cable widest = cables.stream()
                .reduce((a, b) -> b.outsideDiameterMm() > a.outsideDiameterMm() ? b : a)
                .orElseGet(() -> new Cable(
                        "cable",
                        assumed.findNumber(Term.CABLE_OUTSIDE_DIAMETER).orElse(USUAL_CABLE_MM),
                        assumed.findNumber(Term.CABLE_MASS).orElse(0),
                        Service.LIVE));
        return new Cable("one-more", widest.outsideDiameterMm(), widest.massKgPerM(), Service.LIVE);
    }

    private Duct resized(Duct duct, double boreRatio, double cableRatio) {
        boolean ofBore = duct.assumed().contains(Term.INSIDE_DIAMETER);
        boolean ofCables = duct.assumed().contains(Term.CABLE_OUTSIDE_DIAMETER);
        double insideMm = ofBore ? boreRatio * duct.insideDiameterMm() : duct.insideDiameterMm();
        return duct.withSizes(insideMm, ofCables ? resized(duct.contents(), cableRatio) : duct.contents());
    }

    /** A cable that would no longer go into its innerduct keeps its size: there it lies, so that it is not wider. */
    private static Contents resized(Contents contents, double ratio) {
        List<Innerduct> pipes = contents.innerducts().stream()
                .map(pipe -> pipe.withSizes(
                        pipe.outsideDiameterMm(),
                        pipe.wallMm(),
                        pipe.cables().stream()
                                .map(cable -> ratio * cable.outsideDiameterMm() < pipe.insideDiameterMm()
                                        ? resized(cable, ratio)
                                        : cable)
                                .toList()))
                .toList();
        List<Sleeve> sleeves = contents.sleeves().stream()
                .map(sleeve -> sleeve.holding(resized(sleeve.cables(), ratio)))
                .toList();
        return new Contents(pipes, sleeves, resized(contents.looseCables(), ratio), contents.known());
    }

    private static List<Cable> resized(List<Cable> cables, double ratio) {
        return cables.stream().map(cable -> resized(cable, ratio)).toList();
    }

    private static Cable resized(Cable cable, double ratio) {
        return cable.withOutsideDiameterMm(ratio * cable.outsideDiameterMm());
    }
}
