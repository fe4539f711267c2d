package org.spanroom.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.spanroom.model.network.SpanEnd;

/**
 * Finds the two ends of ducts that consist of several chains, such as one route from each vault to the next: the contents table counts
 * the ends of a duct, not those of its routes.
 *
 * <p>An end of a chain is an outermost one of its duct where no other chain of the duct ends at the same vault. A duct whose
 * chains have exactly two of those, one where a chain begins and one where a chain ends, has its end A at the first and B at the
 * second. Of any other, drawn to and fro or branching, the ends are unknown, and nothing is known of them.
 */
final class DuctEnds {
    private DuctEnds() {}

    /** One end of one chain. */
    private record Tip(int chain, boolean isBegin, ChainTip tip) {}

    /** Replaces those chains of which the contents table says something at an end that is none of their duct's. */
    static void settle(ChainSpans[] chains) {
        Map<String, List<Integer>> byDuct = new TreeMap<>();
        for (int chain = 0; chain < chains.length; chain++) {
            if (chains[chain] instanceof EndedSpans ended
                    && ended.recorded().contents().hasUncutRecord()) {
                byDuct.computeIfAbsent(ended.recorded().id(), duct -> new ArrayList<>())
                        .add(chain);
            }
        }
        var marks = new UncutMarks();
        for (List<Integer> ofDuct : byDuct.values()) {
            if (ofDuct.size() > 1) {
                settle(chains, ofDuct, marks);
            }
        }
    }

    private static void settle(ChainSpans[] chains, List<Integer> ofDuct, UncutMarks marks) {
        List<Tip> outermost = outermost(chains, ofDuct);
        boolean isPair = outermost.size() == 2
                && outermost.get(0).isBegin() != outermost.get(1).isBegin();
        for (int chain : ofDuct) {
            Optional<SpanEnd> atBegin =
                    isPair && holds(outermost, chain, true) ? Optional.of(SpanEnd.A) : Optional.empty();
            Optional<SpanEnd> atEnd =
                    isPair && holds(outermost, chain, false) ? Optional.of(SpanEnd.B) : Optional.empty();
            chains[chain] = ((EndedSpans) chains[chain]).of(atBegin, atEnd, marks);
        }
    }

    private static List<Tip> outermost(ChainSpans[] chains, List<Integer> ofDuct) {
        List<Tip> tips = new ArrayList<>();
        Map<Integer, Integer> ends = new TreeMap<>();
        for (int chain : ofDuct) {
            var ended = (EndedSpans) chains[chain];
            tips.add(new Tip(chain, true, ended.begin()));
            tips.add(new Tip(chain, false, ended.end()));
        }
        tips.forEach(tip -> ends.merge(tip.tip().vault(), 1, Integer::sum));
        tips.removeIf(
                tip -> tip.tip().isAtVault() && ends.getOrDefault(tip.tip().vault(), 0) > 1);
        return tips;
    }

    private static boolean holds(List<Tip> tips, int chain, boolean isBegin) {
        return tips.stream().anyMatch(tip -> tip.chain() == chain && tip.isBegin() == isBegin);
    }
}
