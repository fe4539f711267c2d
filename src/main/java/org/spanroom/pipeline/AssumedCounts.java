package org.spanroom.pipeline;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.spanroom.config.AssumedValues;
import org.spanroom.model.Term;
import org.spanroom.model.network.BoreCapacity;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Contents;
import org.spanroom.model.network.ContentsScenario;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.UsualItems;

/** Ducts as they would be with other counts of innerducts and cables, where these were assumed; a recorded count stays. */
final class AssumedCounts {
    private final UsualItems usual;

    AssumedCounts(AssumedValues assumed) {
        this.usual = AssumedItems.of(assumed);
    }

    /**
     * Returns a duct as a scenario has it: the same duct where its counts are recorded, its contents are unknown, or the config names no
     * size for what would be in it. Of assumed innerducts there are never more than go into the bore.
     */
    Duct in(ContentsScenario scenario, Duct duct) {
        Contents now = duct.contents();
        if (duct.contentsSource() != ContentsSource.ASSUMED) {
            return duct;
        }
        boolean innerductsAssumed = duct.assumed().contains(Term.INNERDUCT_COUNT);
        boolean cablesAssumed = duct.assumed().contains(Term.CABLE_COUNT);
        Optional<Innerduct> pipe = now.innerducts().stream().findFirst().or(usual::innerduct);
        ContentsScenario fitted = innerductsAssumed
                ? pipe.map(one -> scenario.within(
                                BoreCapacity.items(duct.boreShape(), duct.insideDiameterMm(), one.outsideDiameterMm())))
                        .orElse(scenario)
                : scenario;
        int innerducts =
                innerductsAssumed ? fitted.innerductCount() : now.innerducts().size();
        int cables = cablesAssumed ? fitted.cableCount() : now.cables().size();
        Optional<Cable> cable = now.cables().stream().findFirst().or(usual::cable);
        boolean sized = (innerducts == 0 || pipe.isPresent()) && (cables == 0 || cable.isPresent());
        return sized ? duct.withSizes(duct.insideDiameterMm(), contents(innerducts, pipe, cables, cable)) : duct;
    }

    /** One cable is in each innerduct, in order; the rest is loose, as where the counts are recorded. */
    private static Contents contents(int innerducts, Optional<Innerduct> pipe, int cables, Optional<Cable> cable) {
        List<Cable> all = Stream.iterate(1, number -> number + 1)
                .limit(cables)
                .map(number -> named(cable.orElseThrow(), "cable-" + number))
                .toList();
        var pipes = new ArrayList<Innerduct>();
        for (int i = 0; i < innerducts; i++) {
            Innerduct size = pipe.orElseThrow();
            List<Cable> inside = i < cables ? List.of(all.get(i)) : List.of();
            pipes.add(new Innerduct(
                    "innerduct-" + (i + 1),
                    size.outsideDiameterMm(),
                    size.wallMm(),
                    inside,
                    size.color(),
                    size.uncutAtA(),
                    size.uncutAtB()));
        }
        return new Contents(pipes, all.subList(Math.min(innerducts, cables), cables), true);
    }

    private static Cable named(Cable like, String id) {
        return new Cable(id, like.outsideDiameterMm(), like.massKgPerM(), like.service(), like.mayMove());
    }
}
