package org.spanroom.learn;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.spanroom.model.Term;
import org.spanroom.model.learn.FrictionChange;
import org.spanroom.model.learn.LearnSettings;
import org.spanroom.model.learn.LeftOut;
import org.spanroom.model.learn.RatioEstimate;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.DuctStratum;
import org.spanroom.model.pull.FrictionSet;
import org.spanroom.model.pull.FrictionSets;

/**
 * Learns friction from measured pulls. For each the factor on the dry coefficients is found at which the calculated force is the
 * measured one; the factors of spans are followed like ratios of hours, in all ducts and by type and decade.
 *
 * @param changes of all ducts first, then by type and decade
 */
public record LearnedFriction(List<FrictionChange> changes, List<LeftOut> leftOut) {
    private static final int DECADE = 10;

    /** Halvings of the logarithm of a factor between 1/20 and 20: to one part in 10^15. */
    private static final int HALVINGS = 53;

    public LearnedFriction {
        changes = List.copyOf(changes);
        leftOut = List.copyOf(leftOut);
    }

    /** Factors of pulls by span, in one stratum. */
    private record Stratum(String name, String ductType, OptionalInt fromYear, Map<String, List<Double>> bySpan) {
        void add(String spanId, double scaleRatio) {
            bySpan.computeIfAbsent(spanId, id -> new ArrayList<>()).add(scaleRatio);
        }
    }

    /**
     * Returns what measured pulls say.
     *
     * @param before the coefficients of the run
     */
    public static LearnedFriction of(List<MeasuredPull> pulls, FrictionSets before, LearnSettings settings) {
        var leftOut = new ArrayList<LeftOut>();
        var all = new Stratum("", "", OptionalInt.empty(), new LinkedHashMap<>());
        Map<String, Stratum> strata = new TreeMap<>();
        for (MeasuredPull pull : pulls) {
            OptionalDouble measuredN = pull.entry().value().keptInUnit();
            if (pull.law().isEmpty() || pull.duct().isEmpty()) {
                leftOut.add(leave(pull, "the run calculates no such pull"));
            } else if (measuredN.isEmpty() || !(measuredN.getAsDouble() > 0)) {
                leftOut.add(leave(pull, "not above 0"));
            } else {
                OptionalDouble scaleRatio = scaleRatio(pull.law().get(), measuredN.getAsDouble(), settings.mostRatio());
                if (scaleRatio.isEmpty()) {
                    leftOut.add(leave(pull, "no friction gives this force: an error of writing?"));
                } else {
                    Stratum stratum = stratum(pull.duct().get());
                    all.add(pull.entry().subject(), scaleRatio.getAsDouble());
                    strata.computeIfAbsent(stratum.name(), name -> stratum)
                            .add(pull.entry().subject(), scaleRatio.getAsDouble());
                }
            }
        }
        var changes = new ArrayList<FrictionChange>();
        changes.add(change(all, before, settings));
        strata.values().forEach(stratum -> changes.add(change(stratum, before, settings)));
        return new LearnedFriction(changes, leftOut);
    }

    private static LeftOut leave(MeasuredPull pull, String why) {
        return new LeftOut(
                pull.entry().number(),
                pull.entry().subject(),
                pull.entry().fact().key(),
                pull.entry().item(),
                why);
    }

    private static Stratum stratum(Duct duct) {
        String type = duct.assumed().contains(Term.DUCT_TYPE) ? "" : duct.type().strip();
        OptionalInt decade = duct.installedYear().isPresent()
                ? OptionalInt.of(Math.floorDiv(duct.installedYear().getAsInt(), DECADE) * DECADE)
                : OptionalInt.empty();
        return new Stratum(DuctStratum.typeAndDecade(duct), type, decade, new LinkedHashMap<>());
    }

    /**
     * Returns the factor at which a law gives a force; empty where it is not within the believed range.
     *
     * @param mostRatio the largest factor; its inverse is the smallest
     */
    static OptionalDouble scaleRatio(PullLaw law, double measuredN, double mostRatio) {
        double below = -Math.log(mostRatio);
        double above = Math.log(mostRatio);
        if (!(law.largestN(Math.exp(below)) <= measuredN && measuredN <= law.largestN(Math.exp(above)))) {
            return OptionalDouble.empty();
        }
        // As calculated: the factor is exactly 1, so that such pulls change no coefficient by rounding.
        if (law.largestN(1) == measuredN) {
            return OptionalDouble.of(1);
        }
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (below + above) / 2;
            if (law.largestN(Math.exp(middle)) < measuredN) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return OptionalDouble.of(Math.exp((below + above) / 2));
    }

    private static FrictionChange change(Stratum stratum, FrictionSets before, LearnSettings settings) {
        double[] factors = stratum.bySpan().values().stream()
                .mapToDouble(ofSpan -> Bootstrap.median(
                        ofSpan.stream().mapToDouble(Double::doubleValue).toArray()))
                .toArray();
        Optional<RatioEstimate> estimate = factors.length < settings.leastSpans()
                ? Optional.empty()
                : Optional.of(Estimates.of(factors, 0, settings));
        int pulls = stratum.bySpan().values().stream().mapToInt(List::size).sum();
        return new FrictionChange(
                stratum.name(),
                stratum.ductType(),
                stratum.fromYear(),
                pulls,
                factors.length,
                estimate,
                before,
                estimate.map(found -> after(before, found)));
    }

    /** The states lubricated and bad are the ends of the range that the simulation draws friction from, dry its middle. */
    private static FrictionSets after(FrictionSets before, RatioEstimate found) {
        double[] dry = coefficients(before.dry());
        double[] lubricated = coefficients(before.lubricated());
        double[] bad = coefficients(before.bad());
        for (int i = 0; i < dry.length; i++) {
            double was = dry[i];
            dry[i] = LearnedRates.rounded(was * found.learnedRatio(), was);
            lubricated[i] = end(lubricated[i], was, dry[i], found.lowOverValueRatio(ratio(lubricated[i], was)));
            bad[i] = end(bad[i], was, dry[i], found.highOverValueRatio(ratio(bad[i], was)));
        }
        return new FrictionSets(set(lubricated), set(dry), set(bad));
    }

    private static double ratio(double end, double dry) {
        return dry > 0 ? end / dry : 1;
    }

    /** A dry coefficient of 0 stays 0, and what was beside it stays as it was. */
    private static double end(double was, double dryBefore, double dryAfter, double overDryRatio) {
        return dryBefore > 0 ? LearnedRates.rounded(dryAfter * overDryRatio, was) : was;
    }

    private static double[] coefficients(FrictionSet set) {
        return new double[] {set.ductRatio(), set.jacketRatio(), set.neighborRatio()};
    }

    private static FrictionSet set(double[] coefficients) {
        return new FrictionSet(coefficients[0], coefficients[1], coefficients[2]);
    }
}
