package org.spanroom.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.DuctStratum;

/**
 * Spans that are likely to have similar contents: of one decade, one type of duct and one owner, so far as these are recorded.
 *
 * <p>There are never more strata than requested, so that each can be visited; the ones of least weight are then put together (collapsed
 * strata: Cochran, Sampling Techniques, section 5A.12, from memory).
 */
final class Strata {
    static final String OTHERS = "all others";

    private final List<String> names = new ArrayList<>();
    private final List<Integer> spans = new ArrayList<>();
    private final List<Double> weights = new ArrayList<>();
    private final int[] ofSpan;

    private Strata(int spans) {
        ofSpan = new int[spans];
    }

    /**
     * One stratum before any is put with another.
     *
     * @param weight what not knowing its spans costs
     */
    private record Stratum(String name, double weight) {}

    /**
     * Puts spans into strata.
     *
     * @param ducts of the spans
     * @param variation the weight of each stratum, given its name and its spans
     */
    static Strata of(List<Duct> ducts, int most, Weighing variation) {
        var byName = new HashMap<String, List<Integer>>();
        for (int i = 0; i < ducts.size(); i++) {
            byName.computeIfAbsent(DuctStratum.name(ducts.get(i)), key -> new ArrayList<>())
                    .add(i);
        }
        List<Stratum> ordered = byName.entrySet().stream()
                .map(entry -> new Stratum(entry.getKey(), variation.weight(entry.getKey(), entry.getValue())))
                .sorted(Comparator.comparingDouble(Stratum::weight).reversed().thenComparing(Stratum::name))
                .toList();
        var strata = new Strata(ducts.size());
        int kept = ordered.size() <= most ? ordered.size() : Math.max(0, most - 1);
        for (int i = 0; i < ordered.size(); i++) {
            Stratum stratum = ordered.get(i);
            String name = i < kept ? stratum.name() : OTHERS;
            strata.add(name, byName.getOrDefault(stratum.name(), List.of()), stratum.weight());
        }
        return strata;
    }

    /** What not knowing the spans of a stratum costs. */
    interface Weighing {
        double weight(String name, List<Integer> members);
    }

    private void add(String name, List<Integer> members, double weight) {
        int stratum = names.isEmpty() || !names.get(names.size() - 1).equals(name) ? names.size() : names.size() - 1;
        if (stratum == names.size()) {
            names.add(name);
            spans.add(0);
            weights.add(0.0);
        }
        spans.set(stratum, spans.get(stratum) + members.size());
        weights.set(stratum, weights.get(stratum) + weight);
        members.forEach(span -> ofSpan[span] = stratum);
    }

    int count() {
        return names.size();
    }

    String name(int stratum) {
        return names.get(stratum);
    }

    int spans(int stratum) {
        return spans.get(stratum);
    }

    double weight(int stratum) {
        return weights.get(stratum);
    }

    int of(int span) {
        return ofSpan[span];
    }
}
