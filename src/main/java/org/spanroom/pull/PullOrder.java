package org.spanroom.pull;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.spanroom.model.network.Cable;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Innerduct;
import org.spanroom.model.network.Service;
import org.spanroom.model.pull.Beside;
import org.spanroom.model.pull.PullReason;
import org.spanroom.model.pull.PullSettings;

/**
 * The innerducts of a duct in the order in which they are pulled, each with its load in its turn.
 *
 * <p>Empty ones come first: they move no cable and free the rest. Then the lightest loaded, so that the heaviest is pulled
 * when fewest neighbors rest on it. An innerduct that is out weighs on no other; its cables stay and are loose. One that is
 * not to come out is beside every other to the end, and so is what was placed beside the innerducts before.
 */
final class PullOrder {
    /** Friction factor of four or more bodies in one bore (common practice, no source). */
    private static final double MANY_BODIES_WEDGE_RATIO = 1.4;

    private static final int MANY_BODIES = 4;

    /** Two bodies wedge no harder than this in the calculation; a pair so tight (d/(D - d) over 0.8) is jammed already. */
    private static final double LARGEST_WEDGE_RATIO = 5.0 / 3;

    private final Duct duct;
    private final PullSettings settings;
    private final Weights weights;
    private final List<Innerduct> ordered;
    private final List<Innerduct> staying;
    private final Beside beside;

    /** One innerduct in its turn. */
    record Turn(Innerduct innerduct, PullReason reason, Load load) {}

    private PullOrder(Duct duct, PullSettings settings, int out, Beside beside) {
        this.duct = duct;
        this.beside = beside;
        this.settings = settings;
        this.weights = new Weights(duct, settings);
        List<Innerduct> byOrderOut = duct.contents().innerductsByOrderOut();
        this.staying = byOrderOut.subList(out, byOrderOut.size());
        this.ordered = new ArrayList<>(duct.contents().innerducts());
        staying.forEach(ordered::remove);
        // The sort is stable: equal innerducts keep the order of the records.
        ordered.sort(Comparator.comparing((Innerduct innerduct) -> !innerduct.isEmpty())
                .thenComparingDouble(this::loadedMassKgPerM));
    }

    /**
     * Returns the turns of the innerducts that come out.
     *
     * @param out how many, the first in the order of {@link org.spanroom.model.network.Contents#innerductsByOrderOut}
     * @param beside what was placed beside the innerducts before
     */
    static List<Turn> of(Duct duct, PullSettings settings, int out, Beside beside) {
        return new PullOrder(duct, settings, out, beside).turns();
    }

    private List<Turn> turns() {
        double looseNPerM = Weights.GRAVITY_M_PER_S2 * beside.massKgPerM();
        for (Cable cable : duct.contents().cablesBeside()) {
            looseNPerM += Math.abs(weights.looseNPerM(cable));
        }
        double stayingNPerM = 0;
        for (Innerduct innerduct : staying) {
            stayingNPerM += Math.abs(weights.bodyNPerM(innerduct));
        }
        double innerductsNPerM = 0;
        for (Innerduct innerduct : ordered) {
            innerductsNPerM += Math.abs(weights.bodyNPerM(innerduct));
        }
        var turns = new ArrayList<Turn>(ordered.size());
        for (int i = 0; i < ordered.size(); i++) {
            Innerduct innerduct = ordered.get(i);
            int toCome = ordered.size() - 1 - i;
            innerductsNPerM = toCome == 0 ? 0 : innerductsNPerM - Math.abs(weights.bodyNPerM(innerduct));
            double othersNPerM = innerductsNPerM + stayingNPerM + looseNPerM;
            turns.add(new Turn(
                    innerduct, reason(i), load(innerduct, toCome + staying.size() + beside.count(), othersNPerM)));
            for (Cable freed : innerduct.cables()) {
                looseNPerM += Math.abs(weights.looseNPerM(freed));
            }
        }
        return turns;
    }

    private Load load(Innerduct innerduct, int others, double othersNPerM) {
        double liveShare = 0;
        double liveDiameterMm = 0;
        double massKgPerM = cableMassKgPerM(innerduct);
        for (Cable cable : innerduct.cables()) {
            if (cable.service() != Service.DEAD) {
                // Cable pass and its start are linear in the weight, so each cable takes its share of the hold.
                double share = massKgPerM > 0
                        ? cable.massKgPerM() / massKgPerM
                        : 1.0 / innerduct.cables().size();
                liveShare = Math.max(liveShare, share);
                liveDiameterMm = Math.max(liveDiameterMm, cable.outsideDiameterMm());
            }
        }
        return new Load(
                weights.cablesNPerM(innerduct),
                weights.bodyNPerM(innerduct),
                settings.neighbors().restingShareRatio() * othersNPerM,
                wedge(innerduct, others),
                !innerduct.isEmpty(),
                liveShare,
                liveDiameterMm);
    }

    private double wedge(Innerduct innerduct, int others) {
        if (others < settings.neighbors().wedgedFromInnerducts()) {
            return 1;
        }
        if (others + 1 >= MANY_BODIES) {
            return MANY_BODIES_WEDGE_RATIO;
        }
        double pair = PullFormulas.wedge(innerduct.outsideDiameterMm(), duct.insideDiameterMm());
        return pair < LARGEST_WEDGE_RATIO ? pair : LARGEST_WEDGE_RATIO;
    }

    private PullReason reason(int place) {
        if (ordered.size() + staying.size() == 1) {
            return PullReason.ONLY_ONE;
        }
        if (ordered.get(place).isEmpty()) {
            return PullReason.EMPTY;
        }
        return place + 1 == ordered.size() && staying.isEmpty() ? PullReason.LAST : PullReason.LIGHTEST;
    }

    private double loadedMassKgPerM(Innerduct innerduct) {
        return innerduct.massKgPerM(settings.innerductDensityKgPerM3()) + cableMassKgPerM(innerduct);
    }

    private static double cableMassKgPerM(Innerduct innerduct) {
        double total = 0;
        for (Cable cable : innerduct.cables()) {
            total += cable.massKgPerM();
        }
        return total;
    }
}
