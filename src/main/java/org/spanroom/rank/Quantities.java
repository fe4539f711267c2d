package org.spanroom.rank;

import java.util.Collection;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import org.spanroom.model.Answer;
import org.spanroom.model.Assessment;
import org.spanroom.model.Effort;
import org.spanroom.model.ScoringSettings;
import org.spanroom.model.Vault;

/** Finds the absolute quantity of each criterion in an assessment; nothing but the span itself enters. */
final class Quantities {
    private final Set<String> hardKinds;
    private final Set<String> hardSurfaces;
    private final Knowledge knowledge;

    Quantities(ScoringSettings settings) {
        hardKinds = folded(settings.hardVaultKinds());
        hardSurfaces = folded(settings.hardVaultSurfaces());
        knowledge = new Knowledge(settings.knowledge());
    }

    double of(Criterion criterion, Assessment assessment) {
        return switch (criterion) {
            case ROOM_GAINED -> assessment.room().cablesGained();
            case SHORTAGE -> assessment.room().positionsBefore();
            case EASE_PULL -> WorkingEnd.utilisationPercent(assessment);
            case EASE_BENDS -> assessment.bends().total().deg();
            case EASE_WATER -> wetPlaces(assessment);
            case EASE_ACCESS ->
                drawbacks(assessment.span().from())
                        + drawbacks(assessment.span().to());
            case SAVING -> assessment.effort().map(Effort::savingRatio).orElse(0.0);
            case PERMITS_AVOIDED -> assessment.permits().avoided().size();
            case KNOWLEDGE -> knowledge.percent(assessment.span());
            case LENGTH -> assessment.span().lengthM();
        };
    }

    private static int wetPlaces(Assessment assessment) {
        int places = assessment.span().duct().flooded() ? 1 : 0;
        places += assessment.span().from().site().water() == Answer.YES ? 1 : 0;
        places += assessment.span().to().site().water() == Answer.YES ? 1 : 0;
        return places;
    }

    private int drawbacks(Vault vault) {
        int kind = hardKinds.contains(fold(vault.kind())) ? 1 : 0;
        int surface = hardSurfaces.contains(fold(vault.site().surface())) ? 1 : 0;
        return kind + surface;
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
