package org.spanroom.rank;

import java.util.Collection;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.model.Answer;
import org.spanroom.model.network.Span;
import org.spanroom.model.network.Vault;
import org.spanroom.model.rank.LearnedChances;
import org.spanroom.model.rank.ScoringSettings;

/** What the quantities of criteria are based on: what the settings say of vaults and records. Nothing but the span itself enters. */
final class Quantities {
    private final Set<String> hardKinds;
    private final Set<String> hardSurfaces;
    private final Knowledge knowledge;

    Quantities(ScoringSettings settings) {
        this(settings, LearnedChances.NONE);
    }

    Quantities(ScoringSettings settings, LearnedChances learned) {
        hardKinds = folded(settings.hardVaultKinds());
        hardSurfaces = folded(settings.hardVaultSurfaces());
        knowledge = new Knowledge(settings.knowledge(), learned);
    }

    static int wetPlaces(Span span) {
        int places = span.duct().flooded() ? 1 : 0;
        places += span.from().site().water() == Answer.YES ? 1 : 0;
        places += span.to().site().water() == Answer.YES ? 1 : 0;
        return places;
    }

    int drawbacks(Vault vault) {
        int kind = hardKinds.contains(fold(vault.kind())) ? 1 : 0;
        int surface = hardSurfaces.contains(fold(vault.site().surface())) ? 1 : 0;
        return kind + surface;
    }

    double knowledgePercent(Span span) {
        return knowledge.percent(span);
    }

    static Set<String> folded(Collection<String> words) {
        var folded = new TreeSet<String>();
        words.forEach(word -> folded.add(fold(word)));
        return folded;
    }

    static String fold(String word) {
        return word.strip().toLowerCase(Locale.ROOT);
    }
}
