package org.spanroom.learn;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import org.spanroom.model.fieldwork.FieldBook;
import org.spanroom.model.learn.ChanceChange;
import org.spanroom.model.network.Duct;
import org.spanroom.model.network.DuctStratum;
import org.spanroom.model.network.ScenarioSettings;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.SpanChances;
import org.spanroom.model.rank.UncertaintySettings;

/**
 * Learns from opened ducts what the others hold: first from all of them, then in each stratum, where the chance that all leave is the
 * chance before. A stratum's own ducts are part of all, so that they count a little more than once: an approximation to a
 * hierarchical model.
 *
 * @param chances for the simulation
 * @param changes of all ducts, then by stratum
 * @param opened how many opened ducts of the run are in it
 */
public record LearnedContents(LearnedChances chances, List<ChanceChange> changes, int opened) {
    public LearnedContents {
        changes = List.copyOf(changes);
    }

    /**
     * Returns what a field book says.
     *
     * @param recorded the duct of a span as it is recorded, without what the book says; empty for a span that the run does not have
     */
    public static LearnedContents of(
            FieldBook book,
            Function<String, Optional<Duct>> recorded,
            UncertaintySettings uncertainty,
            ScenarioSettings scenarios) {
        var all = new Sightings();
        Map<String, Sightings> byStratum = new TreeMap<>();
        int opened = 0;
        for (String spanId : book.spans()) {
            Optional<Duct> duct = recorded.apply(spanId);
            if (duct.isEmpty()) {
                continue;
            }
            var found = new OpenedDuct(book.ofSpan(spanId), duct.get(), uncertainty.diameterRatio(), scenarios);
            if (found.isOpened()) {
                opened++;
                found.countIn(all);
                found.countIn(byStratum.computeIfAbsent(DuctStratum.name(duct.get()), name -> new Sightings()));
            }
        }
        return opened == 0
                ? new LearnedContents(LearnedChances.NONE, List.of(), 0)
                : of(all, byStratum, opened, SpanChances.of(uncertainty, scenarios), uncertainty.priorSpans());
    }

    private static LearnedContents of(
            Sightings all, Map<String, Sightings> byStratum, int opened, SpanChances prior, int priorSpans) {
        SpanChances ofAll = all.after(prior, priorSpans);
        var changes = new ArrayList<ChanceChange>();
        list(changes, "", all, prior, ofAll);
        Map<String, SpanChances> chances = new TreeMap<>();
        byStratum.forEach((stratum, found) -> {
            SpanChances after = found.after(ofAll, priorSpans);
            chances.put(stratum, after);
            list(changes, stratum, found, ofAll, after);
        });
        return new LearnedContents(LearnedChances.of(prior, ofAll, chances), changes, opened);
    }

    private static void list(
            List<ChanceChange> changes, String stratum, Sightings found, SpanChances before, SpanChances after) {
        for (ChanceKind kind : ChanceKind.values()) {
            if (found.looked(kind) > 0) {
                changes.add(new ChanceChange(
                        kind.key(), stratum, found.looked(kind), found.events(kind), kind.of(before), kind.of(after)));
            }
        }
    }
}
