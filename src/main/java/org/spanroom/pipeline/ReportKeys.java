package org.spanroom.pipeline;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.spanroom.config.RunConfig;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.Verdict;
import org.spanroom.rank.Rescoring;

/** The keys of the results in words. */
final class ReportKeys {
    private static final Map<String, String> PULL_OUTCOMES = Map.of(
            "both", "possible from either end",
            "a", "possible from vault A only",
            "b", "possible from vault B only",
            "neither", "fails from both ends",
            "none", "no innerduct to pull");

    private final Rescoring scoring;
    private final List<String> issuedByCrew;

    ReportKeys(RunConfig config) {
        scoring = new Rescoring(config.scoring(), config.room());
        issuedByCrew = config.permit().issuedByCrew();
    }

    /** Returns a reason of exclusion in words; its key where there are none. */
    String reason(String key) {
        Verdict verdict = scoring.verdict(Set.of(key));
        return Stream.concat(
                        verdict.exclusions().stream().map(Exclusion::explanation),
                        verdict.cautions().stream().map(Caution::explanation))
                .findFirst()
                .orElse(spaced(key));
    }

    /** Returns the words of all keys that occur, by column. */
    SortedMap<String, SortedMap<String, String>> words(SortedMap<String, SortedSet<String>> keys) {
        var words = new TreeMap<String, SortedMap<String, String>>();
        for (String column : new String[] {"exclusion", "caution", "pull_outcome", "binding_rule"}) {
            var byKey = new TreeMap<String, String>();
            keys.getOrDefault(column, new TreeSet<>()).forEach(key -> byKey.put(key, word(column, key)));
            words.put(column, byKey);
        }
        var permits = new TreeMap<String, String>();
        issuedByCrew.forEach(key -> permits.put(
                key, spaced(key) + " (not applied for: the crew's entry supervisor issues it on the day of work)"));
        words.put("recovery_needs", permits);
        return words;
    }

    private String word(String column, String key) {
        return switch (column) {
            case "pull_outcome" -> PULL_OUTCOMES.getOrDefault(key, spaced(key));
            case "exclusion", "caution" -> reason(key);
            default -> spaced(key);
        };
    }

    private static String spaced(String key) {
        return key.replace('_', ' ');
    }
}
