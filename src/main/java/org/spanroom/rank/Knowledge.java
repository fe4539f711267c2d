package org.spanroom.rank;

import java.util.Map;
import java.util.TreeMap;
import org.spanroom.model.Term;
import org.spanroom.model.network.Condition;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.Service;
import org.spanroom.model.network.Span;
import org.spanroom.model.rank.KnowledgeSettings;
import org.spanroom.model.rank.LearnedChances;

/**
 * How well a span is known: of all weights, the share that is recorded, in percent.
 *
 * <p>A term counts in full where its value was recorded and not at all where a default is used for it; terms of the contents
 * are treated as not recorded where the contents are unknown. An assumed term counts in part where like ducts were opened and found as
 * assumed ({@link LearnedChances#verifiedRatio}). The position counts by the value of its quality, the duct's age by its
 * year of installation.
 */
final class Knowledge {
    private final Term[] terms;
    private final double[] weights;
    private final Map<String, Double> qualities = new TreeMap<>();
    private final ValueCurve years;
    private final double positionWeightRatio;
    private final double yearWeightRatio;
    private final double allWeightsRatio;
    private final LearnedChances learned;

    Knowledge(KnowledgeSettings settings, LearnedChances learned) {
        this.learned = learned;
        terms = settings.terms().keySet().toArray(Term[]::new);
        weights = settings.terms().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        settings.positionQualities().forEach((word, value) -> qualities.put(Quantities.fold(word), value));
        years = new ValueCurve(settings.years());
        positionWeightRatio = settings.positionWeightRatio();
        yearWeightRatio = settings.yearWeightRatio();
        double sum = positionWeightRatio + yearWeightRatio;
        for (double weight : weights) {
            sum += weight;
        }
        allWeightsRatio = sum;
    }

    double percent(Span span) {
        double known = positionWeightRatio * qualities.getOrDefault(Quantities.fold(span.positionQuality()), 0.0);
        if (span.duct().installedYear().isPresent()) {
            known += yearWeightRatio * years.valueAt(span.duct().installedYear().getAsInt());
        }
        for (int i = 0; i < terms.length; i++) {
            if (isRecorded(terms[i], span.duct())) {
                known += weights[i];
            } else if (!learned.isNone()) {
                known += weights[i] * verifiedRatio(terms[i], span.duct());
            }
        }
        return 100 * known / allWeightsRatio;
    }

    /** Where contents are unknown nothing was assumed that could be verified. */
    private double verifiedRatio(Term term, Duct duct) {
        boolean assumed = duct.assumed().contains(term) && duct.contents().known();
        return assumed || term == Term.CONDITION ? learned.verifiedRatio(duct, term) : 0;
    }

    private static boolean isRecorded(Term term, Duct duct) {
        if (duct.assumed().contains(term)) {
            return false;
        }
        return switch (term) {
            case INNERDUCT_COUNT,
                    INNERDUCT_OUTSIDE_DIAMETER,
                    INNERDUCT_SDR,
                    INNERDUCT_WALL,
                    CABLE_COUNT,
                    CABLE_OUTSIDE_DIAMETER,
                    CABLE_MASS -> duct.contents().known();
            case IN_SERVICE -> duct.contents().known() && !Services.has(duct.contents(), Service.UNKNOWN);
            case CONDITION -> duct.condition() != Condition.UNKNOWN;
            default -> true;
        };
    }
}
