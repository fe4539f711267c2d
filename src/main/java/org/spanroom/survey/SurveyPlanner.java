package org.spanroom.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.BiFunction;
import org.spanroom.model.Answer;
import org.spanroom.model.effort.VaultAccess;
import org.spanroom.model.network.ContentsSource;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.DuctStratum;
import org.spanroom.model.network.Vault;
import org.spanroom.model.survey.StratumEstimate;
import org.spanroom.model.survey.SurveySettings;
import org.spanroom.model.survey.SurveyStop;

/**
 * Chooses the vaults to open first.
 *
 * <p>First every stratum is visited once, by vaults that show most strata not seen so far (the greedy cover). Each further vault is the one
 * that takes most off the variance of the stratified estimate, {@code sum over strata of A^2 (1/n - 1/N)} with {@code A = W S}: W the worth
 * of a stratum, S the standard deviation of whether its spans gain room. Where each vault shows one span this ends in the allocation of
 * Neyman, n in proportion to A (Cochran, Sampling Techniques, section 5.5; that the greedy way is exact for whole numbers: Wright 2012;
 * both from memory). What a vault is worth counts less where it is in the roadway or holds water.
 */
public final class SurveyPlanner {
    private static final int[] NONE = {0, 0};

    private final SurveySettings settings;
    private final VaultAccess access;
    private final BiFunction<Vault, List<Duct>, List<String>> cautions;

    /**
     * Prepares planning.
     *
     * @param cautions what a crew must watch for at a vault, given the ducts that it looks at there
     */
    public SurveyPlanner(
            SurveySettings settings, VaultAccess access, BiFunction<Vault, List<Duct>, List<String>> cautions) {
        this.settings = settings;
        this.access = access;
        this.cautions = cautions;
    }

    /** Returns the vaults to open, in order; none where everything is recorded. */
    public List<SurveyStop> plan(List<SurveySpan> spans, List<Vault> vaults) {
        List<SurveySpan> open = spans.stream().filter(SurveyPlanner::isOpen).toList();
        if (open.isEmpty() || settings.vaults() == 0) {
            return List.of();
        }
        Map<String, int[]> gains = recordedGains(spans);
        Strata strata = Strata.of(
                open.stream().map(SurveySpan::duct).toList(),
                settings.vaults(),
                (name, members) -> deviation(gains.getOrDefault(name, NONE))
                        * members.stream()
                                .mapToDouble(span -> open.get(span).worth())
                                .sum());
        return new Plan(open, strata, vaults).stops();
    }

    /** A span that cannot serve, as a collapsed one, is not worth a look. */
    private static boolean isOpen(SurveySpan span) {
        return span.duct().contentsSource() != ContentsSource.RECORDED
                && span.duct().mayServe();
    }

    /** Returns, by stratum, how many recorded spans gain room and how many there are. */
    private static Map<String, int[]> recordedGains(List<SurveySpan> spans) {
        var gains = new HashMap<String, int[]>();
        for (SurveySpan span : spans) {
            if (span.duct().contentsSource() == ContentsSource.RECORDED) {
                int[] counts = gains.computeIfAbsent(DuctStratum.name(span.duct()), key -> new int[2]);
                counts[0] += span.gains() ? 1 : 0;
                counts[1]++;
            }
        }
        return gains;
    }

    /** The standard deviation of a share; one more of either kind keeps it above 0 (the rule of succession, Laplace). */
    private static double deviation(int[] counts) {
        double shareRatio = (counts[0] + 1.0) / (counts[1] + 2.0);
        return Math.sqrt(shareRatio * (1 - shareRatio));
    }

    /** One plan while it is made. */
    private final class Plan {
        private final List<SurveySpan> spans;
        private final Strata strata;
        private final List<Vault> vaults;
        private final Map<Integer, List<Integer>> atVault = new TreeMap<>();
        private final boolean[] isSeen;
        private final int[] seenOf;
        private int seen;

        Plan(List<SurveySpan> spans, Strata strata, List<Vault> vaults) {
            this.spans = spans;
            this.strata = strata;
            this.vaults = vaults;
            isSeen = new boolean[spans.size()];
            seenOf = new int[strata.count()];
            for (int i = 0; i < spans.size(); i++) {
                atVault.computeIfAbsent(spans.get(i).from(), key -> new ArrayList<>())
                        .add(i);
                if (spans.get(i).to() != spans.get(i).from()) {
                    atVault.computeIfAbsent(spans.get(i).to(), key -> new ArrayList<>())
                            .add(i);
                }
            }
        }

        List<SurveyStop> stops() {
            var stops = new ArrayList<SurveyStop>();
            while (stops.size() < settings.vaults() && seen < spans.size()) {
                stops.add(stop(stops.size() + 1, best()));
            }
            return stops;
        }

        /** What a vault would add: strata not seen so far, then variance taken off, then spans. */
        private record Value(int vault, double strata, double variance, int spans) {}

        private int best() {
            Comparator<Value> order = Comparator.comparingDouble(Value::strata)
                    .thenComparingDouble(Value::variance)
                    .thenComparingInt(Value::spans)
                    .thenComparing(Comparator.comparing(
                                    (Value value) -> vaults.get(value.vault()).id())
                            .reversed());
            return atVault.keySet().stream()
                    .map(this::value)
                    .filter(value -> value.spans() > 0)
                    .max(order)
                    .orElseThrow()
                    .vault();
        }

        private Value value(int vault) {
            Map<Integer, Integer> shown = shown(vault);
            double ease = ease(vaults.get(vault));
            int strataNew = 0;
            double variance = 0;
            int spansNew = 0;
            for (var entry : shown.entrySet()) {
                int stratum = entry.getKey();
                strataNew += seenOf[stratum] == 0 ? 1 : 0;
                double before = inverse(seenOf[stratum]);
                double after = inverse(seenOf[stratum] + entry.getValue());
                variance += strata.weight(stratum) * strata.weight(stratum) * (before - after);
                spansNew += entry.getValue();
            }
            return new Value(vault, ease * strataNew, ease * variance, spansNew);
        }

        /** Returns how many spans not seen so far a vault shows, by stratum. */
        private Map<Integer, Integer> shown(int vault) {
            var shown = new TreeMap<Integer, Integer>();
            for (int span : atVault.getOrDefault(vault, List.of())) {
                if (!isSeen[span]) {
                    shown.merge(strata.of(span), 1, Integer::sum);
                }
            }
            return shown;
        }

        private SurveyStop stop(int order, int place) {
            Vault vault = vaults.get(place);
            Map<Integer, Integer> shown = shown(place);
            List<Integer> here = atVault.getOrDefault(place, List.of());
            for (int span : here) {
                if (!isSeen[span]) {
                    isSeen[span] = true;
                    seenOf[strata.of(span)]++;
                    seen++;
                }
            }
            List<Duct> ducts = distinct(here);
            return new SurveyStop(
                    order,
                    vault,
                    access.isInRoadway(vault),
                    ducts.stream().map(Duct::id).toList(),
                    shown.values().stream().mapToInt(Integer::intValue).sum(),
                    seen,
                    spans.size(),
                    estimates(shown),
                    cautions.apply(vault, ducts));
        }

        /** Each duct once, though it may have a span on either side of the vault. */
        private List<Duct> distinct(List<Integer> here) {
            var byId = new TreeMap<String, Duct>();
            here.forEach(span -> byId.putIfAbsent(
                    spans.get(span).duct().id(), spans.get(span).duct()));
            return List.copyOf(byId.values());
        }

        private List<StratumEstimate> estimates(Map<Integer, Integer> shown) {
            return shown.entrySet().stream()
                    .sorted(Map.Entry.<Integer, Integer>comparingByValue()
                            .reversed()
                            .thenComparing(Map.Entry.comparingByKey()))
                    .map(entry -> estimate(entry.getKey()))
                    .toList();
        }

        private StratumEstimate estimate(int stratum) {
            int all = strata.spans(stratum);
            return new StratumEstimate(
                    strata.name(stratum), seenOf[stratum], all, Precision.marginRatio(seenOf[stratum], all));
        }
    }

    /** Before any span of a stratum is seen its variance counts twice that of one. */
    private static double inverse(int seen) {
        return seen == 0 ? 2 : 1.0 / seen;
    }

    private double ease(Vault vault) {
        double ease = access.isInRoadway(vault) ? settings.roadwayWorthRatio() : 1;
        return vault.site().water() == Answer.YES ? ease * settings.wetWorthRatio() : ease;
    }
}
