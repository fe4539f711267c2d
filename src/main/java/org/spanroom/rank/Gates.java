package org.spanroom.rank;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.spanroom.model.rank.Assessment;
import org.spanroom.model.rank.Caution;
import org.spanroom.model.rank.Exclusion;
import org.spanroom.model.rank.GateAnswer;
import org.spanroom.model.rank.ScoringSettings;
import org.spanroom.model.rank.Verdict;

/** Asks every gate and every caution about a span, also after one applies, and says which gates are shut. */
final class Gates {
    private final ScoringSettings settings;
    private final SpanFacts.Rules rules;

    /** @throws IllegalArgumentException if the settings switch a gate that does not exist */
    Gates(ScoringSettings settings, SpanFacts.Rules rules) {
        Ranking.requireKnown(
                "gate", settings.gates().keySet(), Stream.of(Gate.values()).map(Gate::key));
        this.settings = settings;
        this.rules = rules;
    }

    Verdict verdict(Assessment assessment, EmptyDucts emptyDucts) {
        var span = new SpanFacts(assessment, emptyDucts, rules);
        var cautions = new ArrayList<Caution>();
        for (CautionKind kind : CautionKind.values()) {
            if (kind.holds(span)) {
                cautions.add(kind.caution(span));
            }
        }
        return verdict(gate -> gate.holds(span), cautions);
    }

    /** Returns the verdict where it is known already which reasons apply. */
    Verdict verdict(Predicate<Gate> holds, List<Caution> cautions) {
        var exclusions = new ArrayList<Exclusion>();
        var waived = new ArrayList<Exclusion>();
        for (Gate gate : Gate.values()) {
            if (holds.test(gate)) {
                (isShut(gate) ? exclusions : waived).add(gate.exclusion());
            }
        }
        return new Verdict(exclusions, waived, cautions);
    }

    /** Returns what each gate says, in the order of reasons. */
    List<GateAnswer> answers(Assessment assessment, EmptyDucts emptyDucts) {
        var span = new SpanFacts(assessment, emptyDucts, rules);
        return Stream.of(Gate.values())
                .map(gate -> new GateAnswer(gate.exclusion(), !isShut(gate), gate.holds(span), gate.evidence(span)))
                .toList();
    }

    private boolean isShut(Gate gate) {
        return settings.excludes(gate.key());
    }
}
